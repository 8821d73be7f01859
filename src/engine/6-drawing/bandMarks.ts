import type { Fabric } from '../3-fabric/fabric.ts';
import { sectionRows } from '../5-layout/ground.ts';
import type { Layout } from '../5-layout/layout.ts';
import { rowSlots } from '../5-layout/rowSlots.ts';
import type { Mark } from './drawing.ts';

/** One area a row, round all its cells: a tint that tells right side from wrong side. */
export function bandMarks(fabric: Fabric, layout: Layout): Mark[] {
  const c = layout.corners;
  return sectionRows(fabric, layout.section).flatMap((row, r, rows) => {
    const { slots, stack } = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (slots.length === 0 || row.word === 'foundation') return [];
    const ordered = c[(slots[0]! - layout.first) * 8]! <= c[(slots.at(-1)! - layout.first) * 8]! ? slots : slots.toReversed();
    const top: number[] = [];
    const bottom: number[] = [];
    for (const slot of ordered) {
      const i = (slot - layout.first) * 8;
      append(top, c[i + 6]!, c[i + 7]!);
      append(top, c[i + 4]!, c[i + 5]!);
      const low = slot === stack[1] - 1 && stack[1] > stack[0] ? (stack[0] - layout.first) * 8 : i;
      append(bottom, c[low]!, c[low + 1]!);
      append(bottom, c[low + 2]!, c[low + 3]!);
    }
    const points = top;
    for (let i = bottom.length - 2; i >= 0; i -= 2) points.push(bottom[i]!, bottom[i + 1]!);
    return [{ kind: 'area', role: row.side === 'RS' ? 'bandRS' : 'bandWS', points, row: row.index } satisfies Mark];
  });
}

/** Adds a point, leaving out those in the middle of a straight line along the axes. */
function append(points: number[], x: number, y: number): void {
  const n = points.length;
  if (n >= 2 && points[n - 2] === x && points[n - 1] === y) return;
  if (n >= 4 && points[n - 1] === y && points[n - 3] === y) points[n - 2] = x;
  else points.push(x, y);
}
