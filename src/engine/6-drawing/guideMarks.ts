import type { Fabric } from '../3-fabric/fabric.ts';
import type { Guide, Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';

/** Seam and centre lines, and the bands of open stitches with their words. */
export function guideMarks(fabric: Fabric, layout: Layout, sizeMm: number): Mark[] {
  return layout.guides.flatMap((guide) => marksOf(fabric, guide, sizeMm));
}

function marksOf(fabric: Fabric, guide: Guide, sizeMm: number): Mark[] {
  if (guide.kind !== 'open') return [{ kind: 'line', role: guide.kind, points: guide.points, row: null }];
  const number = fabric.rows[guide.row]?.number ?? null;
  const words = `${guide.count} ${guide.count === 1 ? 'st' : 'sts'} left open${number === null ? '' : ` by row ${number}`}`;
  return [
    { kind: 'area', role: 'open', points: guide.points, row: guide.row },
    { kind: 'text', role: 'openText', x: guide.textX, y: guide.textY, text: words, sizeMm, anchor: 'middle', turnRad: guide.turnRad, row: guide.row },
  ];
}
