import { fromGuides } from './fromGuides.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { labelRows } from './labelRows.ts';
import type { PlacedRow } from './labelRows.ts';
import type { Ghost, Guide, PlacedPart } from './layout.ts';
import { outsideGhosts } from './outsideGhosts.ts';
import { placeOutside } from './placeOutside.ts';
import { placeRow } from './placeRow.ts';
import { riseSpiral } from './riseSpiral.ts';
import { rowSlots } from './rowSlots.ts';

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
  const { fabric, w } = ground;
  const placed: PlacedRow[] = [];
  const evened = evenRounds(rows);
  let cut: readonly [left: number, right: number] = [0, 0];
  const cuts: (readonly [number, number])[] = [];
  let baseY = 0;
  rows.forEach((row, r) => {
    const slots = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (r === 0) placeOutside(ground, slots.slots);
    const around = row.round && r >= evened.end && cut[1] > cut[0] ? cut : null;
    placeRow(ground, row, slots, { startX: 0, baseY, inRounds: row.round, around, evenMm: r < evened.end ? (evened.widest * w) / Math.max(1, slots.slots.length) : 0, leanMm: row.round && r > 0 ? options.leanStitches * w : 0 });
    const [left, right] = r < evened.end ? ([0, evened.widest * w] as const) : edges(ground, slots.slots);
    // Rounds that were decreased leave holes; the way round the tube stays that of its widest round so far.
    if (right - left > cut[1] - cut[0] - 1e-6) cut = [left, right];
    cuts.push(cut);
    const top = slots.slots[0];
    if (top !== undefined) baseY = ground.headY[top - ground.first]!;
    placed.push({ row: row.index, slots });
  });
  const own = outsideGhosts(ground);
  const part: PlacedPart = {
    kind: 'tube', rows: labelRows(ground, placed, (LABEL_CLEAR + options.marginStitches) * w, 'column'),
    ghosts: [...own, ...repeats(ground, placed, cuts, options.marginStitches)],
    guides: [...seams(ground, placed), ...starts(ground, rows, placed), ...fromGuides(ground, own)],
  };
  return options.spiral ? riseSpiral(ground, rows, part, cut) : part;
}

/** A mark where each round begins that is neither joined nor starts with a chain. */
function starts({ corners, first, w }: Ground, rows: readonly IndexedRow[], placed: readonly PlacedRow[]): Guide[] {
  return placed.flatMap(({ row, slots: { slots, reversed, turning, joins, stack } }, r): Guide[] => {
    const start = reversed ? slots.at(-1) : slots[0];
    if (!rows[r]!.round || start === undefined || rows[r]!.word === 'foundation' || turning.length + joins.length > 0 || stack[1] > stack[0]) return [];
    const c = (start - first) * 8;
    const [x, y0, y1] = reversed ? [corners[c + 2]! + 0.22 * w, corners[c + 3]!, corners[c + 5]!] : [corners[c]! - 0.22 * w, corners[c + 1]!, corners[c + 7]!];
    return [{ kind: 'start', x, y: (y0 + y1) / 2, turnRad: 0, row }];
  });
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

/** Left and right edge of a round: half a stitch beyond the outermost heads. */
function edges(ground: Ground, slots: Int32Array): readonly [number, number] {
  const head = (slot: number): number => ground.headX[slot - ground.first]!;
  return slots.length === 0 ? [0, 0] : [head(slots[0]!) - ground.w / 2, head(slots.at(-1)!) + ground.w / 2];
}

/** The stitches within the margin of the cut once more on the other side, at most half a round. */
function repeats(ground: Ground, placed: readonly PlacedRow[], cuts: readonly (readonly [number, number])[], margin: number): Ghost[] {
  const ghosts: Ghost[] = [];
  placed.forEach(({ slots: { slots } }, r) => {
    const [left, right] = cuts[r]!;
    const count = Math.min(margin, slots.length >> 1);
    const copy = (slot: number, by: number): void => {
      const i = slot - ground.first;
      const [x, y] = [ground.headX[i]!, ground.headY[i]!];
      if (Math.min(x - left, right - x) > margin * ground.w) return;
      ghosts.push({ stitch: slot, headX: x + by, headY: y, angle: Math.atan2(x - ground.footX[i]!, ground.footY[i]! - y) });
    };
    for (let k = 0; k < count; k++) {
      copy(slots[slots.length - 1 - k]!, left - right - GUTTER * ground.w);
      copy(slots[k]!, right - left + GUTTER * ground.w);
    }
  });
  return ghosts;
}

/** The cut as two lines, one along either edge: up the corners of the first and of the last stitch of each round. */
function seams(ground: Ground, placed: readonly PlacedRow[]): Guide[] {
  const left: number[] = [];
  const right: number[] = [];
  for (const { slots: { slots } } of placed) {
    if (slots.length === 0) continue;
    const [l, r] = [(slots[0]! - ground.first) * 8, (slots.at(-1)! - ground.first) * 8];
    const c = ground.corners;
    push(left, c[l]!, c[l + 1]!);
    push(left, c[l + 6]!, c[l + 7]!);
    push(right, c[r + 2]!, c[r + 3]!);
    push(right, c[r + 4]!, c[r + 5]!);
  }
  return left.length === 0 ? [] : [{ kind: 'seam', points: left }, { kind: 'seam', points: right }];
}

function push(points: number[], x: number, y: number): void {
  const n = points.length;
  if (n >= 2 && points[n - 2] === x && points[n - 1] === y) return;
  if (n >= 4 && points[n - 2] === x && points[n - 4] === x) points[n - 1] = y;
  else points.push(x, y);
}
