import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';

/** A line from each attaching stitch to the open stitch it is worked into: for charts without symbols. */
export function attachMarks(fabric: Fabric, layout: Layout): Mark[] {
  const marks: Mark[] = [];
  for (let stitch = layout.first; stitch < layout.end; stitch++) {
    if (!(fabric.flags[stitch]! & FLAG.attaching)) continue;
    const i = stitch - layout.first;
    const c = layout.corners;
    // From the middle of the cell: its head lies on the cell's edge.
    const [x, y] = [(c[i * 8]! + c[i * 8 + 2]! + c[i * 8 + 4]! + c[i * 8 + 6]!) / 4, (c[i * 8 + 1]! + c[i * 8 + 3]! + c[i * 8 + 5]! + c[i * 8 + 7]!) / 4];
    marks.push({ kind: 'line', role: 'attach', points: [x, y, layout.footX[i]!, layout.footY[i]!], row: fabric.row[stitch]! });
  }
  return marks;
}
