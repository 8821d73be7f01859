import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { Layout } from '../5-layout/layout.ts';
import { risesBeside } from '../5-layout/rowSlots.ts';
import type { DrawnStitches } from './drawing.ts';
import type { GlyphTable } from './glyph.ts';
import { stitchGlyph, uprightDown, uprightGlyph } from './stitchGlyph.ts';

const CHAIN = stitchCode('ch');

/** What items are drawn from and into. */
export interface Drawn {
  readonly fabric: Fabric;
  readonly layout: Layout;
  /** Null: no symbols. */
  readonly table: GlyphTable | null;
  readonly stitches: DrawnStitches;
  readonly crossTurn: (stitch: number) => number;
}

/** Puts a glyph at an item. */
export function put(stitches: DrawnStitches, i: number, placed: ReturnType<typeof stitchGlyph>): void {
  stitches.glyph[i] = placed.glyph;
  stitches.glyphX[i] = placed.x;
  stitches.glyphY[i] = placed.y;
  stitches.glyphTurnRad[i] = placed.turnRad;
}

/** Places the symbols of the items [from, end), which are stitches of the section. */
export function placeSymbols({ fabric, layout, table, stitches, crossTurn }: Drawn & { readonly table: GlyphTable }, from: number, end: number): void {
  const heads = new Map(layout.ghosts.filter(({ stitch }) => stitch < layout.first || stitch >= layout.end).map((ghost) => [ghost.stitch, ghost]));
  const offset = layout.ghosts.length;
  const [firstStitch, endStitch] = [layout.first + from - offset, layout.first + end - offset];
  let before = { stitch: -1, lengthMm: NaN, isShared: false, glyph: -1, down: 0 };
  for (let stitch = firstStitch; stitch < endStitch; stitch++) {
    const i = stitch - layout.first;
    const flags = fabric.flags[stitch]!;
    const from = fabric.baseStart[stitch]!;
    const bases = fabric.baseStart[stitch + 1]! - from;
    const inSpace = (flags & FLAG.inSpace) !== 0;
    const attaching = (flags & FLAG.attaching) !== 0;
    const spike = (flags & FLAG.spike) !== 0;
    const chain = fabric.kind[stitch] === CHAIN;
    const sharing = bases === 1 && !chain && !(flags & (FLAG.spike | FLAG.attaching | FLAG.join)) ? sharers(fabric, stitch) : 1;
    const shared = sharing > 1 && !inSpace;
    const { side, word } = fabric.rows[fabric.row[stitch]!]!;
    const wrong = side === 'WS' && word !== 'foundation';
    const shaping = (bases > 1 && !inSpace) || (shared && sharing <= 3);
    stitches.ink[offset + i] = attaching || spike ? 2 : shaping ? 3 : wrong ? 1 : 0;
    if (bases < 2 && layout.angle[i] === 0 && layout.headX[i] === layout.footX[i] && !(chain && flags & FLAG.space)) {
      const lengthMm = Math.abs(layout.headY[i]! - layout.footY[i]!);
      const isShared = shared || attaching || spike;
      // Mostly it is drawn as the stitch before it.
      if (before.glyph < 0 || before.lengthMm !== lengthMm || before.isShared !== isShared || !sameKind(fabric, before.stitch, stitch)) {
        const glyph = uprightGlyph(table, fabric, stitch, lengthMm, isShared, inSpace, layout.cellHeightMm);
        before = { stitch, lengthMm, isShared, glyph, down: uprightDown(fabric, stitch, lengthMm, layout.cellHeightMm) };
      }
      if (before.glyph >= 0) {
        stitches.glyph[offset + i] = before.glyph;
        stitches.glyphX[offset + i] = layout.headX[i]!;
        stitches.glyphY[offset + i] = layout.headY[i]! + before.down;
        continue;
      }
    }
    const foot = [layout.footX[i]!, layout.footY[i]!] as const;
    put(stitches, offset + i, stitchGlyph(table, fabric, {
      stitch, head: [layout.headX[i]!, layout.headY[i]!], foot, feet: bases > 1 && !inSpace ? feetOf(fabric, layout, heads, stitch, foot) : [],
      angle: layout.angle[i]!, shared: shared || attaching || spike, inSpace, across: chain && flags & FLAG.space ? Math.hypot(layout.corners[i * 8 + 2]! - layout.corners[i * 8]!, layout.corners[i * 8 + 3]! - layout.corners[i * 8 + 1]!) : layout.cellWidthMm,
    }, layout.cellWidthMm, layout.cellHeightMm, crossTurn(stitch)));
  }
}

/** Whether two stitches of one row are of a kind in all that their symbols show. */
function sameKind({ row, kind, legKind, legs, flags }: Fabric, one: number, other: number): boolean {
  return row[one] === row[other] && kind[one] === kind[other] && flags[one] === flags[other] && legs[one] === legs[other] && legKind[one] === legKind[other];
}

/** How many stitches one after another (chains between them apart) are worked into the same single base. */
function sharers(fabric: Fabric, stitch: number): number {
  const row = fabric.row[stitch]!;
  const base = fabric.bases[fabric.baseStart[stitch]!]!;
  let count = 1;
  for (const step of [-1, 1]) {
    for (let other = stitch + step; other >= 0 && other < fabric.count && fabric.row[other] === row; other += step) {
      if (fabric.kind[other] === CHAIN && !(fabric.flags[other]! & FLAG.turning)) continue;
      const from = fabric.baseStart[other]!;
      if (fabric.flags[other]! & FLAG.turning && risesBeside(fabric, base)) break;
      if (fabric.baseStart[other + 1]! - from !== 1 || fabric.bases[from] !== base || fabric.flags[other]! & (FLAG.join | FLAG.attaching)) break;
      count++;
    }
  }
  return count;
}

/** Heads of all bases of a stitch, moved with its foot where a tube is unrolled. */
function feetOf(fabric: Fabric, layout: Layout, heads: ReadonlyMap<number, { readonly headX: number; readonly headY: number }>, stitch: number, foot: readonly [number, number]): (readonly [number, number])[] {
  const feet: (readonly [number, number])[] = [];
  for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
    const base = fabric.bases[b]!;
    const ghost = heads.get(base);
    if (ghost) feet.push([ghost.headX, ghost.headY]);
    else if (base >= layout.first && base < layout.end) feet.push([layout.headX[base - layout.first]!, layout.headY[base - layout.first]!]);
  }
  if (feet.length === 0) return [];
  const [x, y] = [feet.reduce((sum, [fx]) => sum + fx, 0) / feet.length, feet.reduce((sum, [, fy]) => sum + fy, 0) / feet.length];
  return feet.map(([fx, fy]) => [fx + foot[0] - x, fy + foot[1] - y]);
}
