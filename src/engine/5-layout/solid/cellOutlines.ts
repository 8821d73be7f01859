import { childrenOf } from './childrenOf.ts';
import { firstBase, lastBase, passedOver } from './cornerIds.ts';
import type { CornerIds } from './cornerIds.ts';
import { fromTopToRowEnd, rowEndEdge, rowEndsBetween } from './rowEndEdge.ts';
import { STANDS } from './standing.ts';
import type { Web } from './web.ts';

/** A corner that is made on the way: a point between two others, or below one. */
export type MadeCorner =
  | { readonly kind: 'between'; readonly a: number; readonly b: number; readonly share: number }
  | { readonly kind: 'head'; readonly head: number }
  | { readonly kind: 'under'; readonly corner: number; readonly head: number };

/** Outlines of all cells over corner numbers: those of the tops, then those made. */
export interface Outlines {
  readonly heads: Int32Array;
  readonly outlineStart: Int32Array;
  readonly topStart: Int32Array;
  readonly outline: Int32Array;
  readonly made: readonly MadeCorner[];
}

/**
 * Outlines the cell of every stitch: its bottom is the tops of its bases (a share of one where several stitches stand on it,
 * all of several for a decrease, with stitches passed over; the side of the row whose end it picks up; the underside of a chain), its top its own two corners and the points where its children part.
 */
export function cellOutlines(web: Web, ids: CornerIds): Outlines {
  const { count, rows, rowOf, baseStart, bases, left, right, stands } = web;
  const children = childrenOf(web);
  const bothSides = rows.map((row) => isWorkedRound(web, children, row.first, row.end));
  const made: MadeCorner[] = [];
  const make = (corner: MadeCorner): number => ids.count + made.push(corner) - 1;

  const tops: (readonly number[])[] = [];
  const centres = new Map<number, number>();
  const unders = new Map<number, number>();
  const shares = new Map<string, number>();
  const openings = new Set([...rowOf.keys()].filter((i) => stands[i] === STANDS.under).map((i) => rowOf[firstBase(web, i)]!));
  for (let i = 0; i < count; i++) {
    const row = rows[rowOf[i]!]!;
    if (row.centre) centres.set(i, make({ kind: 'head', head: i }));
    const parts = row.centre || bothSides[rowOf[i]!] ? 1 : Math.max(1, children[i]!.length);
    const [a, b] = [ids.left[i]!, ids.right[i]!];
    tops.push([a, ...Array.from({ length: parts - 1 }, (_, k) => make({ kind: 'between', a, b, share: (k + 1) / parts })), b]);
  }

  const heads: number[] = [];
  const outlineStart: number[] = [0];
  const topStart: number[] = [];
  const outline: number[] = [];
  for (let i = 0; i < count; i++) {
    const bottom = bottomOf(i);
    if (bottom.length === 0) continue;
    const cell = withoutDoubles([...bottom, ...tops[i]!.toReversed()], bottom.length);
    if (cell.corners.length < 3) continue;
    heads.push(i);
    topStart.push(outline.length + cell.top);
    outline.push(...cell.corners);
    outlineStart.push(outline.length);
  }
  return { heads: Int32Array.from(heads), outlineStart: Int32Array.from(outlineStart), topStart: Int32Array.from(topStart), outline: Int32Array.from(outline), made };

  function bottomOf(i: number): number[] {
    const from = baseStart[i]!;
    const end = baseStart[i + 1]!;
    if (web.selvedge[i]) return [];
    if (from === end) return isSeed(i) ? [] : [underLeft(i), underRight(i)];
    if (stands[i] === STANDS.under) return onUnderside(i);
    if (stands[i] !== STANDS.top) return onRowEnds(i);
    const first = bases[from]!;
    if (centres.has(first)) return [centres.get(first)!];
    if (bothSides[rowOf[first]!]) return alongChain(i, first);
    const bottom: number[] = [];
    for (let k = from; k < end; k++) {
      const base = bases[k]!;
      if (k > from) for (const passed of passedOver(web, bases[k - 1]!, base) ?? []) bottom.push(...tops[passed]!);
      const nth = children[base]!.indexOf(i);
      // Along the side of the fabric a chain's top lies the other way round.
      const top = web.selvedge[base] ? tops[base]!.toReversed() : tops[base]!;
      bottom.push(...(children[base]!.length > 1 ? top.slice(nth, nth + 2) : top));
    }
    // Stitches passed over before the neighbour's bases are drawn together under this one.
    const j = right[i]!;
    const other = j < 0 ? -1 : firstBase(web, j);
    if (other >= 0 && stands[j] === STANDS.rightEnd) return [...bottom, ...fromTopToRowEnd(web, ids, lastBase(web, i), other, stands[j]!)];
    if (other >= 0 && stands[j] === STANDS.top && other !== lastBase(web, i)) for (const passed of passedOver(web, lastBase(web, i), other) ?? []) bottom.push(...tops[passed]!);
    if (other >= 0 && (web.selvedge[other] || web.selvedge[lastBase(web, i)])) bottom.push(...alongSide(bottom.at(-1)!, other));
    return bottom;
  }

  /** Along the side of the rows picked up and of those passed over before the next; a share where several stitches pick up one. */
  function onRowEnds(i: number): number[] {
    const edge = rowEndEdge(web, ids, i);
    const alike = (other: number): boolean => other >= 0 && stands[other] === stands[i] && firstBase(web, other) === firstBase(web, i) && lastBase(web, other) === lastBase(web, i);
    if (edge.length === 2 && (alike(left[i]!) || alike(right[i]!))) {
      let [before, after] = [0, 0];
      for (let at = left[i]!; alike(at) && before < 8; at = left[at]!) before++;
      for (let at = right[i]!; alike(at) && after < 8; at = right[at]!) after++;
      const parts = before + after + 1;
      const cut = (k: number): number => (k === 0 ? edge[0]! : k === parts ? edge[1]! : shareOf(edge[0]!, edge[1]!, k / parts));
      edge.splice(0, 2, cut(before), cut(before + 1));
      if (after > 0) return edge;
    }
    const j = right[i]!;
    if (j < 0 || baseStart[j] === baseStart[j + 1]) return edge;
    if (stands[j] === stands[i]) return [...edge, ...rowEndsBetween(web, ids, i, j)];
    return stands[i] === STANDS.leftEnd && stands[j] === STANDS.top ? [...edge, ...fromTopToRowEnd(web, ids, firstBase(web, j), lastBase(web, i), stands[i]!).reverse()] : edge;
  }

  function shareOf(a: number, b: number, share: number): number {
    const key = `${a} ${b} ${share}`;
    const corner = shares.get(key) ?? make({ kind: 'between', a, b, share });
    shares.set(key, corner);
    return corner;
  }

  /** A chain seen from below: the other way round. */
  function onUnderside(i: number): number[] {
    const chain = firstBase(web, i);
    return isSeed(chain) ? [ids.right[chain]!, ids.left[chain]!] : [underRight(chain), underLeft(chain)];
  }

  /** Of a row that stands on nothing. */
  function isSeed(i: number): boolean {
    const { first, end } = rows[rowOf[i]!]!;
    return baseStart[first] === baseStart[end];
  }

  /** Lower corners of a hanging chain: where an opening below it is worked into, its ends are those of the opening. */
  function underLeft(i: number): number {
    const base = openings.has(rowOf[i]!) && left[i]! >= 0 ? lastBase(web, left[i]!) : -1;
    return base < 0 ? under(ids.left[i]!, i) : ids.right[base]!;
  }

  function underRight(i: number): number {
    const base = openings.has(rowOf[i]!) && right[i]! >= 0 ? firstBase(web, right[i]!) : -1;
    return base < 0 ? under(ids.right[i]!, i) : ids.left[base]!;
  }

  /** The side of the fabric from a corner to the selvedge chain that is worked into next, row by row. */
  function alongSide(corner: number, to: number): number[] {
    if (!web.selvedge[to]) return [];
    const atLeft = left[to]! < 0;
    const path: number[] = [];
    for (let at = atLeft ? right[to]! : left[to]!, rowsDown = 0; at >= 0 && rowsDown < 4; at = atLeft ? firstBase(web, at) : lastBase(web, at), rowsDown++) {
      const next = atLeft ? ids.left[at]! : ids.right[at]!;
      if (next === corner) break;
      path.unshift(next);
    }
    return path;
  }

  /** A chain worked all round: from the corner towards the left neighbour's chain to that towards the right one's. */
  function alongChain(i: number, base: number): number[] {
    const towards = (other: number): number => {
      const next = other < 0 ? -1 : other;
      if (next === right[base]) return ids.right[base]!;
      if (next === left[base]) return ids.left[base]!;
      return left[base]! < 0 ? ids.left[base]! : right[base]! < 0 ? ids.right[base]! : base === next ? middleOf(base) : ids.right[base]!;
    };
    return [towards(left[i]! < 0 ? -1 : lastBase(web, left[i]!)), towards(right[i]! < 0 ? -1 : firstBase(web, right[i]!))];
  }

  function middleOf(head: number): number {
    const known = centres.get(-1 - head);
    if (known !== undefined) return known;
    const corner = make({ kind: 'head', head });
    centres.set(-1 - head, corner);
    return corner;
  }

  function under(corner: number, head: number): number {
    const known = unders.get(corner);
    if (known !== undefined) return known;
    const below = make({ kind: 'under', corner, head });
    unders.set(corner, below);
    return below;
  }
}

/** Whether one round goes round both sides of a chain. */
function isWorkedRound({ baseStart, rowOf, rows }: Web, children: readonly number[][], first: number, end: number): boolean {
  if (baseStart[first] !== baseStart[end] || end - first < 2 || rows[rowOf[first]!]!.wraps) return false;
  const above = children[first]![0];
  return above !== undefined && rows[rowOf[above]!]!.wraps;
}

/** Drops corners that follow themselves; `top` moves along. */
function withoutDoubles(corners: readonly number[], top: number): { corners: number[]; top: number } {
  const kept: number[] = [];
  let moved = top;
  corners.forEach((corner, k) => {
    if (corner === kept.at(-1) || (k === corners.length - 1 && corner === kept[0])) {
      if (k < top) moved--;
    } else kept.push(corner);
  });
  return { corners: kept, top: Math.min(moved, kept.length - 1) };
}
