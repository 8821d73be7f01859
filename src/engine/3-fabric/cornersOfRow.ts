import { stitchCode, stitchOfCode } from '../craft/stitches.ts';
import { NONE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';

/** What a row has that corners may be: its chain spaces, and the middle stitches of its groups. */
export interface CornersOfRow {
  /** Chain spaces in working order: first chain, number of chains, stitches of the group that it lies in, whether it lies in one. */
  readonly spaces: readonly { readonly chain: number; readonly chains: number; readonly size: number; readonly grouped: boolean }[];
  /** Middle stitches of groups of three, five, … in one place, with the size of the group. */
  readonly middles: readonly { readonly stitch: number; readonly size: number }[];
  /** Groups of two, four, … without a space between, which have no middle stitch. */
  readonly even: number;
  /** Worked in one place only, as a first round into its ring is: no group is one then. */
  readonly ofOne: boolean;
}

/** Rows looked through for the corners that plain stitches stand on; what reads them back says so (`readsBack.ts`). */
export const CORNER_ROWS = 6;

interface Group {
  /** Stitches, and of a space its first chain as -1 - chain, in working order. */
  readonly items: number[];
  base: number;
  stitches: number;
}

/**
 * The possible corners of a row, from its groups of stitches in one place. A row without groups has the corners of the row
 * below, as far as single stitches stand on them. Linear in the stitches of the rows looked at.
 */
export function cornersOfRow(hook: Hook, row: number, rowsLeft = CORNER_ROWS): CornersOfRow {
  const { stitches } = hook;
  let end = stitches.count;
  while (end > 0 && stitches.rows.at(end - 1) > row) end--;
  let first = end;
  while (first > 0 && stitches.rows.at(first - 1) === row) first--;
  const { groups, sizes } = groupsOf(hook, first, end);
  const bases = new Set(groups.map(({ base }) => base).filter((base) => base !== NONE));
  const ofOne = bases.size === 1 && groups.reduce((sum, group) => sum + group.stitches, 0) > 1;
  const spaces: { chain: number; chains: number; size: number; grouped: boolean }[] = [];
  const middles: { stitch: number; size: number }[] = [];
  let even = 0;
  for (const { items, stitches: size } of groups) {
    const inner = items.filter((item) => item < 0);
    const middle = items.length % 2 === 1 ? items[items.length >> 1]! : NONE;
    const only = inner.length === 1 && size > 1 ? inner[0]! : items.length % 2 === 1 && middle < 0 && size > 1 ? middle : null;
    for (const item of inner) spaces.push({ chain: -1 - item, chains: sizes.get(-1 - item)!, size, grouped: item === only });
    if (ofOne || only !== null) continue;
    if (size >= 3 && items.length % 2 === 1 && middle >= 0) middles.push({ stitch: middle, size });
    else if (size >= 2 && inner.length === 0) even++;
  }
  const grown = middles.length > 0 || even > 0 || spaces.some(({ grouped }) => grouped);
  if (grown || ofOne || rowsLeft <= 1 || row <= 0) return { spaces, middles, even, ofOne };
  return { spaces, middles: carriedUp(hook, groups, rowsLeft), even, ofOne };
}

/** Single stitches of a row that stand on a corner of the row below: on its middle stitch, or in its space. */
function carriedUp(hook: Hook, groups: readonly Group[], rowsLeft: number): { stitch: number; size: number }[] {
  const below = Math.max(NONE, ...groups.map(({ base }) => (base === NONE ? NONE : hook.stitches.rows.at(base))));
  if (below === NONE) return [];
  const corners = cornersOfRow(hook, below, rowsLeft - 1);
  const sizes = new Map(corners.middles.map(({ stitch, size }) => [stitch, size]));
  const spaces = corners.spaces.filter(({ grouped }) => grouped || corners.ofOne);
  // A stitch in a space stands on its middle chain.
  for (const { chain, chains, size } of spaces) for (let at = chain; at < chain + chains; at++) sizes.set(at, size);
  return groups.flatMap(({ items, base }) => (items.length === 1 && items[0]! >= 0 && sizes.has(base) ? [{ stitch: items[0]!, size: sizes.get(base)! }] : []));
}

/** The stitches [first, end) by place: a stitch begins a group unless it shares the base of the one before, chains between two of one group belong to it. */
function groupsOf({ stitches, round }: Hook, first: number, end: number): { readonly groups: readonly Group[]; readonly sizes: ReadonlyMap<number, number> } {
  const groups: Group[] = [];
  const sizes = new Map<number, number>();
  let space = NONE;
  let last: Group | null = null;
  const close = (into: Group | null) => {
    if (space === NONE) return;
    (into ?? alone(groups)).items.push(-1 - space);
    space = NONE;
  };
  for (let stitch = first; stitch < end; stitch++) {
    const { kind } = stitchOfCode(stitches.code(stitch));
    if (kind === 'ch' && stitches.has(stitch, FLAG.space)) {
      if (space !== NONE) sizes.set(space, sizes.get(space)! + 1);
      else {
        space = stitch;
        sizes.set(space, 1);
      }
      continue;
    }
    const counted = kind !== 'ch' || stitches.has(stitch, FLAG.counts);
    if (!counted || kind === 'picot' || kind === 'ring' || stitches.has(stitch, FLAG.join | FLAG.corner) || stitches.has(stitch, FLAG.foundation)) continue;
    if (last && stitches.has(stitch, FLAG.sameBase)) {
      close(last);
      last.items.push(stitch);
      last.stitches++;
      if (last.base === NONE) last.base = stitches.firstBase(stitch);
      continue;
    }
    close(null);
    last = { items: [stitch], base: stitches.firstBase(stitch), stitches: 1 };
    groups.push(last);
  }
  // A round may begin and end in one place, the last space between.
  const worked = groups.filter((group) => group.stitches > 0);
  const [begin, ending] = [worked[0], worked.at(-1)];
  if (round && begin && ending && begin !== ending && begin.base !== NONE && begin.base === ending.base && !isRing(stitches, begin.base)) {
    close(ending);
    begin.items.unshift(...ending.items);
    begin.stitches += ending.stitches;
    groups.splice(groups.indexOf(ending), 1);
  } else close(null);
  return { groups, sizes };
}

function isRing(stitches: Hook['stitches'], base: number): boolean {
  return stitches.code(base) === stitchCode('ring');
}

/** A group for a space between two others. */
function alone(groups: Group[]): Group {
  const group: Group = { items: [], base: NONE, stitches: 0 };
  groups.push(group);
  return group;
}
