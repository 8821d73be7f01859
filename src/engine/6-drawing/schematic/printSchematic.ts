import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { fileWord } from '../../notation/fileWord.ts';
import { titled } from '../../notation/titled.ts';
import { doubledSections } from './doubledSections.ts';
import { finishedMeasures } from './finishedMeasures.ts';
import { finishedSchematic } from './finishedSchematic.ts';
import { fitSchematic, largestScale } from './fitSchematic.ts';
import { flatSchematic, type Room } from './flatSchematic.ts';
import { lengthWords, type Lengths } from './lengthWords.ts';
import { rowMeasures } from './rowMeasures.ts';
import type { Schematic } from './schematic.ts';
import { sectionMeasures, type SectionMeasure } from './sectionMeasures.ts';
import { sockParts } from './sockParts.ts';
import { LEAST_TEXT_MM } from '../textSize.ts';
import { writeSchematic } from './writeSchematic.ts';

/** A schematic to keep: its name without folder, and its text. */
export interface SchematicFile {
  readonly name: string;
  readonly text: string;
  /** `flat`: sections as they are worked; `finished`: the piece as it comes out. */
  readonly shows: 'flat' | 'finished';
  /** The one section that it shows, as print names it; '' where it shows all. */
  readonly section: string;
  /** On paper it is 1 to so many. */
  readonly scale: number;
}

export interface SchematicPrint {
  /** Size of text on paper, mm. Default 2.8 (8 pt). */
  readonly textMm?: number;
  /** Paper to fit on, mm. Default 190 × 200: on A4 with room for words under it, and as large on a screen. */
  readonly widthMm?: number;
  readonly heightMm?: number;
  /** What lengths are said in. Default both. */
  readonly lengths?: Lengths;
  /** Nothing smaller than `textMm`: sections laid flat are drawn larger, each in a file of its own, all at one scale. */
  readonly large?: boolean;
  /** Says the scale in the drawing and its description. Default true; false for a screen, where nothing is to scale for certain. */
  readonly scaleLine?: boolean;
}

/**
 * Schematics of one size from its worked fabric, as SVG at a round scale: every section laid flat, and the finished thing, or one of
 * them where both would be the same drawing. The very bytes that app and command line both give.
 */
export function printSchematic(pattern: Pattern, fabric: Fabric, yarn: Uint8Array | null, size: number, { textMm = 2.8, widthMm = 190, heightMm = 200, lengths = 'both', large = false, scaleLine = true }: SchematicPrint = {}): readonly SchematicFile[] {
  const rows = rowMeasures(fabric, { gauge: pattern.gauge, swatches: pattern.piece?.swatches ?? [], yarn });
  const sections = sectionMeasures(fabric, rows);
  const doubled = doubledSections(pattern);
  const sizeName = pattern.sizes[size] ?? '';
  const paper = { textMm, widthMm, heightMm, lengths, leastMm: large ? textMm : LEAST_TEXT_MM };
  const said = finishedMeasures(fabric, sections, doubled).filter((one) => one.name !== 'opening').map((one) => `${WORDS[one.name] ?? one.name} ${lengthWords(one.cm, lengths)}`).join('; ');
  const parts = partsOf(fabric, sections, doubled, large);
  // Sections of one size are compared with one another: all at the scale of the one that needs most room.
  const flatScale = large ? largestScale(parts.filter(({ shows }) => shows === 'flat').map(({ draw }) => draw), paper) : 1;
  return parts.flatMap(({ shows, section, draw }): SchematicFile[] => {
    const fitted = fitSchematic(draw, paper, shows === 'flat' ? flatScale : 1);
    if (fitted.placed.shapes.length === 0) return [];
    const what = section !== '' ? `${section}, laid flat` : shows === 'flat' ? 'sections laid flat' : 'finished';
    const title = `${pattern.title}: ${what}${sizeName ? `, size ${sizeName}` : ''}`;
    const name = [pattern.title, shows === 'flat' ? 'schematic-flat' : 'schematic', section, sizeName].map((word) => fileWord(word)).filter((word) => word !== '').join('-');
    const desc = `Schematic of ${section !== '' ? `${section} laid flat` : shows === 'finished' ? 'the finished piece' : 'every section laid flat'}, tubes folded in half. ${said}.${scaleLine ? ` Scale 1 to ${fitted.scale}.` : ''}`;
    return [{ name: `${name}.svg`, shows, section, scale: fitted.scale, text: writeSchematic(fitted.placed, fitted.scale, { textMm: fitted.textMm, lengths, scaleLine, title, desc, ...(pattern.designer ? { creator: pattern.designer } : {}) }) }];
  });
}

interface Part {
  readonly shows: SchematicFile['shows'];
  readonly section: string;
  readonly draw: (room: Room) => Schematic;
}

/** What is drawn: the sections in one drawing or one each, and the finished piece where that is another drawing. */
function partsOf(fabric: Fabric, sections: readonly SectionMeasure[], doubled: ReadonlySet<number>, large: boolean): readonly Part[] {
  const shown = sections.filter(({ rows }) => rows.length > 0);
  const isLaidFlat = sockParts(fabric, sections, doubled) === null && shown.every(({ piece }) => piece === 0);
  const finished: Part = { shows: 'finished', section: '', draw: (room) => finishedSchematic(fabric, sections, doubled, large ? { ...room, lineMm: 0 } : room) };
  if (isLaidFlat && (shown.length < 2 || !large)) return [finished];
  const flat = large
    ? shown.map((one): Part => ({ shows: 'flat', section: titled(one.name) || `Section ${one.section + 1}`, draw: (room) => flatSchematic(fabric, [one], room) }))
    : [{ shows: 'flat', section: '', draw: (room: Room) => flatSchematic(fabric, sections, room) } as const];
  return isLaidFlat ? flat : [...flat, finished];
}

const WORDS: Readonly<Partial<Record<string, string>>> = {
  footGirth: 'girth of the foot', calf: 'top of the leg', legLength: 'leg', footLength: 'foot', topWidth: 'far edge', endGirth: 'girth of the far end', across: 'across',
};
