import { fromGuides } from './fromGuides.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelStarts, startOf } from './labelRows.ts';
import type { Ghost, Guide, PlacedPart } from './layout.ts';
import { outsideGhosts } from './outsideGhosts.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { riseSpiral } from './riseSpiral.ts';
import type { RowSlots } from './rowSlots.ts';
import { rowSlots } from './rowSlots.ts';
import { standRows } from './standRows.ts';
import { NO_LEVEL, type Level, type RowMarks, type Stacking, type StoodRow } from './stoodRow.ts';

/** How a tube is unrolled. */
export interface TubeOptions {
  /** Stitches repeated in grey on either side of the cut. */
  readonly marginStitches: number;
  /** How far each unturned round leans against the one below, in stitches; 0 keeps columns. */
  readonly leanStitches: number;
  /** Each round rises by its height on its way round. */
  readonly spiral: boolean;
}

/** Room at the cut for turning chains and joins, in stitch widths. */
const GUTTER = 0.8;
/** Distance of round numbers from the repeated stitches, in stitch widths. */
const LABEL_CLEAR = 1.75 + GUTTER;

/**
 * Closed rounds, cut where they start and unrolled. Each round is fitted over the one below, with bases moved by whole turns
 * where a round starts elsewhere. Columns are kept: at decreases holes open, as between the halves of a toe; increases are
 * squeezed into the way round as long as symbols can be told apart, then the round is wider; a tube that grows from few
 * stitches has its first rounds spread evenly to the width that it reaches. Stitches near the cut are repeated as ghosts on the
 * other side; where a round begins without a join stands a mark. Linear cost.
 */
export function tube(ground: Ground, rows: readonly IndexedRow[], options: TubeOptions): PlacedPart {
  const slots = rows.map((row, r) => rowSlots(ground.fabric, row, rows[r + 1] ?? null));
  placeOutside(ground, slots[0]?.slots ?? new Int32Array());
  const stood = standRows(ground, rows, slots, tubeStacking(rows, options, ground.w));
  const part = tubePart(ground, rows, stood, options);
  if (!options.spiral) return part;
  const { left, right } = stood.at(-1)?.level ?? NO_LEVEL;
  return riseSpiral(ground, rows, { ...part, stood: [] }, [left, right]);
}

/** How rounds stand one on another: over the round below and as wide, or spread evenly where the tube widens from few stitches. */
export function tubeStacking(rows: readonly IndexedRow[], { marginStitches, leanStitches }: TubeOptions, w: number): Stacking {
  const evened = evenRounds(rows);
  return {
    place: (ground, row, own, r, on) => {
      const around = row.round && r >= evened.end && on.right > on.left ? ([on.left, on.right] as const) : null;
      const evenMm = r < evened.end ? (evened.widest * w) / Math.max(1, own.slots.length) : 0;
      placeRow(ground, row, own, { startX: 0, baseY: 0, inRounds: row.round, around, evenMm, leanMm: row.round && r > 0 ? leanStitches * w : 0 });
    },
    level: (ground, { slots }, r, on) => {
      const [left, right] = r < evened.end ? ([0, evened.widest * w] as const) : edges(ground, slots);
      // Rounds that were decreased leave holes; the way round the tube stays that of its widest round so far.
      const cut = right - left > on.right - on.left - 1e-6 ? { left, right } : { left: on.left, right: on.right };
      const top = slots[0];
      return { ...cut, topY: top === undefined ? on.topY : ground.headY[top - ground.first]!, isBegun: true };
    },
    marks: (ground, row, slots, level) => ({ start: startOf(ground, slots), cut: cutOf(ground, slots.slots), repeats: repeats(ground, row, slots.slots, level, marginStitches), begin: beginOf(ground, row, slots) }),
  };
}

/** The unrolled tube of rounds that stand. */
export function tubePart(ground: Ground, rows: readonly IndexedRow[], stood: readonly StoodRow[], { marginStitches }: TubeOptions): PlacedPart {
  const own = outsideGhosts(ground);
  const starts = rows.map(({ index }, r) => ({ row: index, start: stood[r]!.marks.start }));
  const begins = rows.flatMap(({ index }, r): Guide[] => {
    const { begin } = stood[r]!.marks;
    return begin ? [{ kind: 'start', ...begin, turnRad: 0, row: index }] : [];
  });
  return {
    kind: 'tube', rows: labelStarts(starts, ground.h, (LABEL_CLEAR + marginStitches) * ground.w, 'column'),
    ghosts: [...own, ...rows.flatMap(({ first }, r) => stood[r]!.marks.repeats.map((ghost) => ({ ...ghost, stitch: ghost.stitch + first })))],
    guides: [...seams(stood), ...begins, ...fromGuides(ground, own)], stood,
  };
}

/** A mark where a round begins that is neither joined nor starts with a chain. */
function beginOf({ corners, first, w }: Ground, row: IndexedRow, { slots, reversed, turning, joins, stack }: RowSlots): RowMarks['begin'] {
  const start = reversed ? slots.at(-1) : slots[0];
  if (!row.round || start === undefined || row.word === 'foundation' || turning.length + joins.length > 0 || stack[1] > stack[0]) return null;
  const c = (start - first) * 8;
  const [x, y0, y1] = reversed ? [corners[c + 2]! + 0.22 * w, corners[c + 3]!, corners[c + 5]!] : [corners[c]! - 0.22 * w, corners[c + 1]!, corners[c + 7]!];
  return { x, y: (y0 + y1) / 2 };
}

/** A tube that grows to this many times its first round is spread, not just widened. */
const GROWS = 1.5;

/** The first rounds `[0, end)` of a tube that widens from few stitches, and the stitches of its widest round. */
function evenRounds(rows: readonly IndexedRow[]): { readonly end: number; readonly widest: number } {
  const counts = rows.map((row) => (row.round ? row.made : 0));
  const first = counts.find((count) => count > 0) ?? 0;
  const widest = Math.max(0, ...counts);
  const end = counts.indexOf(widest);
  // Spreading is meant for rounds that go once round the one below, not for a spiral that is counted otherwise.
  const whole = rows.every((row, r) => r === 0 || r > end || !row.round || !rows[r - 1]!.round || row.used >= rows[r - 1]!.made);
  return first === 0 || widest < GROWS * first || !whole ? { end: 0, widest } : { end, widest };
}

/** Whether as many rounds of two tubes are spread, to the same width. */
export function spreadAlike(old: readonly IndexedRow[], now: readonly IndexedRow[]): boolean {
  const [one, other] = [evenRounds(old), evenRounds(now)];
  return one.end === other.end && (one.end === 0 || (one.widest === other.widest && old.length === now.length));
}

/** Left and right edge of a round: half a stitch beyond the outermost heads. */
function edges(ground: Ground, slots: Int32Array): readonly [number, number] {
  const head = (slot: number): number => ground.headX[slot - ground.first]!;
  return slots.length === 0 ? [0, 0] : [head(slots[0]!) - ground.w / 2, head(slots.at(-1)!) + ground.w / 2];
}

/** The stitches within the margin of the cut once more on the other side, at most half a round; numbers from the row's first. */
function repeats(ground: Ground, row: IndexedRow, slots: Int32Array, { left, right }: Level, margin: number): Ghost[] {
  const ghosts: Ghost[] = [];
  const count = Math.min(margin, slots.length >> 1);
  const copy = (slot: number, by: number): void => {
    const i = slot - ground.first;
    const [x, y] = [ground.headX[i]!, ground.headY[i]!];
    if (Math.min(x - left, right - x) > margin * ground.w) return;
    ghosts.push({ stitch: slot - row.first, headX: x + by, headY: y, angle: Math.atan2(x - ground.footX[i]!, ground.footY[i]! - y) });
  };
  for (let k = 0; k < count; k++) {
    copy(slots[slots.length - 1 - k]!, left - right - GUTTER * ground.w);
    copy(slots[k]!, right - left + GUTTER * ground.w);
  }
  return ghosts;
}

/** Corners along the cut, up the left edge of a round's first stitch and up the right edge of its last. */
function cutOf({ corners: c, first }: Ground, slots: Int32Array): number[] {
  if (slots.length === 0) return [];
  const [l, r] = [(slots[0]! - first) * 8, (slots.at(-1)! - first) * 8];
  return [c[l]!, c[l + 1]!, c[l + 6]!, c[l + 7]!, c[r + 2]!, c[r + 3]!, c[r + 4]!, c[r + 5]!];
}

/** The cut as two lines, one along either edge. */
function seams(stood: readonly StoodRow[]): Guide[] {
  const left: number[] = [];
  const right: number[] = [];
  for (const { marks: { cut } } of stood) {
    for (let i = 0; i < cut.length; i += 2) push(i < 4 ? left : right, cut[i]!, cut[i + 1]!);
  }
  return left.length === 0 ? [] : [{ kind: 'seam', points: left }, { kind: 'seam', points: right }];
}

function push(points: number[], x: number, y: number): void {
  const n = points.length;
  if (n >= 2 && points[n - 2] === x && points[n - 1] === y) return;
  if (n >= 4 && points[n - 2] === x && points[n - 4] === x) points[n - 1] = y;
  else points.push(x, y);
}
