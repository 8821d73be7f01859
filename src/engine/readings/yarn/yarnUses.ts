import type { PieceFacts } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import { amountFor } from '../../notation/instruction.ts';
import { stitchOfCode } from '../../craft/stitches.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { carryOf } from '../../4-colour/carry.ts';
import { colourGrid } from '../../4-colour/colourGrid.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { doubledSections } from '../../6-drawing/schematic/doubledSections.ts';
import { rowMeasures } from '../../6-drawing/schematic/rowMeasures.ts';
import { heightOf, sectionMeasures } from '../../6-drawing/schematic/sectionMeasures.ts';
import type { YarnRate } from './yarnRates.ts';

/** What yarn goes into. */
export type YarnUseKind = 'stitches' | 'carried' | 'ends' | 'seams' | 'fringe';

/** Yarn of one letter in one section for one thing. */
export interface YarnUse {
  /** Section index. */
  readonly section: number;
  /** Yarn index. */
  readonly yarn: number;
  readonly kind: YarnUseKind;
  readonly cm: number;
  /** How far it may be off, as a share. */
  readonly spread: number;
}

/** A sewn seam takes about three times its length (common practice). */
export const SEWN = 3;
/** Carried yarn lies a little slack (from memory). */
export const SLACK = 1.1;
/** A tail that is woven in, cm, unless the designer says otherwise (common practice: 10 to 15). */
export const TAIL_CM = 15;
/** How far lengths that depend on the maker's habit may be off (from memory). */
const HABIT = 0.3;
const MEASURED = 0.05;

/**
 * Every length of yarn in a worked size, by section and yarn: stitches by their kind (more for stitches drawn together and
 * for more legs), carried yarn, the ends of every length that is joined, what is sewn, fringe. Linear in stitches.
 */
export function yarnUses(pattern: Pattern, fabric: Fabric, colours: Colours, facts: PieceFacts, rates: readonly YarnRate[]): readonly YarnUse[] {
  return [...stitchUses(pattern, fabric, colours, rates), ...carriedUses(pattern, fabric, colours, facts), ...sewnUses(pattern, fabric, colours, facts), ...fringeUses(pattern, colours.size)];
}

function stitchUses(pattern: Pattern, fabric: Fabric, colours: Colours, rates: readonly YarnRate[]): YarnUse[] {
  const yarns = pattern.yarns.length;
  const cm = new Float64Array(fabric.sections.length * yarns);
  const off = new Float64Array(cm.length);
  for (let stitch = 0; stitch < fabric.count; stitch++) {
    const row = stitchOfCode(fabric.kind[stitch]!);
    const yarn = colours.yarn[stitch]!;
    const rate = rates[yarn]!.stitchCm(row.kind);
    const bases = fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!;
    const at = fabric.rows[fabric.row[stitch]!]!.section * yarns + yarn;
    const length = rate.value * legsOf(row.legs, fabric.legs[stitch]!) * drawnTogether(bases);
    cm[at]! += length;
    off[at]! += length * rate.spread;
  }
  return listed(cm, off, yarns, 'stitches');
}

/** A bobble of more legs takes more, one of fewer less. */
function legsOf(usual: number, legs: number): number {
  return usual > 0 && legs > 0 ? legs / usual : 1;
}

/** Each further place drawn into a stitch takes about six tenths of one (from memory: one loop pulled up, none to close). */
function drawnTogether(bases: number): number {
  return bases > 1 ? 1 + 0.6 * (bases - 1) : 1;
}

function listed(cm: Float64Array, off: Float64Array, yarns: number, kind: YarnUseKind): YarnUse[] {
  return Array.from(cm, (length, at): YarnUse => ({ section: Math.floor(at / yarns), yarn: at % yarns, kind, cm: length, spread: length > 0 ? off[at]! / length : 0 })).filter((use) => use.cm > 0);
}

function carriedUses(pattern: Pattern, fabric: Fabric, colours: Colours, facts: PieceFacts): YarnUse[] {
  const carry = carryOf(pattern, colourGrid(fabric), colours);
  const stitchCm = pattern.gauge.overCm / pattern.gauge.stitches;
  const rowCm = pattern.gauge.overCm / pattern.gauge.rows;
  const tail = facts.tailCm ?? TAIL_CM;
  return carry.sections.flatMap((section, index) => {
    const over = new Float64Array(pattern.yarns.length);
    for (const row of section.rows) {
      for (const { yarn, stitches } of row.carries) over[yarn]! += stitches * stitchCm * SLACK;
      // What comes from rows below lies up the edge; its way along the row is among the carries.
      for (const { yarn, rows, isCut } of row.travels) if (!isCut) over[yarn]! += rows * rowCm * SLACK;
    }
    const carried = Array.from(over, (cm, yarn): YarnUse => ({ section: index, yarn, kind: 'carried', cm, spread: HABIT }));
    const ends = section.joined.map((count, yarn): YarnUse => ({ section: index, yarn, kind: 'ends', cm: 2 * count * tail, spread: HABIT }));
    return [...carried, ...ends].filter((use) => use.cm > 0);
  });
}

/** Seams of flat pieces, edges doubled and sewn down, rings closed flat: each sewn in the yarn of its last stitch. */
function sewnUses(pattern: Pattern, fabric: Fabric, colours: Colours, facts: PieceFacts): YarnUse[] {
  const sections = sectionMeasures(fabric, rowMeasures(fabric, { gauge: pattern.gauge, swatches: facts.swatches ?? [], yarn: colours.yarn }));
  const doubled = doubledSections(pattern);
  const uses: YarnUse[] = [];
  const sew = (section: number, cm: number) => {
    const last = fabric.sections[section]!;
    const stitch = fabric.rows.slice(last.firstRow, last.endRow).findLast((row) => row.end > row.first)!.end - 1;
    uses.push({ section, yarn: colours.yarn[stitch]!, kind: 'seams', cm: cm * SEWN, spread: HABIT });
  };
  for (const piece of new Set(sections.map((section) => section.piece))) {
    const seamed = sections.filter((section) => section.piece === piece && section.kind === 'seamed');
    if (seamed.length > 0) sew(seamed.at(-1)!.section, seamed.reduce((sum, section) => sum + heightOf(section.rows), 0) / 10);
  }
  for (const { section, rows } of sections) {
    const widest = Math.max(0, ...rows.map((row) => row.widthMm)) / 10;
    if (doubled.has(section)) sew(section, widest);
  }
  // A ring closed flat takes as many widths of a stitch as it has pairs.
  for (const { row, pairs } of fabric.closings) {
    const own = sections.find(({ section }) => section === fabric.rows[row]!.section)?.rows.at(-1);
    if (own) sew(fabric.rows[row]!.section, (pairs.length * own.widthMm) / own.stitches / 10);
  }
  return uses;
}

function fringeUses(pattern: Pattern, size: number): YarnUse[] {
  return pattern.sections.flatMap(({ recipe }, section): YarnUse[] => {
    if (!recipe?.name.endsWith('.fringe')) return [];
    const { bunches, strands, cm, yarn: letter } = recipe.settings;
    const yarn = pattern.yarns.findIndex((one) => one.letter === letter);
    if (bunches === undefined || typeof bunches === 'string' || typeof bunches === 'boolean' || typeof strands !== 'number' || typeof cm !== 'number' || yarn < 0) return [];
    return [{ section, yarn, kind: 'fringe', cm: amountFor(bunches, size) * strands * cm, spread: MEASURED }];
  });
}
