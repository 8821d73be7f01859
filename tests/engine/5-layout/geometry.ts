import type { Layout } from '../../../src/engine/5-layout/layout.ts';
import type { Gauge } from '../../../src/engine/1-pattern/pattern.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import type { LayOutOptions } from '../../../src/engine/5-layout/layOutSection.ts';
import { rowSlots } from '../../../src/engine/5-layout/rowSlots.ts';
import { sectionRows } from '../../../src/engine/5-layout/ground.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { workText } from '../workText.ts';

/** A stitch is 10 mm wide and 9 mm tall: easy numbers, exact in binary. */
export const GAUGE: Gauge = { stitches: 10, rows: 100 / 9, overCm: 10, stitch: 'sc' };
export const W = 10;
export const H = 9;

/** Works a text and lays out one of its sections. */
export function laid(text: string, section = 0, options: LayOutOptions = {}): { layout: Layout; fabric: Fabric } {
  const { fabric } = workText(text);
  return { fabric, layout: layOut(fabric, section, GAUGE, options) };
}

/** Heads of each worked row's slots from left to right, rows from the first up. */
export function slotHeads(fabric: Fabric, layout: Layout): { x: number[]; y: number[]; stitches: number[] }[] {
  return sectionRows(fabric, layout.section).map((row, r, rows) => {
    const stitches = [...rowSlots(fabric, row, rows[r + 1] ?? null).slots];
    return { stitches, x: stitches.map((slot) => layout.headX[slot - layout.first]!), y: stitches.map((slot) => layout.headY[slot - layout.first]!) };
  });
}

/** Corners of a stitch: [bottom left, bottom right, top right, top left] as points. */
export function cornersOf(layout: Layout, stitch: number): [number, number][] {
  const from = (stitch - layout.first) * 8;
  return [0, 1, 2, 3].map((k) => [layout.corners[from + 2 * k]!, layout.corners[from + 2 * k + 1]!]);
}
