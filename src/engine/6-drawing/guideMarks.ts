import type { Fabric } from '../3-fabric/fabric.ts';
import type { Guide, Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';
import { textWidth } from './textSize.ts';

/** Half height and half width of the mark for a round's start, in row heights and stitch widths. */
const START_MARK = [0.24, 0.13] as const;

/**
 * Seam and centre lines, arrows, starts of rounds, names of other sections, and the bands of open stitches with their words.
 * `nameDownMm`: room that the stitch numbers take between grey stitches and the names under them.
 */
export function guideMarks(fabric: Fabric, layout: Layout, sizeMm: number, nameDownMm: number): Mark[] {
  return layout.guides.flatMap((guide) => marksOf(fabric, layout, guide, sizeMm, nameDownMm));
}

function marksOf(fabric: Fabric, layout: Layout, guide: Guide, sizeMm: number, nameDownMm: number): Mark[] {
  switch (guide.kind) {
    case 'seam': case 'centre': return [{ kind: 'line', role: guide.kind, points: guide.points, row: null }];
    case 'way': return [{ kind: 'line', role: 'direction', points: guide.points, row: guide.row }];
    case 'start': return [startMark(layout, guide)];
    case 'from': return nameMarks(fabric, guide, sizeMm, nameDownMm);
    case 'open': return openMarks(fabric, guide, sizeMm, layout.cellWidthMm);
  }
}

/** A small lozenge. */
function startMark({ cellWidthMm: w, cellHeightMm: h }: Layout, { x, y, turnRad, row }: Extract<Guide, { kind: 'start' }>): Mark {
  const [sin, cos] = [Math.sin(turnRad), Math.cos(turnRad)];
  const at = (across: number, down: number): readonly [number, number] => [x + across * cos - down * sin, y + across * sin + down * cos];
  const [tall, wide] = [START_MARK[0] * h, START_MARK[1] * w];
  return { kind: 'area', role: 'seam', points: [...at(0, -tall), ...at(wide, 0), ...at(0, tall), ...at(-wide, 0)], row };
}

/** A line along the stitches and the section's name, if it is not much longer than the line. */
function nameMarks(fabric: Fabric, { points, section, textX, textY }: Extract<Guide, { kind: 'from' }>, sizeMm: number, downMm: number): Mark[] {
  const name = fabric.sections[section]?.name ?? '';
  const long = Math.max(...points.filter((_, i) => i % 2 === 0)) - Math.min(...points.filter((_, i) => i % 2 === 0));
  if (name === '' || textWidth(name, sizeMm) > long + 2 * sizeMm) return [];
  return [
    { kind: 'line', role: 'leader', points: points.map((value, i) => (i % 2 === 0 ? value : value + downMm)), row: null },
    { kind: 'text', role: 'caption', x: textX, y: textY + downMm + 0.8 * sizeMm, text: name, sizeMm, anchor: 'middle', turnRad: 0, row: null },
  ];
}

function openMarks(fabric: Fabric, guide: Extract<Guide, { kind: 'open' }>, sizeMm: number, cellMm: number): Mark[] {
  const { points, count, row, lastRow } = guide;
  const [number, last] = [fabric.rows[row]?.number ?? null, fabric.rows[lastRow]?.number ?? null];
  const by = number === null ? '' : last === null || last === number ? ` by row ${number}` : ` by rows ${number}–${last}`;
  const full = `${count} ${count === 1 ? 'st' : 'sts'} left open${by}`;
  const band: Mark[] = points.length > 0 ? [{ kind: 'area', role: 'open', points, row }] : [];
  // Beside a short band, or in a column narrower than they are high, words would run into their neighbours: the count must do, and one stitch is seen to be one.
  const room = points.length === 0 ? cellMm >= 0.9 * sizeMm : longSide(points) >= 0.6 * textWidth(full, sizeMm);
  const words = room ? full : count > 1 ? String(count) : '';
  if (count === 0 || words === '') return band;
  return [...band, { kind: 'text', role: 'openText', x: guide.textX, y: guide.textY, text: words, sizeMm, anchor: 'middle', turnRad: guide.turnRad, row }];
}

/** How far a band's outline reaches from where it begins, mm. */
function longSide(points: readonly number[]): number {
  let long = 0;
  for (let i = 2; i + 1 < points.length; i += 2) long = Math.max(long, Math.hypot(points[i]! - points[0]!, points[i + 1]! - points[1]!));
  return long;
}
