import { stitchCode } from '../craft/stitches.ts';
import type { Checkpoint } from './checkpoint.ts';
import { NONE, PLACE } from './edge.ts';
import type { Hook } from './hook.ts';
import type { ReadsBack } from './readsBack.ts';
import { Renumbering } from './renumbering.ts';
import type { Move } from './stitchStore.ts';

/** Rows of stitches that following the stitch pattern looks back through, and one more. */
const PATTERN_ROWS = 9;

/** A hook and where it stood. */
export interface Standing {
  readonly hook: Hook;
  readonly at: Checkpoint;
}

export interface Renumbered {
  readonly stitches: Renumbering;
  readonly places: Renumbering;
}

/**
 * Whether everything that later rows can see is the same at two row starts but for the numbers of stitches and places: the
 * rings, the hook, the yarn in hand, and what `reads` says they look back at. `from`: the start of the first row that is not
 * the same in both. Null where something differs; rows with the same words then may come out otherwise.
 */
export function sameEdge(old: Standing, now: Standing, from: Checkpoint, reads: ReadsBack): Renumbered | null {
  const stitches = new Renumbering(from.stitches, old.at.stitches, now.at.stitches);
  const places = new Renumbering(from.places, old.at.places, now.at.places);
  const compare = new Compare(old, now, stitches, places, reads);
  return compare.states() && compare.pieces() && compare.openings(from) && compare.pending() && compare.patternRows() && compare.moved() ? { stitches, places } : null;
}

class Compare {
  private readonly before = new Map<number, Move>();
  private readonly looksDeep: boolean;

  constructor(private readonly old: Standing, private readonly now: Standing, private readonly stitches: Renumbering, private readonly places: Renumbering, private readonly reads: ReadsBack) {
    this.looksDeep = reads.spike > 0 || reads.inPattern || reads.picots;
    // The old stitches are as the last row left them: what rows from here on changed is taken back, the first change last.
    const { moves } = old.hook.stitches;
    for (let i = moves.length - 1; i >= old.at.moves; i--) this.before.set(moves[i]!.stitch, moves[i]!);
  }

  states(): boolean {
    const [a, b] = [this.old.at.state, this.now.at.state];
    return (
      a.piece === b.piece && a.direction === b.direction && a.facing === b.facing && a.yarn === b.yarn && a.cut === b.cut && a.pending === b.pending &&
      a.pendingCounts === b.pendingCounts && a.turned === b.turned && a.pendingAtStart === b.pendingAtStart && a.sameIsAhead === b.sameIsAhead && a.tied === b.tied &&
      a.entered.length === b.entered.length && a.entered.every((opening, i) => opening === b.entered[i]) &&
      this.places.pair(a.behind, b.behind) && this.places.pair(a.marker, b.marker) &&
      this.alike(a.thread, b.thread) && a.sameBases.length === b.sameBases.length && a.sameBases.every((base, i) => this.alike(base, b.sameBases[i]!))
    );
  }

  pieces(): boolean {
    const [a, b] = [this.old.at, this.now.at];
    return a.pieces.length === b.pieces.length && a.pieces.every((piece, i) => {
      const other = b.pieces[i]!;
      return (
        piece.markKind === other.markKind && piece.closed === other.closed && this.places.pair(piece.mark, other.mark) &&
        this.alike(piece.centre, other.centre) && this.foundation(piece.foundation, other.foundation) && this.ring(a.orders[i]!, b.orders[i]!)
      );
    });
  }

  openings({ openings }: Checkpoint): boolean {
    const [a, b] = [this.old, this.now];
    if (a.at.openings !== b.at.openings) return false;
    for (let i = openings; i < a.at.openings; i++) {
      const [one, other] = [a.hook.openings[i]!, b.hook.openings[i]!];
      for (const part of ['chains', 'skipped'] as const) {
        if (one[part].length !== other[part].length || !one[part].every((stitch, k) => this.alike(stitch, other[part][k]!))) return false;
      }
    }
    return true;
  }

  /** Chains still on the hook, and the stitch before them. */
  pending(): boolean {
    const count = this.old.at.state.pending + 1;
    const { shift } = this.stitches;
    for (let stitch = this.old.at.stitches - count; stitch < this.old.at.stitches; stitch++) {
      if (stitch < 0 || stitch + shift < 0 || !this.alike(stitch, stitch + shift)) return false;
    }
    return true;
  }

  /** The rows before, where the rest follows their stitch pattern. */
  patternRows(): boolean {
    if (!this.reads.inPattern) return true;
    const { shift, from } = this.stitches;
    const [a, b] = [this.old.hook.stitches, this.now.hook.stitches];
    let row = NONE;
    for (let stitch = this.old.at.stitches - 1, rows = 0; stitch >= from; stitch--) {
      if (!this.sameFacts(stitch, stitch + shift)) return false;
      const [base, other] = [a.firstBase(stitch), b.firstBase(stitch + shift)];
      if ((base < 0) !== (other < 0) || (base >= 0 && a.code(base) !== b.code(other))) return false;
      const own = this.was(stitch).row;
      if (own !== row && ++rows > PATTERN_ROWS) return true;
      row = own;
    }
    return shift === 0;
  }

  /** What the rest changed of stitches made before it was the same. */
  moved(): boolean {
    for (const move of this.before.values()) {
      if (move.stitch >= this.old.at.stitches) continue;
      const stitch = this.stitches.of(move.stitch);
      if (this.stitches.lost || !this.sameFacts(move.stitch, stitch)) return false;
      if (this.stitches.of(move.late) !== this.now.hook.stitches.asMoved(stitch).late || this.stitches.lost) return false;
    }
    return true;
  }

  private foundation(a: readonly [number, number], b: readonly [number, number]): boolean {
    if (a[1] - a[0] !== b[1] - b[0] || !this.stitches.pair(a[0], b[0])) return false;
    for (let i = 0; i < a[1] - a[0]; i++) if (!this.stitches.pair(a[0] + i, b[0] + i) || !this.sameFacts(a[0] + i, b[0] + i)) return false;
    return true;
  }

  private ring(a: Int32Array, b: Int32Array): boolean {
    if (a === b) return true;
    if (a.length !== b.length) return false;
    const [one, other] = [this.old.hook.edge, this.now.hook.edge];
    for (let i = 0; i < a.length; i++) {
      const [place, another] = [a[i]!, b[i]!];
      if (!this.places.pair(place, another)) return false;
      // The mark comes first; what it is has been compared with its piece.
      if (i === 0) continue;
      const what = one.what.at(place);
      if (what !== other.what.at(another) || one.row.at(place) !== other.row.at(another) || !this.places.pair(one.run.at(place), other.run.at(another))) return false;
      const [stitch, stitchNow] = [one.stitch.at(place), other.stitch.at(another)];
      // Of a row's end only the place is seen.
      if (what === PLACE.rowEnd && !this.looksDeep ? !this.stitches.pair(stitch, stitchNow) : !this.alike(stitch, stitchNow)) return false;
    }
    return true;
  }

  /** Whether a stitch may go for another with all that the rest can ask about it. */
  private alike(a: number, b: number): boolean {
    if (!this.stitches.pair(a, b)) return false;
    if (a < 0) return true;
    if (!this.sameFacts(a, b)) return false;
    if (!this.looksDeep) return true;
    const [one, other] = [this.old.hook.stitches, this.now.hook.stitches];
    let [base, baseNow] = [a, b];
    for (let down = 0; down < this.reads.spike && base >= 0; down++) {
      [base, baseNow] = [one.firstBase(base), other.firstBase(baseNow)];
      if (!this.stitches.pair(base, baseNow)) return false;
    }
    return [-1, 1].every((way) => {
      const beside = a + way < 0 || a + way >= this.old.at.stitches ? NONE : one.code(a + way);
      const besideNow = b + way < 0 || b + way >= this.now.at.stitches ? NONE : other.code(b + way);
      return beside === besideNow && (beside !== stitchCode('picot') || !this.reads.picots);
    });
  }

  private sameFacts(a: number, b: number): boolean {
    const was = this.was(a);
    const stitches = this.now.hook.stitches;
    return this.old.hook.stitches.code(a) === stitches.code(b) && was.flags === stitches.flags.at(b) && was.row === stitches.rows.at(b);
  }

  private was(stitch: number): { readonly row: number; readonly flags: number } {
    const { stitches } = this.old.hook;
    return this.before.get(stitch) ?? { row: stitches.rows.at(stitch), flags: stitches.flags.at(stitch) };
  }
}
