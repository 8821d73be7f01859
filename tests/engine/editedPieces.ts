import fc from 'fast-check';
import { applyTransaction } from '../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../src/engine/1-pattern/edit.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../src/engine/1-pattern/patternFromText.ts';

const CLAUSES = [
  'sc in next st', 'hdc in next st', 'dc in next 2 sts', '2 sc in next st', 'skip 1 st', 'ch 1, skip 1 st', 'ch 3, skip 2 sts', '(sc, ch 1, sc) in next st', '5-dc bobble in next st', 'FPdc around next st', 'shell in next st',
  'sc2tog', 'with B, sc in next st', 'with A, sc in next st', 'picot', 'sc in next ch-1 sp', 'spike sc 2 rows below', 'gibberish here',
];
const PLAIN_CLAUSES = ['with B, hdc in next 3 sts', 'with A, sc in next st', 'dc in next st', '2 sc in next st', 'sc2tog', 'sc in next 4 sts'];
const ENDS = ['sc in each st across.', 'hdc in each st across.', 'dc in each st across.', 'sc in each st across. (21 sc)', '*hdc in next st, sc in next st; rep from * to end.', 'leave the rest unworked.', 'dc in each st across, ch 3.', '*spike sc 2 rows below, sc in next st; rep from * to end.'];
const STARTS = ['ch 1, turn, ', 'turn, ', 'ch 3, turn, ', 'ch 5, turn, skip 1 st, '];

const oddRow = fc.record({ start: fc.constantFrom(...STARTS), clauses: fc.array(fc.constantFrom(...CLAUSES), { maxLength: 4 }), end: fc.constantFrom(...ENDS) });
const plainRow = fc.record({ start: fc.constantFrom('ch 1, turn, ', 'ch 1, turn, ', 'ch 3, turn, '), clauses: fc.array(fc.constantFrom(...PLAIN_CLAUSES), { maxLength: 2 }), end: fc.constantFrom('sc in each st across.', 'sc in each st across.', 'hdc in each st across.') });

interface Row {
  readonly start: string;
  readonly clauses: readonly string[];
  readonly end: string;
}

/** What a maker does: other words for a row, a row put in, a row taken out, a step back. */
type Act = { readonly kind: 'words' | 'putIn'; readonly where: number; readonly row: Row } | { readonly kind: 'takeOut'; readonly where: number } | { readonly kind: 'undo' };

export interface EditedPiece {
  readonly round: boolean;
  readonly rows: readonly Row[];
  readonly acts: readonly Act[];
}

const anyRow = fc.oneof({ weight: 1, arbitrary: oddRow }, { weight: 4, arbitrary: plainRow });
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('words'), where: fc.nat(), row: anyRow }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('putIn'), where: fc.nat(), row: anyRow }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('takeOut'), where: fc.nat() }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo') }) },
);

/** Flat pieces and pieces in rounds, and what is done to them one after another. */
export const editedPieces: fc.Arbitrary<EditedPiece> = fc.record({
  round: fc.boolean(),
  rows: fc.integer({ min: 0, max: 2 }).chain((odd) => fc.array(fc.oneof({ weight: odd, arbitrary: oddRow }, { weight: 5, arbitrary: plainRow }), { minLength: 3, maxLength: 14 })),
  acts: fc.array(act, { minLength: 1, maxLength: 6 }),
});

function words({ start, clauses, end }: Row, round: boolean): string {
  return `${round ? start.replace('turn, ', '').replace('ch 1, ', '') : start}${[...clauses, end].join(', ')}`;
}

/** The piece before anything was done to it. */
export function pieceBefore({ round, rows }: EditedPiece): Pattern {
  const first = round ? ['Foundation: with A, ch 21, join to form a ring.', 'Rnd 1: sc in each ch around.'] : ['Foundation: with A, ch 22.', 'Row 1: sc in 2nd ch from hook and in each ch across.'];
  const lines = rows.map((row, i) => `${round ? 'Rnd' : 'Row'} ${i + 2}: ${words(row, round)}`);
  const { pattern } = patternFromText(['T', '', 'Yarn A: slate #4b5a6b', 'Yarn B: chalk #f2efe6', '', 'PIECE', ...first, ...lines].join('\n'));
  if (!pattern) throw new Error(lines.join('\n'));
  return pattern;
}

/** The patterns that come about, one for each act. */
export function patternsAfter(piece: EditedPiece): Pattern[] {
  const done = [pieceBefore(piece)];
  return piece.acts.map((one, n) => {
    if (one.kind === 'undo') {
      if (done.length > 1) done.pop();
    } else done.push(edited(done.at(-1)!, one, n, piece.round));
    return done.at(-1)!;
  });
}

function edited(pattern: Pattern, act: Exclude<Act, { kind: 'undo' }>, n: number, round: boolean): Pattern {
  const section = pattern.sections[0]!;
  const at = section.lines.map((_, i) => i).filter((i) => section.lines[i]!.kind === 'row' && i > 0);
  const nth = at[act.where % at.length]!;
  const line = section.lines[nth]!;
  if (line.kind !== 'row') return pattern;
  const edit: Edit | null =
    act.kind === 'words' ? { kind: 'setLine', section: section.id, line: { ...line, text: words(act.row, round) } }
    : act.kind === 'putIn' ? { kind: 'insertLines', section: section.id, at: nth + 1, lines: [{ ...line, id: `new-${n}`, text: words(act.row, round) }] }
    : at.length > 2 ? { kind: 'removeLines', section: section.id, lines: [line.id] } : null;
  const applied = edit && applyTransaction(pattern, { label: 'edit', at: 0, edits: [edit] });
  if (applied && !applied.ok) throw new Error(applied.reason);
  return applied ? applied.pattern : pattern;
}

/** Where two values first differ, as a path with what stands at either; null where they are the same to the last bit. */
export function firstDifference(one: unknown, other: unknown, at = ''): string | null {
  if (Object.is(one, other)) return null;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return `${at}: ${String(one)} for ${String(other)}`;
  if (ArrayBuffer.isView(one) && ArrayBuffer.isView(other)) {
    const [a, b] = [one as Float64Array, other as Float64Array];
    for (let i = 0; i < Math.max(a.length, b.length); i++) if (!Object.is(a[i], b[i])) return `${at}/${i}: ${a[i]} for ${b[i]}`;
    return null;
  }
  const names = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  for (const name of names) {
    const found = firstDifference((one as Record<string, unknown>)[name], (other as Record<string, unknown>)[name], `${at}/${name}`);
    if (found) return found;
  }
  return null;
}
