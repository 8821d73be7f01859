import type { Fabric } from '../3-fabric/fabric.ts';
import type { Guide, Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';
import { textWidth } from './textSize.ts';

/** Seam and centre lines, and the bands of open stitches with their words. */
export function guideMarks(fabric: Fabric, layout: Layout, sizeMm: number): Mark[] {
  return layout.guides.flatMap((guide) => marksOf(fabric, guide, sizeMm));
}

function marksOf(fabric: Fabric, guide: Guide, sizeMm: number): Mark[] {
  if (guide.kind !== 'open') return [{ kind: 'line', role: guide.kind, points: guide.points, row: null }];
  const number = fabric.rows[guide.row]?.number ?? null;
  const full = `${guide.count} ${guide.count === 1 ? 'st' : 'sts'} left open${number === null ? '' : ` by row ${number}`}`;
  const band: Mark = { kind: 'area', role: 'open', points: guide.points, row: guide.row };
  // Beside a short band words would run into its neighbours: its count must do, and one stitch is seen to be one.
  const words = longSide(guide.points) >= 0.6 * textWidth(full, sizeMm) ? full : guide.count > 1 ? String(guide.count) : '';
  if (words === '') return [band];
  return [
    band,
    { kind: 'text', role: 'openText', x: guide.textX, y: guide.textY, text: words, sizeMm, anchor: 'middle', turnRad: guide.turnRad, row: guide.row },
  ];
}

/** Length of the first edge of a band's outline, mm. */
function longSide(points: readonly number[]): number {
  return Math.hypot(points[2]! - points[0]!, points[3]! - points[1]!);
}
