import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Web } from './web.ts';

/** Where a stitch stands on its base: on its top, at the left or right end of its row, or on the underside of a chain. */
export const STANDS = { top: 0, leftEnd: 1, rightEnd: 2, under: 3 } as const;

/** Worked into an earlier row on purpose: no row end. */
const REACHES_DOWN = FLAG.spike | FLAG.frontPost | FLAG.backPost | FLAG.attaching;

/**
 * Where each stitch stands, as `STANDS`. A stitch picks up a row end where its base is the end of a row that goes on upwards with
 * another stitch, and its neighbours stand on other rows. A chain is worked from below where an earlier row stands on its top.
 */
export function standing(fabric: Fabric, web: Pick<Web, 'count' | 'stitch' | 'rows' | 'rowOf' | 'left' | 'right' | 'baseStart' | 'bases' | 'selvedge'>): Uint8Array {
  const { count, stitch, rows, rowOf, left, right, baseStart, bases, selvedge } = web;
  const stands = new Uint8Array(count);
  const firstOn = new Int32Array(rows.length).fill(-1);
  const worked = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) {
      const base = bases[k]!;
      const row = rowOf[base]!;
      if (firstOn[row]! < 0) firstOn[row] = rowOf[i]!;
      if (worked[base]! < 2) worked[base] = worked[base]! + 1;
    }
  }
  for (let i = 0; i < count; i++) {
    const own = bases.subarray(baseStart[i]!, baseStart[i + 1]!);
    const flags = fabric.flags[stitch[i]!]!;
    if (own.length === 0) continue;
    if (own.length === 1 && flags & FLAG.otherSide && isLoose(own[0]!) && firstOn[rowOf[own[0]!]!] !== rowOf[i]) stands[i] = STANDS.under;
    else if (flags & REACHES_DOWN) continue;
    else if (own.every((base) => isEnd(left, base, i))) stands[i] = STANDS.leftEnd;
    else if (own.every((base) => isEnd(right, base, i))) stands[i] = STANDS.rightEnd;
  }
  return stands;

  /** A chain without a base, of a row that more than one stitch is worked into. */
  function isLoose(base: number): boolean {
    return baseStart[base] === baseStart[base + 1] && selvedge[base] === 0 && !rows[rowOf[base]!]!.centre;
  }

  function isEnd(outwards: Int32Array, base: number, i: number): boolean {
    const inwards = outwards === left ? right : left;
    if (outwards[base]! >= 0 || inwards[base]! < 0 || baseStart[base] === baseStart[base + 1] || worked[base]! < 2) return false;
    const beside = [left[i]!, right[i]!].filter((other) => other >= 0).flatMap((other) => [...bases.subarray(baseStart[other]!, baseStart[other + 1]!)]);
    return !beside.includes(inwards[base]!) && beside.some((other) => rowOf[other] !== rowOf[base]);
  }
}
