import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { doubledSections } from './doubledSections.ts';
import { finishedMeasures } from './finishedMeasures.ts';
import { finishedSchematic } from './finishedSchematic.ts';
import { flatSchematic, type Room } from './flatSchematic.ts';
import { lengthWords } from './lengthWords.ts';
import { rowMeasures } from './rowMeasures.ts';
import type { Schematic } from './schematic.ts';
import { sectionMeasures } from './sectionMeasures.ts';
import { LEAST_TEXT_MM } from '../textSize.ts';
import { dimensionRoom, schematicScale, writeSchematic } from './writeSchematic.ts';

/** A schematic to keep: its name without folder, and its text. */
export interface SchematicFile {
  readonly name: string;
  readonly text: string;
}

export interface SchematicPrint {
  /** Size of text on paper, mm. Default 2.8 (8 pt). */
  readonly textMm?: number;
  /** Paper to fit on, mm. Default 190 × 200: on A4 with room for words under it, and as large on a screen. */
  readonly widthMm?: number;
  readonly heightMm?: number;
}

/**
 * Schematics of one size from its worked fabric, as SVG at a round scale: every section laid flat, and the finished thing. The
 * very bytes that app and command line both give.
 */
export function printSchematic(pattern: Pattern, fabric: Fabric, yarn: Uint8Array | null, size: number, { textMm = 2.8, widthMm = 190, heightMm = 200 }: SchematicPrint = {}): readonly SchematicFile[] {
  const rows = rowMeasures(fabric, { gauge: pattern.gauge, swatches: pattern.piece?.swatches ?? [], yarn });
  const sections = sectionMeasures(fabric, rows);
  const doubled = doubledSections(pattern);
  const sizeName = pattern.sizes[size] ?? '';
  const paper = { textMm, widthMm, heightMm };
  const measures = finishedMeasures(fabric, sections, doubled);
  const said = measures.filter((one) => one.name !== 'opening').map((one) => `${WORDS[one.name] ?? one.name} ${lengthWords(one.cm)}`).join('; ');
  return (['flat', 'finished'] as const).flatMap((part): SchematicFile[] => {
    const drawn = fitted((room) => (part === 'flat' ? flatSchematic(fabric, sections, room) : finishedSchematic(fabric, sections, doubled, room)), paper);
    if (drawn.schematic.shapes.length === 0) return [];
    const what = part === 'flat' ? 'sections laid flat' : 'finished';
    const title = `${pattern.title}: ${what}${sizeName ? `, size ${sizeName}` : ''}`;
    const name = [pattern.title, part === 'flat' ? 'schematic-flat' : 'schematic', sizeName].map(fileWord).filter((word) => word !== '').join('-');
    const desc = `Schematic of ${what === 'finished' ? 'the finished piece' : 'every section laid flat'}, tubes folded in half. ${said}. Scale 1 to ${drawn.scale}.`;
    return [{ name: `${name}.svg`, text: writeSchematic(drawn.schematic, drawn.scale, { ...paper, textMm: drawn.textMm, title, desc, ...(pattern.designer ? { creator: pattern.designer } : {}) }) }];
  });
}

/** Words may make a drawing so many times smaller than it would be without them. */
const SMALLER_FOR_WORDS = 2.5;
/** Text of hardly any size, mm. */
const NO_TEXT_MM = 0.2;

const WORDS: Readonly<Partial<Record<string, string>>> = {
  footGirth: 'girth of the foot', calf: 'top of the leg', legLength: 'leg', footLength: 'foot', topWidth: 'far edge', endGirth: 'girth of the far end', across: 'across',
};

interface Fitted {
  readonly schematic: Schematic;
  readonly scale: number;
  readonly textMm: number;
}

/** Text is made smaller by such steps where its words leave no room for the shapes at any scale. */
const SMALLER = 0.94;

/** Draws in the largest text, not above the one asked for, that leaves room for the shapes; in the least text where none does. */
function fitted(draw: (room: Room) => Schematic, paper: { readonly textMm: number; readonly widthMm: number; readonly heightMm: number }): Fitted {
  const bare = fittedInText(draw, { ...paper, textMm: NO_TEXT_MM }, Infinity);
  const least = (bare?.scale ?? 1) * SMALLER_FOR_WORDS;
  for (let textMm = paper.textMm; textMm > LEAST_TEXT_MM; textMm *= SMALLER) {
    const found = fittedInText(draw, { ...paper, textMm }, least);
    if (found) return found;
  }
  return fittedInText(draw, { ...paper, textMm: LEAST_TEXT_MM }, Infinity)!;
}

/** Draws at the largest scale that fits: room between shapes is measured on paper, so it grows with the scale. Null where that is smaller than 1 to `least`; the last that was tried where none fits at all. */
function fittedInText(draw: (room: Room) => Schematic, paper: { readonly textMm: number; readonly widthMm: number; readonly heightMm: number }, least: number): Fitted | null {
  let scale = 1;
  let last: Fitted | null = null;
  for (let tries = 0; tries < 40; tries++) {
    const schematic = draw({ gapMm: dimensionRoom(paper.textMm) * scale, textMm: paper.textMm * scale, lineMm: (paper.widthMm - 2 * dimensionRoom(paper.textMm) - paper.textMm * 12) * scale });
    const { width, height } = extent(schematic);
    const wanted = schematicScale(width, height, paper);
    last = { schematic, scale, textMm: paper.textMm };
    if (wanted <= scale) return last;
    if (wanted > least) return null;
    scale = wanted;
  }
  return least === Infinity ? last : null;
}

function extent(schematic: Schematic): { readonly width: number; readonly height: number } {
  const points = schematic.shapes.flatMap((shape) => shape.outlines).flat();
  const xs = points.filter((_, i) => i % 2 === 0);
  const ys = points.filter((_, i) => i % 2 === 1);
  const span = (values: readonly number[]) => (values.length === 0 ? 0 : values.reduce((most, value) => Math.max(most, value), -Infinity) - values.reduce((least, value) => Math.min(least, value), Infinity));
  return { width: span(xs), height: span(ys) };
}

function fileWord(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 40);
}
