import { stitchCode } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { IndexedRow } from './ground.ts';

const CHAIN = stitchCode('ch');

/** A corner of a round: slots `[from, end)` in anticlockwise order that lie on the corner itself. */
export interface Corner {
  readonly from: number;
  readonly end: number;
}

/** The corners of each round, by row; rounds before the first corners have none. */
export interface Polygon {
  readonly sides: number;
  readonly corners: readonly (readonly Corner[])[];
}

/**
 * The corners of a motif with straight sides, from the graph: rounds in which the same number of groups (three to six), each two or more
 * stitches with chains between them, or three or more stitches, stand in one place, each on a corner of the round below. Null where
 * rounds have no such corners, or lose them. `orders`: slots of each row anticlockwise; `has`: all
 * flags of each row.
 */
export function polygonCorners(fabric: Fabric, rows: readonly IndexedRow[], orders: readonly Int32Array[], has: readonly number[]): Polygon | null {
  const corners: Corner[][] = orders.map(() => []);
  let sides = 0;
  for (let r = 1; r < rows.length; r++) {
    if (sides === 0 && !(has[r]! & FLAG.space)) continue;
    const groups = groupsOf(fabric, rows[r]!, orders[r]!);
    if (sides === 0) {
      const first = groups.filter(({ chains }) => chains !== null);
      if (first.length < 3 || first.length > 6 || first.length !== groups.length) continue;
      const under = first.map(({ base }) => runAt(fabric, orders[r - 1]!, base));
      if (under.some((corner) => corner === null)) continue;
      sides = first.length;
      corners[r - 1] = under.map((corner) => corner!).sort((a, b) => a.from - b.from);
      corners[r] = first.map(({ chains }) => chains!);
      continue;
    }
    const onCorners = groups.filter(({ base }) => corners[r - 1]!.some(({ from, end }) => orders[r - 1]!.subarray(from, end).includes(base)));
    if (onCorners.length !== sides) return null;
    corners[r] = onCorners.map(({ chains, middle }) => chains ?? middle);
  }
  return sides > 0 ? { sides, corners } : null;
}

interface Group {
  readonly base: number;
  /** Its longest run of chains, if it has one inside. */
  readonly chains: Corner | null;
  /** Its middle slot. */
  readonly middle: Corner;
}

/** Slots one after another that stand in one place: two or more with chains between, or three or more. */
function groupsOf(fabric: Fabric, row: IndexedRow, order: Int32Array): Group[] {
  const groups: Group[] = [];
  const baseOf = (k: number): number => {
    const [from, end] = [fabric.baseStart[order[k]!]!, fabric.baseStart[order[k]! + 1]!];
    return fabric.kind[order[k]!] === CHAIN || end - from !== 1 || fabric.bases[from]! >= row.first ? -1 : fabric.bases[from]!;
  };
  for (let k = 0; k < order.length; k++) {
    const base = baseOf(k);
    if (base < 0) continue;
    let last = k;
    let stitches = 1;
    let chains: Corner | null = null;
    for (let next = k + 1; next < order.length; next++) {
      if (fabric.kind[order[next]!] === CHAIN) continue;
      if (baseOf(next) !== base) break;
      if (next > last + 1 && (chains === null || next - last - 1 > chains.end - chains.from)) chains = { from: last + 1, end: next };
      last = next;
      stitches++;
    }
    const middle = (k + last) >> 1;
    if ((stitches > 1 && chains !== null) || stitches > 2) groups.push({ base, chains, middle: { from: middle, end: middle + 1 } });
    k = last;
  }
  return groups;
}

/** The place of a base in its round: the whole run of chains that it stands for, or one stitch. */
function runAt(fabric: Fabric, order: Int32Array, base: number): Corner | null {
  const at = order.indexOf(base);
  if (at < 0) return null;
  let [from, end] = [at, at + 1];
  if (fabric.kind[base] !== CHAIN) return { from, end };
  while (from > 0 && fabric.kind[order[from - 1]!] === CHAIN) from--;
  while (end < order.length && fabric.kind[order[end]!] === CHAIN) end++;
  return { from, end };
}
