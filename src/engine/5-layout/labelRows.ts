import type { Ground } from './ground.ts';
import type { LaidRow } from './layout.ts';
import type { RowSlots } from './rowSlots.ts';
import { spaced } from './spaced.ts';

/** Least distance of two row numbers on one side, in single-crochet heights. */
const PITCH = 0.95;

/** A row that has been placed, with what it is made of. */
export interface PlacedRow {
  readonly row: number;
  readonly slots: RowSlots;
}

/** The side that a row starts from, and the point of it that its number belongs to. */
export type RowStart = Pick<LaidRow, 'startsAt' | 'startX' | 'startY'>;

/**
 * Numbers of rows at the side where each starts, `clearMm` outside the row's edge (`'edge'`), or in one column outside all of
 * them (`'column'`). Numbers that would touch are moved apart (PAVA); their rows' start points say where a leader ends.
 */
export function labelRows(ground: Ground, rows: readonly PlacedRow[], clearMm: number, stand: 'edge' | 'column'): LaidRow[] {
  return labelStarts(rows.map(({ row, slots }) => ({ row, start: startOf(ground, slots) })), ground.h, clearMm, stand);
}

/** As `labelRows`, for rows whose starts are known (null: a row without one); `heightMm` of a single crochet. */
export function labelStarts(starts: readonly { readonly row: number; readonly start: RowStart | null }[], heightMm: number, clearMm: number, stand: 'edge' | 'column'): LaidRow[] {
  const laid = starts.flatMap(({ row, start }): LaidRow[] => (start ? [{ row, startsAt: start.startsAt, labelX: start.startX, labelY: start.startY, startX: start.startX, startY: start.startY, stands: 'beside', band: null }] : []));
  const result = new Map<number, LaidRow>();
  for (const side of ['left', 'right'] as const) {
    const here = laid.filter((row) => row.startsAt === side).sort((a, b) => a.startY - b.startY || b.row - a.row);
    if (here.length === 0) continue;
    const outward = side === 'right' ? 1 : -1;
    const outermost = here.reduce((most, row) => (outward * row.startX > outward * most ? row.startX : most), here[0]!.startX);
    const y = spaced(Float64Array.from(here, (row) => row.startY), new Float64Array(here.length).fill(1), new Float64Array(here.length - 1).fill(PITCH * heightMm));
    here.forEach((row, i) => result.set(row.row, { ...row, labelX: (stand === 'column' ? outermost : row.startX) + outward * clearMm, labelY: y[i]! }));
  }
  return laid.map((row) => result.get(row.row)!);
}

/** Where a placed row starts; null for one that has no stitch there. */
export function startOf(ground: Ground, { slots, reversed, turning, leading, joins }: RowSlots): RowStart | null {
  const stitch = (reversed ? slots.at(-1) : slots[0]) ?? turning[0] ?? joins[0];
  if (stitch === undefined) return null;
  const corner = (stitch - ground.first) * 8;
  const c = ground.corners;
  const [low, high] = reversed ? [2, 4] : [0, 6];
  // The outer end of a slanted edge: numbers keep clear of the turning chain beside it.
  let startX = reversed ? Math.max(c[corner + low]!, c[corner + high]!) : Math.min(c[corner + low]!, c[corner + high]!);
  if (leading.length > 0) for (const chain of [...turning, ...leading]) startX = reversed ? Math.max(startX, ground.headX[chain - ground.first]!) : Math.min(startX, ground.headX[chain - ground.first]!);
  return { startsAt: reversed ? 'right' : 'left', startX, startY: (c[corner + low + 1]! + c[corner + high + 1]!) / 2 };
}
