import { rowEndEdge } from './rowEndEdge.ts';
import { STANDS } from './standing.ts';
import type { Web } from './web.ts';

/** Stitches passed over between two bases that are still drawn together; more is a hole. */
const MOST_SKIPPED = 8;

/** Corner numbers of each head's top, left and right. Corners shared by neighbours have one number. */
export interface CornerIds {
  readonly left: Int32Array;
  readonly right: Int32Array;
  readonly count: number;
  /** For each corner: the heads on either side, -1 where the fabric ends. */
  readonly headBefore: Int32Array;
  readonly headAfter: Int32Array;
}

/**
 * Numbers the corners of a web. Where a row goes on from one row to another (at an attaching stitch, where a round takes up a
 * heel), the free ends in between are tied to the corner it goes on at, so that no slit stays open.
 * Tops that are sewn to each other share their corners.
 */
export function cornerIds(web: Web): CornerIds {
  const { count, left, right, baseStart, bases, attaches, selvedge, stands, sewn } = web;
  const cornerLeft = new Int32Array(count);
  const cornerRight = new Int32Array(count);
  const before: number[] = [];
  const after: number[] = [];
  const add = (a: number, b: number): number => {
    before.push(a);
    return after.push(b) - 1;
  };
  for (let i = 0; i < count; i++) {
    cornerRight[i] = add(i, right[i]!);
    if (right[i]! >= 0) cornerLeft[right[i]!] = cornerRight[i]!;
    if (left[i]! < 0) cornerLeft[i] = add(-1, i);
  }

  const ends = { left: cornerLeft, right: cornerRight };
  const same = Int32Array.from(before.keys());
  const rootOf = (corner: number): number => {
    while (same[corner] !== corner) corner = same[corner]!;
    return corner;
  };
  const join = (corner: number, to: number): void => {
    same[rootOf(corner)] = rootOf(to);
  };
  /** Ties free ends on one side, from `head` down, to a corner, but not below it. */
  const tie = (head: number, side: Int32Array, corners: Int32Array, nth: 'first' | 'last', to: number): void => {
    for (let at = head; side[at]! < 0 && corners[at] !== to; ) {
      join(corners[at]!, to);
      const from = baseStart[at]!;
      const end = baseStart[at + 1]!;
      if (from === end) break;
      at = bases[nth === 'first' ? from : end - 1]!;
    }
  };
  for (let i = 0; i < count; i++) {
    // What takes up an open stitch ends where that stitch does; the side of a selvedge chain is the end of the next row.
    const base = firstBase(web, i);
    if (base < 0) continue;
    if (right[i]! < 0) {
      if (attaches[i]) join(cornerRight[i]!, cornerRight[base]!);
      else if (right[base]! >= 0 && selvedge[right[base]!]) join(cornerRight[right[base]!]!, cornerRight[i]!);
    }
    if (left[i]! < 0) {
      if (attaches[i]) join(cornerLeft[i]!, cornerLeft[base]!);
      else if (left[base]! >= 0 && selvedge[left[base]!]) join(cornerLeft[left[base]!]!, cornerLeft[i]!);
    }
  }
  for (let i = 0; i < count; i++) {
    const j = right[i]!;
    const [own, other] = [lastBase(web, i), j < 0 ? -1 : firstBase(web, j)];
    if (own < 0 || other < 0 || own === other || stands[i] === STANDS.under || stands[j] === STANDS.under) continue;
    if (stands[i] !== STANDS.top || stands[j] !== STANDS.top) {
      if (stands[i] === STANDS.top && right[own]! < 0) tie(own, right, cornerRight, 'last', rowEndEdge(web, ends, j)[0]!);
      else if (stands[j] === STANDS.top && left[other]! < 0) tie(other, left, cornerLeft, 'first', rowEndEdge(web, ends, i).at(-1)!);
      continue;
    }
    if (passedOver(web, own, other)) continue;
    if (selvedge[own]) {
      if (!selvedge[other] && left[other]! < 0) tie(other, left, cornerLeft, 'first', left[own]! < 0 ? cornerLeft[own]! : cornerRight[own]!);
    } else if (selvedge[other]) continue;
    else if (right[own]! < 0) tie(own, right, cornerRight, 'last', cornerLeft[other]!);
    else if (left[other]! < 0) tie(other, left, cornerLeft, 'first', cornerRight[own]!);
  }
  for (let k = 0; k < sewn.length; k += 2) {
    join(cornerLeft[sewn[k]!]!, cornerRight[sewn[k + 1]!]!);
    join(cornerRight[sewn[k]!]!, cornerLeft[sewn[k + 1]!]!);
  }
  for (let i = 0; i < count; i++) {
    cornerLeft[i] = rootOf(cornerLeft[i]!);
    cornerRight[i] = rootOf(cornerRight[i]!);
  }
  return { left: cornerLeft, right: cornerRight, count: before.length, headBefore: Int32Array.from(before), headAfter: Int32Array.from(after) };
}

export function firstBase({ baseStart, bases }: Web, i: number): number {
  return baseStart[i]! < baseStart[i + 1]! ? bases[baseStart[i]!]! : -1;
}

export function lastBase({ baseStart, bases }: Web, i: number): number {
  return baseStart[i]! < baseStart[i + 1]! ? bases[baseStart[i + 1]! - 1]! : -1;
}

/** The heads between two of one row, going to the right; null when the other isn't near. */
export function passedOver({ right }: Web, from: number, to: number): number[] | null {
  const passed: number[] = [];
  for (let at = right[from]!; at >= 0 && passed.length <= MOST_SKIPPED; at = right[at]!) {
    if (at === to) return passed;
    passed.push(at);
  }
  return null;
}
