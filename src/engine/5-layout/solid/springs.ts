import { childrenOf } from './childrenOf.ts';
import { rises } from './rises.ts';
import { STANDS } from './standing.ts';
import type { Web, WebRow } from './web.ts';

/** Distances that the web keeps, in stitch widths, sorted by the row of their later end. */
export interface Springs {
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly rest: Float64Array;
  /** Share of the difference that one sweep takes away, 0 … 1. */
  readonly firmness: Float64Array;
  /** 1: only pushes apart, against folding. */
  readonly pushesOnly: Uint8Array;
  /** Springs of web row r: `[rowStart[r], rowStart[r + 1])`. */
  readonly rowStart: Int32Array;
}

/** How far the stitches of an increase or the bases of a decrease lean to the side, stitch widths. */
const LEAN = 0.35;
/** Firmness of the diagonals; a disc laid flat gives way to the corners that its increases make. */
const SKEW = 0.15;
const SKEW_FLAT = 0.05;
/** Firmness beside chains that hang between stitches. */
const HANGING = 0.3;
/** Distance of heads that are sewn to each other. */
const SEWN_WIDTH = 0.1;
/** Width of the stitches that are drawn shut. */
const DRAWN_WIDTH = 0.7;

/**
 * Springs of a web: neighbours, bases, both diagonals of each cell, and two that only push, against folding (two rows down, two
 * stitches along). Position-based dynamics (Müller, Heidelberger, Hennix, Ratcliff 2007); firmness found by trying, see the tests.
 */
export function springsOf(web: Web, height: Float64Array, flat: boolean): Springs {
  const springs = new SpringList();
  const { left, right, bases, baseStart, width, rows } = web;
  const rise = rises(web, height);
  const children = childrenOf(web);
  const sewnTo = sewnPairs(web);
  const isFirm = (i: number): boolean => baseStart[i]! < baseStart[i + 1]! || web.selvedge[i] === 1 || baseStart[rows[web.rowOf[i]!]!.first] === baseStart[rows[web.rowOf[i]!]!.end];
  const rowStart = new Int32Array(rows.length + 1);
  rows.forEach((row, r) => {
    rowStart[r] = springs.count;
    const squeeze = row.drawnShut ? DRAWN_WIDTH : 1;
    for (let i = row.first; i < row.end; i++) {
      const beside = right[i]!;
      // At the fold of a ring that is sewn flat, neighbours lie on each other.
      if (beside >= 0 && sewnTo.get(i) !== beside && !(right[beside] === i && beside < i)) {
        const step = Math.min(Math.abs(rise[i]! - rise[beside]!), Math.max(height[i]!, height[beside]!));
        springs.add(i, beside, Math.hypot((squeeze * (width[i]! + width[beside]!)) / 2, step), isFirm(i) && isFirm(beside) ? 1 : HANGING);
      }
      if (!row.drawnShut && !sewnTo.has(i)) for (const steps of [2, 4]) stiffenAlong(i, steps, row);
      const own = baseStart[i + 1]! - baseStart[i]!;
      const h = height[i]!;
      if (web.stands[i] === STANDS.under) standUnder(i);
      else if (web.stands[i] !== STANDS.top) standAtSide(i);
      else for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) {
        const base = bases[k]!;
        if (rows[web.rowOf[base]!]!.centre) {
          springs.add(i, base, h, 1);
          continue;
        }
        const family = children[base]!;
        if (isFirm(base)) springs.add(i, base, Math.hypot(h, own > 1 ? LEAN * (own - 1) : leanOf(2 * family.indexOf(i) - (family.length - 1))), own > 1 ? 0.6 : 1);
        else {
          // Into a chain space: a fan over its chains.
          const nth = k - baseStart[i]!;
          springs.add(i, base, Math.hypot(h, leanOf(2 * family.indexOf(i) - (family.length - 1) - (2 * nth - (own - 1)))), 0.6);
        }
        for (const side of [left[base]!, right[base]!]) {
          if (own === 1 && family.length === 1 && side >= 0) springs.add(i, side, Math.hypot((width[base]! + width[side]!) / 2, h), flat ? SKEW_FLAT : SKEW);
        }
      }
      if (web.selvedge[i]) stayBeside(i);
      for (const steps of [2, 4]) stiffenDown(i, steps);
    }
  });
  for (const [a, b] of sewnTo) if (a < b) springs.add(a, b, SEWN_WIDTH, 1);
  rowStart[rows.length] = springs.count;
  return { ...springs.arrays(), rowStart };

  /** Stands out sideways from the middle of the ends of the rows that it picks up. */
  function standAtSide(i: number): void {
    const atLeft = web.stands[i] === STANDS.leftEnd;
    const own = baseStart[i + 1]! - baseStart[i]!;
    for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) {
      const end = bases[k]!;
      const below = bases[atLeft ? baseStart[end]! : baseStart[end + 1]! - 1]!;
      const out = height[i]! + width[end]! / 2;
      const off = (own * height[end]!) / 2;
      for (const from of [end, below]) {
        springs.add(i, from, Math.hypot(out, off), 0.6);
        const inwards = atLeft ? right[from]! : left[from]!;
        if (inwards >= 0) springs.add(i, inwards, 0.98 * Math.hypot(out + width[inwards]!, off), 0.08, true);
      }
    }
  }

  /** Hangs from the underside of a chain, and keeps from folding up against what stands on its top. */
  function standUnder(i: number): void {
    const chain = bases[baseStart[i]!]!;
    const down = height[i]! + height[chain]!;
    springs.add(i, chain, down, 1);
    for (const side of [left[chain]!, right[chain]!]) if (side >= 0) springs.add(i, side, Math.hypot((width[chain]! + width[side]!) / 2, down), SKEW);
    for (const top of children[chain]!) springs.add(i, top, 0.98 * (down + height[top]!), 0.08, true);
  }

  /** Keeps a chain at the side as high as the stitch beside it. */
  function stayBeside(i: number): void {
    const beside = left[i]! < 0 ? right[i]! : left[i]!;
    if (beside >= 0 && baseStart[beside]! < baseStart[beside + 1]!) springs.add(i, bases[baseStart[beside]!]!, Math.hypot(height[beside]!, (width[i]! + width[beside]!) / 2), 0.5);
  }

  /** Keeps a head from folding over the one `steps` places to the right. */
  function stiffenAlong(i: number, steps: number, { first, end, wraps }: WebRow): void {
    let reach = 0;
    let at = i;
    for (let step = 0; step < steps; step++) {
      const next = right[at]!;
      if (next < 0 || next === i) return;
      reach += (width[at]! + width[next]!) / 2;
      at = next;
    }
    // In a small round even a circle brings them nearer.
    const count = end - first;
    const chord = wraps ? (Math.sin((Math.PI * Math.min(steps, count / 2)) / count) * count) / (Math.PI * steps) : 1;
    springs.add(i, at, (steps > 2 ? 0.95 : 0.98) * chord * reach, steps > 2 ? 0.02 : 0.04, true);
  }

  /** Keeps a head from folding over the one `steps` rows below. */
  function stiffenDown(i: number, steps: number): void {
    let reach = 0;
    let at = i;
    for (let step = 0; step < steps; step++) {
      if (baseStart[at] === baseStart[at + 1] || web.stands[at] !== STANDS.top) return;
      reach += height[at]!;
      at = bases[baseStart[at]!]!;
    }
    springs.add(i, at, (steps > 2 ? 0.95 : 0.98) * reach, steps > 2 ? 0.02 : 0.08, true);
  }
}

/** What each head is sewn to. */
function sewnPairs({ sewn }: Web): ReadonlyMap<number, number> {
  const pairs = new Map<number, number>();
  for (let k = 0; k < sewn.length; k += 2) pairs.set(sewn[k]!, sewn[k + 1]!).set(sewn[k + 1]!, sewn[k]!);
  return pairs;
}

/** Sideways lean of a stitch that stands `halves` half stitches off the middle of its base: as it is but for the first half, which draws together. */
function leanOf(halves: number): number {
  const away = Math.abs(halves);
  return away <= 1 ? LEAN * away : LEAN + 0.5 * (away - 1);
}

class SpringList {
  private readonly a: number[] = [];
  private readonly b: number[] = [];
  private readonly rest: number[] = [];
  private readonly firmness: number[] = [];
  private readonly pushesOnly: number[] = [];

  get count(): number {
    return this.a.length;
  }

  add(a: number, b: number, rest: number, firmness: number, pushesOnly = false): void {
    this.a.push(a);
    this.b.push(b);
    this.rest.push(rest);
    this.firmness.push(firmness);
    this.pushesOnly.push(pushesOnly ? 1 : 0);
  }

  arrays(): Omit<Springs, 'rowStart'> {
    return {
      a: Int32Array.from(this.a), b: Int32Array.from(this.b), rest: Float64Array.from(this.rest),
      firmness: Float64Array.from(this.firmness), pushesOnly: Uint8Array.from(this.pushesOnly),
    };
  }
}
