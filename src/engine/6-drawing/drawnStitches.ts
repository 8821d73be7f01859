import { stitchCode, stitchOfCode } from '../craft/stitches.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { sectionRows } from '../5-layout/ground.ts';
import type { Layout } from '../5-layout/layout.ts';
import { rowSlots } from '../5-layout/rowSlots.ts';
import { copyItems, moveItems } from './copyItems.ts';
import type { DrawnStitches } from './drawing.ts';
import type { GlyphTable } from './glyph.ts';
import type { KeptItems } from './keptItems.ts';
import { placeSymbols, put, type Drawn } from './placeSymbols.ts';
import { CROSS_TURN, stitchGlyph, uprightDown, uprightGlyph } from './stitchGlyph.ts';

const CHAIN = stitchCode('ch');

/**
 * Ghosts first, then the section's stitches in working order. Glyphs are added to `table`; without it no symbols are placed. What
 * stands where it stood in an earlier drawing is copied from there, the very same numbers.
 */
export function drawnStitches(fabric: Fabric, layout: Layout, table: GlyphTable | null, kept: KeptItems | null = null): DrawnStitches {
  const { ghosts, first, end } = layout;
  const count = ghosts.length + end - first;
  const stitches: DrawnStitches = {
    count, stitch: new Int32Array(count), row: new Int32Array(count), ghost: new Uint8Array(count).fill(1, 0, ghosts.length), x: new Float32Array(count), y: new Float32Array(count),
    corners: ghosts.length === 0 ? layout.corners : new Float32Array(count * 8), filled: new Uint8Array(count), glyph: new Int32Array(count).fill(-1),
    glyphX: new Float32Array(count), glyphY: new Float32Array(count), glyphTurnRad: new Float32Array(count), ink: new Uint8Array(count),
  };
  for (let i = 0; i < ghosts.length; i++) [stitches.stitch[i], stitches.row[i]] = [ghosts[i]!.stitch, fabric.row[ghosts[i]!.stitch]!];
  for (let i = ghosts.length; i < count; i++) stitches.stitch[i] = first + i - ghosts.length;
  stitches.row.set(fabric.row.subarray(first, end), ghosts.length);
  if (ghosts.length > 0) stitches.corners.set(layout.corners, ghosts.length * 8);

  const drawn: Drawn = { fabric, layout, table, stitches, crossTurn: crossTurns(fabric, layout) };
  const adopted = new Map<number, number>();
  for (const { at, count: many, from, isMoved } of kept?.runs ?? [{ at: 0, count, from: -1, isMoved: false }]) {
    if (from >= 0 && isMoved) moveItems(drawn, kept!.before, from, at, many, adopted);
    else if (from >= 0) copyItems(drawn, kept!.before.drawing, from, at, many, adopted);
    else {
      drawGhosts(drawn, at, Math.min(at + many, ghosts.length));
      if (table) placeSymbols({ ...drawn, table }, Math.max(at, ghosts.length), at + many);
      middles(stitches, at, at + many);
    }
  }
  fill(fabric, layout, stitches, kept);
  return stitches;
}

function drawGhosts(drawn: Drawn, from: number, end: number): void {
  const { fabric, layout: { ghosts, cellWidthMm: w, cellHeightMm: h }, table, stitches, crossTurn } = drawn;
  for (let i = from; i < end; i++) {
    const ghost = ghosts[i]!;
    const { stitch, headX: x, headY: y } = ghost;
    const height = stitchOfCode(fabric.kind[stitch]!).height * h;
    const [sin, cos] = ghost.angle === 0 ? [0, 1] : [Math.sin(ghost.angle), Math.cos(ghost.angle)];
    const c = i * 8;
    for (let k = 0; k < 4; k++) {
      const [across, down] = [k === 1 || k === 2 ? w / 2 : -w / 2, k < 2 ? height : 0];
      stitches.corners[c + 2 * k] = x + across * cos - down * sin;
      stitches.corners[c + 2 * k + 1] = y + across * sin + down * cos;
    }
    if (!table) continue;
    const foot = [x - height * sin, y + height * cos] as const;
    const lengthMm = Math.abs(foot[1] - y);
    const plain = ghost.angle === 0 ? uprightGlyph(table, fabric, stitch, lengthMm, false, false, h) : -1;
    if (plain >= 0) put(stitches, i, { glyph: plain, x, y: y + uprightDown(fabric, stitch, lengthMm, h), turnRad: ghost.angle });
    else put(stitches, i, stitchGlyph(table, fabric, { stitch, head: [x, y], foot, feet: [], angle: ghost.angle, shared: false, inSpace: false, across: w }, w, h, crossTurn(stitch)));
  }
}

/** How far a cross is turned, by the piece that a stitch belongs to. */
function crossTurns(fabric: Fabric, { kind, parts }: Layout): (stitch: number) => number {
  const own = CROSS_TURN[kind];
  if (parts.every((part) => CROSS_TURN[part.kind] === own)) return () => own;
  const ofRow = new Map(parts.flatMap((part) => part.rows.map((row) => [row, CROSS_TURN[part.kind]] as const)));
  return (stitch) => ofRow.get(fabric.row[stitch]!) ?? own;
}

/** Stitches that stand in a slot are filled, in grey too; chains only as a turning chain that counts. */
function fill(fabric: Fabric, layout: Layout, { filled }: DrawnStitches, kept: KeptItems | null): void {
  const offset = layout.ghosts.length - layout.first;
  layout.ghosts.forEach(({ stitch }, i) => (filled[i] = fabric.kind[stitch] === CHAIN ? 0 : 1));
  for (const [r, row] of sectionRows(fabric, layout.section).entries()) {
    if (kept && kept.oldOf[r]! >= 0) continue;
    const { slots, stack } = rowSlots(fabric, row, null);
    for (const slot of slots) if (fabric.kind[slot] !== CHAIN) filled[offset + slot] = 1;
    for (let stitch = stack[0]; stitch < stack[1]; stitch++) filled[offset + stitch] = 1;
  }
}

function middles({ corners, x, y }: DrawnStitches, from: number, end: number): void {
  for (let i = from; i < end; i++) {
    x[i] = (corners[i * 8]! + corners[i * 8 + 2]! + corners[i * 8 + 4]! + corners[i * 8 + 6]!) / 4;
    y[i] = (corners[i * 8 + 1]! + corners[i * 8 + 3]! + corners[i * 8 + 5]! + corners[i * 8 + 7]!) / 4;
  }
}
