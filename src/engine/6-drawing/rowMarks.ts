import type { Fabric } from '../3-fabric/fabric.ts';
import type { LaidRow, Layout } from '../5-layout/layout.ts';
import type { Mark } from './drawing.ts';

/** Row numbers, direction arrows and leaders. Rows without a number (foundations, steps) get only an arrow if they are worked. */
export function rowMarks(fabric: Fabric, layout: Layout, sizeMm: number): Mark[] {
  const every = thinning(fabric, layout, sizeMm);
  const arrow = layout.kind === 'disc' ? discArrow(layout) : [];
  const numbers = layout.rows.flatMap((laid) => {
    const row = fabric.rows[laid.row]!;
    if (row.number === null || (row.number % every !== 0 && row.number !== 1)) return [];
    if (layout.kind === 'disc') return [discNumber(laid, row.number, sizeMm)];
    return marksOf(laid, row.number, layout, sizeMm);
  });
  return [...numbers, ...arrow];
}

function marksOf(laid: LaidRow, number: number, { kind, cellWidthMm: w, cellHeightMm: h }: Layout, sizeMm: number): Mark[] {
  const outward = laid.startsAt === 'right' ? 1 : -1;
  const near = laid.labelX - outward * 0.45 * w;
  const tip = near - outward * (0.18 * w + 0.62 * w);
  const tail = near - outward * 0.18 * w;
  const barb = 0.14 * Math.min(w, h);
  const y = laid.labelY;
  const marks: Mark[] = [
    { kind: 'text', role: 'rowNumber', x: near, y: y + 0.35 * sizeMm, text: String(number), sizeMm, anchor: outward > 0 ? 'start' : 'end', turnRad: 0, row: laid.row },
    { kind: 'line', role: 'direction', points: [tail, y, tip, y, tip + outward * barb * 1.4, y - barb, tip, y, tip + outward * barb * 1.4, y + barb], row: laid.row },
  ];
  // In a tube the repeated stitches lead from the number to the round.
  const far = (kind !== 'tube' && Math.abs(tip - laid.startX) > 1.2 * w) || Math.abs(y - laid.startY) > 0.3 * h;
  if (far) marks.push({ kind: 'line', role: 'leader', points: [tip, y, laid.startX + outward * 0.45 * w, laid.startY], row: laid.row });
  return marks;
}

/** In the strip that a disc keeps free; one arrow outside says which way all rounds go. */
function discNumber({ labelX, labelY, row }: LaidRow, number: number, sizeMm: number): Mark {
  return { kind: 'text', role: 'rowNumber', x: labelX, y: labelY + 0.35 * sizeMm, text: String(number), sizeMm, anchor: 'middle', turnRad: 0, row };
}

/** An arrow along the outside of a disc from the start of its last round. */
function discArrow({ rows, cellWidthMm: w, bounds }: Layout): Mark[] {
  const last = rows.at(-1);
  if (!last) return [];
  const radius = (bounds.y1 - bounds.y0) / 2 + 0.6 * w;
  const middle = (bounds.x0 + bounds.x1) / 2;
  const side = last.startsAt === 'right' ? 1 : -1;
  const at = (angle: number, away: number): readonly [number, number] => [middle + side * away * Math.sin(angle), away * Math.cos(angle)];
  const [from, to] = [(0.5 * w) / radius, (3.2 * w) / radius];
  const points: number[] = [];
  for (let k = 0; k <= 8; k++) points.push(...at(from + ((to - from) * k) / 8, radius));
  points.push(...at(to - (0.5 * w) / radius, radius + 0.3 * w), ...at(to, radius), ...at(to - (0.5 * w) / radius, radius - 0.3 * w));
  return [{ kind: 'line', role: 'direction', points, row: last.row }];
}

/** 1 when every number has room, else 5 or 10: numbers of one side must not touch. */
function thinning(fabric: Fabric, layout: Layout, sizeMm: number): number {
  let least = Infinity;
  const before = new Map<string, number>();
  for (const laid of layout.rows) {
    if (fabric.rows[laid.row]!.number === null) continue;
    const last = before.get(laid.startsAt);
    if (last !== undefined) least = Math.min(least, Math.abs(laid.labelY - last));
    before.set(laid.startsAt, laid.labelY);
  }
  return least >= sizeMm * 1.05 ? 1 : least * 5 >= sizeMm * 1.05 ? 5 : 10;
}
