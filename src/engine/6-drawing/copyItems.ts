import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Drawing, DrawnStitches } from './drawing.ts';
import { addGlyph, type GlyphTable } from './glyph.ts';
import type { DrawnBefore } from './keptItems.ts';
import { placeSymbols, type Drawn } from './placeSymbols.ts';
import { lengthSteps, uprightDown } from './stitchGlyph.ts';

const CHAIN = stitchCode('ch');
const COPIED = ['x', 'y', 'filled', 'glyphX', 'glyphY', 'glyphTurnRad', 'ink'] as const satisfies readonly (keyof DrawnStitches)[];

/** Items as they were drawn before; `adopted`: the earlier glyphs' numbers as they are now. */
export function copyItems({ layout, table, stitches }: Drawn, { stitches: old, glyphs }: Drawing, from: number, at: number, count: number, adopted: Map<number, number>): void {
  for (const name of COPIED) stitches[name].set(old[name].subarray(from, from + count), at);
  const inGhosts = Math.min(count, layout.ghosts.length - at);
  if (inGhosts > 0) stitches.corners.set(old.corners.subarray(from * 8, (from + inGhosts) * 8), at * 8);
  if (!table) return;
  const { glyph } = stitches;
  let [was, is] = [-1, -1];
  for (let i = 0; i < count; i++) {
    const own = old.glyph[from + i]!;
    if (own !== was) [was, is] = [own, adopt(table, glyphs, own, adopted)];
    glyph[at + i] = is;
  }
}

function adopt(table: GlyphTable, glyphs: Drawing['glyphs'], glyph: number, adopted: Map<number, number>): number {
  if (glyph < 0) return -1;
  const known = adopted.get(glyph) ?? addGlyph(table, glyphs[glyph]!.name, glyphs[glyph]!.strokes);
  adopted.set(glyph, known);
  return known;
}

/**
 * Stitches that stand as they stood but higher or lower: those upright on one foot keep their symbols, as long as their length comes
 * out the same; all others are drawn anew. The very same numbers as if all were.
 */
export function moveItems(drawn: Drawn, { drawing: { stitches: old, glyphs }, layout: was }: DrawnBefore, from: number, at: number, count: number, adopted: Map<number, number>): void {
  const { fabric, layout, table, stitches } = drawn;
  const { flags, kind, baseStart } = fabric;
  const { angle, headX, headY, footX, footY, corners, first, cellHeightMm: h } = layout;
  const { y, glyph, glyphY } = stitches;
  for (const name of COPIED) stitches[name].set(old[name].subarray(from, from + count), at);
  const [offset, oldOffset] = [at - layout.ghosts.length, from - was.ghosts.length];
  for (let i = offset, n = at; n < at + count; i++, n++) y[n] = (corners[i * 8 + 1]! + corners[i * 8 + 3]! + corners[i * 8 + 5]! + corners[i * 8 + 7]!) / 4;
  if (!table) return;
  let before = { lengthMm: NaN, steps: NaN, kind: -1, down: 0, oldLength: NaN, oldSteps: NaN, glyph: -1, now: -1 };
  for (let k = 0; k < count; k++) {
    const [i, n] = [offset + k, at + k];
    const stitch = first + i;
    const single = baseStart[stitch + 1]! - baseStart[stitch]! < 2 && angle[i] === 0 && headX[i] === footX[i] && !(kind[stitch] === CHAIN && flags[stitch]! & FLAG.space);
    const lengthMm = Math.abs(headY[i]! - footY[i]!);
    const oldLength = Math.abs(was.headY[oldOffset + k]! - was.footY[oldOffset + k]!);
    if (single && (lengthMm !== before.lengthMm || kind[stitch] !== before.kind || oldLength !== before.oldLength)) {
      before = { ...before, lengthMm, steps: lengthSteps(lengthMm, h), kind: kind[stitch]!, down: uprightDown(fabric, stitch, lengthMm, h), oldLength, oldSteps: lengthSteps(oldLength, h) };
    }
    if (!single || before.steps !== before.oldSteps) {
      placeSymbols({ ...drawn, table }, n, n + 1);
      continue;
    }
    const own = old.glyph[from + k]!;
    if (own !== before.glyph) [before.glyph, before.now] = [own, adopt(table, glyphs, own, adopted)];
    glyph[n] = before.now;
    glyphY[n] = headY[i]! + before.down;
  }
}
