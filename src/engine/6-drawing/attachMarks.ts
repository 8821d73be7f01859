import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';

/** Half the width of a stem and radius of its foot dot, as parts of the cell's smaller side. */
const STEM = 0.055;
const DOT = 0.15;

/** Outline of a stem from a stitch to the open stitch it holds to, with a round dot there. */
export function stemOutline(x: number, y: number, footX: number, footY: number, sideMm: number): number[] {
  const long = Math.hypot(footX - x, footY - y);
  const [ux, uy] = long > 1e-9 ? [(footX - x) / long, (footY - y) / long] : [0, 1];
  const half = STEM * sideMm;
  const dot = DOT * sideMm;
  const points = [x + uy * half, y - ux * half];
  // Round the dot from one side of the stem to the other.
  const from = Math.atan2(half, -Math.sqrt(dot * dot - half * half));
  const corners = 10;
  for (let k = 0; k <= corners; k++) {
    const angle = from - ((2 * from) * k) / corners;
    const [along, aside] = [dot * Math.cos(angle), dot * Math.sin(angle)];
    points.push(footX + ux * along + uy * aside, footY + uy * along - ux * aside);
  }
  points.push(x - uy * half, y + ux * half);
  return points;
}

/** A stem with a dot from each attaching stitch to the open stitch it is worked into: for charts without symbols. */
export function attachMarks(fabric: Fabric, layout: Layout): Mark[] {
  const marks: Mark[] = [];
  const side = Math.min(layout.cellWidthMm, layout.cellHeightMm);
  for (let stitch = layout.first; stitch < layout.end; stitch++) {
    if (!(fabric.flags[stitch]! & FLAG.attaching)) continue;
    const i = stitch - layout.first;
    const c = layout.corners;
    // From the middle of the cell: its head lies on the cell's edge.
    const [x, y] = [(c[i * 8]! + c[i * 8 + 2]! + c[i * 8 + 4]! + c[i * 8 + 6]!) / 4, (c[i * 8 + 1]! + c[i * 8 + 3]! + c[i * 8 + 5]! + c[i * 8 + 7]!) / 4];
    marks.push({ kind: 'area', role: 'attach', points: stemOutline(x, y, layout.footX[i]!, layout.footY[i]!, side), row: fabric.row[stitch]! });
  }
  return marks;
}
