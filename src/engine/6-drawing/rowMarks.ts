import type { Fabric } from '../3-fabric/fabric.ts';
import type { LaidRow, Layout } from '../5-layout/layout.ts';
import { chosenNumbers } from './chosenNumbers.ts';
import type { Mark } from './drawing.ts';

/** Row numbers, direction arrows and leaders. Rows without a number (foundations, steps) get only an arrow if they are worked. */
export function rowMarks(fabric: Fabric, layout: Layout, sizeMm: number): Mark[] {
  const shown = numberedRows(fabric, layout, sizeMm);
  const unrolled = new Set(layout.parts.flatMap(({ kind, rows }) => (kind === 'tube' ? rows : [])));
  return layout.rows.flatMap((laid) => {
    const row = fabric.rows[laid.row]!;
    if (row.number === null || !shown.has(laid.row)) return [];
    return laid.stands === 'inside' ? [insideNumber(laid, row.number, sizeMm)] : marksOf(laid, row.number, layout, unrolled.has(laid.row), sizeMm);
  });
}

function marksOf(laid: LaidRow, number: number, { cellWidthMm: w, cellHeightMm: h }: Layout, inTube: boolean, sizeMm: number): Mark[] {
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
  const far = (!inTube && Math.abs(tip - laid.startX) > 1.2 * w) || Math.abs(y - laid.startY) > 0.3 * h;
  if (far) marks.push({ kind: 'line', role: 'leader', points: [tip, y, laid.startX + outward * 0.45 * w, laid.startY], row: laid.row });
  return marks;
}

/** In the room at the start of a closed round; an arrow outside says which way all rounds go. */
function insideNumber({ labelX, labelY, row }: LaidRow, number: number, sizeMm: number): Mark {
  return { kind: 'text', role: 'rowNumber', x: labelX, y: labelY + 0.35 * sizeMm, text: String(number), sizeMm, anchor: 'middle', turnRad: 0, row };
}

/** Rows whose numbers are shown: those of one side must not touch. Each piece for itself. */
function numberedRows(fabric: Fabric, layout: Layout, sizeMm: number): Set<number> {
  const shown = new Set<number>();
  for (const { rows } of layout.parts) {
    const own = new Set(rows);
    const laid = layout.rows.filter(({ row }) => own.has(row) && fabric.rows[row]!.number !== null);
    const first = laid[0];
    // Numbers on the fabric stand one after another along a line of any slant.
    const along = ({ stands, labelX, labelY }: LaidRow): number => (stands === 'inside' ? Math.hypot(labelX - first!.labelX, labelY - first!.labelY) : labelY);
    const { chosen } = chosenNumbers(laid.map((one) => ({ number: fabric.rows[one.row]!.number, side: one.startsAt, y: along(one) })), sizeMm * 1.05);
    for (const i of chosen) shown.add(laid[i]!.row);
  }
  return shown;
}
