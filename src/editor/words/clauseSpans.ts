import { flatForSize } from '../../engine/notation/changeAmounts.ts';
import { amountFor, type Instruction, type TextRange } from '../../engine/notation/instruction.ts';
import { countBody, countStitches } from '../../engine/readings/words/countStitches.ts';

/** A clause of a row's words, and the stitches of the fabric that it made. Clauses within a repeat have their own; the repeat has all of them. */
export interface ClauseSpan {
  readonly range: TextRange;
  readonly stitches: readonly number[];
}

/** A worked row as clauses see it: its stitches in working order, and of each the clause of `worked` that made it. */
export interface RowMade {
  readonly first: number;
  readonly end: number;
  /** By stitch of the fabric: index into the clauses that the row was worked from. */
  readonly instruction: ArrayLike<number>;
  readonly worked: readonly Instruction[];
}

/** Clauses whose stitches only working the row tells. */
const UNTOLD = new Set<Instruction['kind']>(['asRows', 'inPattern', 'spread', 'evenly']);

/**
 * The clauses of a row's words with what each made. `read` are the words as they were read, in the numbers of `size`; where
 * they say the row clause for clause as it was worked, stitches go by the clause that made them, else by what each clause
 * must make, in order. None where neither comes out even. An outer clause comes before those within it.
 */
export function clauseSpans(read: readonly Instruction[], size: number, row: RowMade): readonly ClauseSpan[] {
  const body = flatForSize(read, size).filter(({ kind }) => kind !== 'yarn');
  const made = Array.from({ length: row.end - row.first }, (_, i) => row.first + i);
  const kinds = row.worked.flatMap(({ kind }, index) => (kind === 'yarn' ? [] : [index]));
  if (kinds.length === body.length && kinds.every((index, i) => row.worked[index]!.kind === body[i]!.kind)) {
    return body.flatMap((clause, i) => spansOf(clause, made.filter((stitch) => row.instruction[stitch] === kinds[i]), size));
  }
  const counts = body.map((clause) => (UNTOLD.has(clause.kind) ? null : countStitches(clause, size)));
  const untold = counts.filter((count) => count === null).length;
  const left = made.length - counts.reduce<number>((sum, count) => sum + (count ?? 0), 0);
  // Chains that an earlier row made for this one stand at its start, and none of its words made them.
  if (untold > 1 || left < 0) return [];
  let at = untold === 0 ? left : 0;
  return body.flatMap((clause, i) => {
    const own = made.slice(at, (at += counts[i] ?? left));
    return spansOf(clause, own, size);
  });
}

function spansOf(clause: Instruction, stitches: readonly number[], size: number): readonly ClauseSpan[] {
  if (stitches.length === 0 || clause.range[1] <= clause.range[0]) return [];
  const span: ClauseSpan = { range: clause.range, stitches };
  if (clause.kind !== 'repeat' && clause.kind !== 'group') return [span];
  const once = countBody(clause.body, size);
  const single = clause.kind === 'repeat' && clause.times.kind === 'times' && amountFor(clause.times.times, size) === 1;
  const length = once ?? (single && clause.body.length === 1 ? stitches.length : null);
  if (length === null || length === 0 || stitches.length % length !== 0) return [span];
  let from = 0;
  return [
    span,
    ...clause.body.flatMap((part) => {
      const count = countStitches(part, size) ?? length;
      const own = stitches.filter((_, i) => i % length >= from && i % length < from + count);
      from += count;
      return spansOf(part, own, size);
    }),
  ];
}

/** The innermost clause that made a stitch; null where none is known to. */
export function clauseOf(spans: readonly ClauseSpan[], stitch: number): ClauseSpan | null {
  return spans.findLast(({ stitches }) => stitches.includes(stitch)) ?? null;
}

/** The innermost clause at a character of the words; null between clauses. */
export function clauseAt(spans: readonly ClauseSpan[], character: number): ClauseSpan | null {
  return spans.findLast(({ range: [from, to] }) => character >= from && character < to) ?? null;
}
