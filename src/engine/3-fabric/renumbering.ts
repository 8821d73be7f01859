import { NONE } from './edge.ts';

/**
 * How the numbers of stitches (or places) of one fabric go over into those of another that differs in a stretch: numbers
 * before `from` stay, those from `old` on are shifted, those between are told one by one as they are met on the edge.
 */
export class Renumbering {
  readonly shift: number;
  /** Whether a number was asked for that was never met; what was made with it is not to be used. */
  lost = false;
  private readonly met = new Map<number, number>();

  constructor(readonly from: number, private readonly old: number, now: number) {
    this.shift = now - old;
  }

  /** Tells that `before` is `after` now; false where that can't be or was told otherwise. */
  pair(before: number, after: number): boolean {
    if (before < this.from) return after === before;
    if (before >= this.old) return after === before + this.shift;
    const known = this.met.get(before);
    if (known === undefined) this.met.set(before, after);
    return (known === undefined || known === after) && after >= this.from && after < this.old + this.shift;
  }

  /** The new number of `before`. */
  readonly of = (before: number): number => {
    if (before >= this.old) return before + this.shift;
    if (before < this.from) return before;
    const known = this.met.get(before);
    if (known === undefined) this.lost = true;
    return known ?? NONE;
  };

  /** Whether every number met stays as it is. */
  get stays(): boolean {
    return this.shift === 0 && [...this.met].every(([before, after]) => before === after);
  }
}
