import { stitchCode, stitchOfCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { sectionRows } from '../5-layout/ground.ts';
import type { Layout } from '../5-layout/layout.ts';
import { risesBeside, rowSlots } from '../5-layout/rowSlots.ts';
import type { DrawnStitches } from './drawing.ts';
import type { GlyphTable } from './glyph.ts';
import { CROSS_TURN, stitchGlyph, uprightDown, uprightGlyph } from './stitchGlyph.ts';

const CHAIN = stitchCode('ch');

/** Ghosts first, then the section's stitches in working order. Glyphs are added to `table`; without it no symbols are placed. */
export function drawnStitches(fabric: Fabric, layout: Layout, table: GlyphTable | null): DrawnStitches {
  const own = layout.end - layout.first;
  const { ghosts } = layout;
  const count = ghosts.length + own;
  const stitches: DrawnStitches = {
    count, stitch: new Int32Array(count), row: new Int32Array(count), ghost: new Uint8Array(count), x: new Float32Array(count), y: new Float32Array(count),
    corners: ghosts.length === 0 ? layout.corners : new Float32Array(count * 8), filled: new Uint8Array(count), glyph: new Int32Array(count).fill(-1),
    glyphX: new Float32Array(count), glyphY: new Float32Array(count), glyphTurnRad: new Float32Array(count), ink: new Uint8Array(count),
  };
  const crossTurn = crossTurns(fabric, layout);
  ghosts.forEach((ghost, i) => {
    const height = stitchOfCode(fabric.kind[ghost.stitch]!).height * layout.cellHeightMm;
    const [sin, cos] = [Math.sin(ghost.angle), Math.cos(ghost.angle)];
    const half = layout.cellWidthMm / 2;
    const at = (across: number, down: number): readonly [number, number] => [ghost.headX + across * cos - down * sin, ghost.headY + across * sin + down * cos];
    stitches.corners.set([...at(-half, height), ...at(half, height), ...at(half, 0), ...at(-half, 0)], i * 8);
    [stitches.stitch[i], stitches.row[i], stitches.ghost[i]] = [ghost.stitch, fabric.row[ghost.stitch]!, 1];
    if (table) {
      const foot = at(0, height);
      put(stitches, i, stitchGlyph(table, fabric, { stitch: ghost.stitch, head: [ghost.headX, ghost.headY], foot, feet: [], angle: ghost.angle, shared: false, inSpace: false, across: layout.cellWidthMm }, layout.cellWidthMm, layout.cellHeightMm, crossTurn(ghost.stitch)));
    }
  });
  if (ghosts.length > 0) stitches.corners.set(layout.corners, ghosts.length * 8);
  if (table) placeSymbols(fabric, layout, table, stitches, crossTurn);
  for (let i = 0; i < own; i++) {
    stitches.stitch[ghosts.length + i] = layout.first + i;
    stitches.row[ghosts.length + i] = fabric.row[layout.first + i]!;
  }
  middles(stitches);
  fill(fabric, layout, stitches);
  return stitches;
}

/** How far a cross is turned, by the piece that a stitch belongs to. */
function crossTurns(fabric: Fabric, { kind, parts }: Layout): (stitch: number) => number {
  const own = CROSS_TURN[kind];
  if (parts.every((part) => CROSS_TURN[part.kind] === own)) return () => own;
  const ofRow = new Map(parts.flatMap((part) => part.rows.map((row) => [row, CROSS_TURN[part.kind]] as const)));
  return (stitch) => ofRow.get(fabric.row[stitch]!) ?? own;
}

function put(stitches: DrawnStitches, i: number, placed: ReturnType<typeof stitchGlyph>): void {
  stitches.glyph[i] = placed.glyph;
  stitches.glyphX[i] = placed.x;
  stitches.glyphY[i] = placed.y;
  stitches.glyphTurnRad[i] = placed.turnRad;
}

function middles({ count, corners, x, y }: DrawnStitches): void {
  for (let i = 0; i < count; i++) {
    x[i] = (corners[i * 8]! + corners[i * 8 + 2]! + corners[i * 8 + 4]! + corners[i * 8 + 6]!) / 4;
    y[i] = (corners[i * 8 + 1]! + corners[i * 8 + 3]! + corners[i * 8 + 5]! + corners[i * 8 + 7]!) / 4;
  }
}

/** Stitches that stand in a slot are filled, in grey too; chains only as a turning chain that counts. */
function fill(fabric: Fabric, layout: Layout, { filled }: DrawnStitches): void {
  const offset = layout.ghosts.length - layout.first;
  layout.ghosts.forEach(({ stitch }, i) => (filled[i] = fabric.kind[stitch] === CHAIN ? 0 : 1));
  for (const row of sectionRows(fabric, layout.section)) {
    const { slots, stack } = rowSlots(fabric, row, null);
    for (const slot of slots) if (fabric.kind[slot] !== CHAIN) filled[offset + slot] = 1;
    for (let stitch = stack[0]; stitch < stack[1]; stitch++) filled[offset + stitch] = 1;
  }
}

function placeSymbols(fabric: Fabric, layout: Layout, table: GlyphTable, stitches: DrawnStitches, crossTurn: (stitch: number) => number): void {
  const heads = new Map(layout.ghosts.filter(({ stitch }) => stitch < layout.first || stitch >= layout.end).map((ghost) => [ghost.stitch, ghost]));
  const offset = layout.ghosts.length;
  let before = { stitch: -1, lengthMm: NaN, isShared: false, glyph: -1, down: 0 };
  const isWrongSide = fabric.rows.map((row) => row.side === 'WS' && row.word !== 'foundation');
  for (let stitch = layout.first; stitch < layout.end; stitch++) {
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
    const wrong = isWrongSide[fabric.row[stitch]!];
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
