import type { Ground, IndexedRow } from './ground.ts';
import type { RowSlots } from './rowSlots.ts';

/** A zigzag or mitre: rows that bend at pivots standing one on another. */
export interface Ripple {
  /** First pivot of each row, as a place among its slots from the left; between two slots where stitches were skipped. */
  readonly firstPivot: readonly number[];
  /** Pivots from the left, in slots from the first: 1 where rows turn down on either side (increases), -1 where they turn up. */
  readonly pivots: readonly { readonly at: number; readonly peak: 1 | -1 }[];
  /** Stitches by which a row moves on beside a pivot. */
  readonly shift: number;
}

interface Pivot {
  readonly at: number;
  readonly base: number;
  readonly peak: 1 | -1;
  readonly gain: number;
}

/**
 * Whether every row (but for plain ones at the start) is increased or drawn together by the same even number at the same pivots, peaks and valleys in turn, each on the
 * pivot of the row below: then the fabric lies in zigzags (or, about one pivot, as a mitre). Null for all other rows. Linear cost.
 */
export function rippleOf(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[]): Ripple | null {
  if (rows.length < 3 || rows[0]!.word !== 'foundation') return null;
  const firstPivot: number[] = [];
  const place = new Int32Array(ground.end - ground.first).fill(-1);
  let pattern: readonly Pivot[] | null = null;
  let bent = 0;
  for (let r = 1; r < rows.length; r++) {
    if (rows[r]!.below !== rows[r - 1]!.index) return null;
    const found = pivotsOf(ground, place, slots[r - 1]!.slots, slots[r]!.slots);
    if (!found) return null;
    // A few plain rows before the first bend lie along it.
    if (!pattern && found.length === 0 && r <= MOST_PLAIN) continue;
    if (found.length === 0) return null;
    if (!pattern) while (firstPivot.length < r) firstPivot.push(found[0]!.base);
    else if (!sameBend(pattern, found) || Math.abs(found[0]!.base - firstPivot[r - 1]!) > 0.5) return null;
    firstPivot.push(found[0]!.at);
    pattern = found;
    bent++;
  }
  const own = pattern;
  // One row alone says nothing about how the fabric lies.
  if (!own || bent < 2 || own.some(({ gain, peak }, k) => gain !== own[0]!.gain || (k > 0 && peak === own[k - 1]!.peak))) return null;
  return { firstPivot, pivots: own.map(({ at, peak }) => ({ at: at - own[0]!.at, peak })), shift: own[0]!.gain / 2 };
}

function sameBend(one: readonly Pivot[], other: readonly Pivot[]): boolean {
  return one.length === other.length && one.every(({ at, peak, gain }, k) => other[k]!.peak === peak && other[k]!.gain === gain && Math.abs(other[k]!.at - other[0]!.at - (at - one[0]!.at)) < 1e-9);
}

/** Plain rows that a zigzag may begin with. */
const MOST_PLAIN = 2;

/** This many slots from either end of a row there may be an increase or a decrease by one. */
const FREE_ENDS = 2;

/** The pivots of one row over the slots below (`place` is filled with theirs); null where it is shaped otherwise, or has spaces. */
function pivotsOf({ fabric, first, end: last }: Ground, place: Int32Array, below: Int32Array, slots: Int32Array): Pivot[] | null {
  below.forEach((slot, k) => (place[slot - first] = k));
  const pivots: Pivot[] = [];
  let before = -1;
  for (let i = 0; i < slots.length; ) {
    const [from, end] = [fabric.baseStart[slots[i]!]!, fabric.baseStart[slots[i]! + 1]!];
    if (end === from) return null;
    let [low, high] = [Infinity, -Infinity];
    for (let b = from; b < end; b++) {
      const base = fabric.bases[b]!;
      const at = base < first || base >= last || below[place[base - first]!] !== base ? -1 : place[base - first]!;
      if (at < 0) return null;
      [low, high] = [Math.min(low, at), Math.max(high, at)];
    }
    let next = i + 1;
    while (next < slots.length && low === high && onlyBase(fabric, slots[next]!) === fabric.bases[from]) next++;
    const [many, together, skipped] = [next - i, high - low + 1, low - before - 1];
    const atEnd = i < FREE_ENDS || next > slots.length - FREE_ENDS;
    if (atEnd && (many > 2 || together > 2 || (before >= 0 && skipped > 1))) return null;
    if (skipped > 0 && before >= 0 && !atEnd) {
      if (skipped % 2 !== 0) return null;
      pivots.push({ at: i - 0.5, base: before + (skipped + 1) / 2, peak: -1, gain: skipped });
    }
    if (!atEnd && (many > 1 || together > 1)) {
      if (many % 2 === 0 || together % 2 === 0) return null;
      if (many > 1) pivots.push({ at: i + (many - 1) / 2, base: low, peak: 1, gain: many - 1 });
      else pivots.push({ at: i, base: (low + high) / 2, peak: -1, gain: together - 1 });
    }
    before = high;
    i = next;
  }
  return pivots;
}

function onlyBase(fabric: Ground['fabric'], stitch: number): number {
  const from = fabric.baseStart[stitch]!;
  return fabric.baseStart[stitch + 1]! - from === 1 ? fabric.bases[from]! : -1;
}
