import type { Fabric } from '../3-fabric/fabric.ts';
import { sectionRows } from '../5-layout/ground.ts';
import type { Layout } from '../5-layout/layout.ts';
import { rowSlots } from '../5-layout/rowSlots.ts';
import type { Mark } from './drawing.ts';
import { levelRow } from './levelRow.ts';

/** Areas round the cells of each row, mostly one a row: a tint that tells right side from wrong side. */
export function bandMarks(fabric: Fabric, layout: Layout): Mark[] {
  const c = layout.corners;
  const mirrored = isMirrored(fabric, layout);
  const bandOf = new Map(layout.rows.flatMap(({ row, band }) => (band ? [[row, band] as const] : [])));
  const unrolled = new Set(layout.parts.flatMap(({ kind, rows }) => (kind === 'tube' ? rows : [])));
  return sectionRows(fabric, layout.section).flatMap((row, r, rows) => {
    const { slots, stack } = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (slots.length === 0 || row.word === 'foundation') return [];
    const whole = bandOf.get(row.index);
    if (whole) return [{ kind: 'area', role: row.side === 'RS' ? 'bandRS' : 'bandWS', points: whole, row: row.index }];
    const ordered = mirrored ? slots.toReversed() : slots;
    const role = row.side === 'RS' ? 'bandRS' : 'bandWS';
    const level = stack[0] === stack[1] ? levelRow(layout, slots, mirrored) : null;
    if (level) return [{ kind: 'area', role, points: [level.x0, level.top, level.x1, level.top, level.x1, level.bottom, level.x0, level.bottom], row: row.index }];
    const bands: Mark[] = [];
    let top: number[] = [];
    let bottom: number[] = [];
    const close = (): void => {
      const points = top;
      for (let i = bottom.length - 2; i >= 0; i -= 2) points.push(bottom[i]!, bottom[i + 1]!);
      bands.push({ kind: 'area', role, points, row: row.index });
      [top, bottom] = [[], []];
    };
    for (const slot of ordered) {
      const i = (slot - layout.first) * 8;
      // The holes that decreases leave in a tube stay open.
      if (unrolled.has(row.index) && top.length > 0 && c[i + 6]! - top.at(-2)! > 0.4 * layout.cellWidthMm) close();
      append(top, c[i + 6]!, c[i + 7]!);
      append(top, c[i + 4]!, c[i + 5]!);
      const low = slot === stack[1] - 1 && stack[1] > stack[0] ? (stack[0] - layout.first) * 8 : i;
      append(bottom, c[low]!, c[low + 1]!);
      append(bottom, c[low + 2]!, c[low + 3]!);
    }
    close();
    return bands;
  });
}

/** Whether the layout is that of a left-handed maker. */
function isMirrored(fabric: Fabric, { rows }: Layout): boolean {
  const laid = rows.find(({ row }) => fabric.rows[row]!.word !== 'foundation');
  return laid !== undefined && (laid.startsAt === 'left') === (fabric.rows[laid.row]!.direction < 0);
}

/** Adds a point, leaving out those in the middle of a straight line along the axes. */
function append(points: number[], x: number, y: number): void {
  const n = points.length;
  if (n >= 2 && points[n - 2] === x && points[n - 1] === y) return;
  if (n >= 4 && points[n - 1] === y && points[n - 3] === y) points[n - 2] = x;
  else points.push(x, y);
}
