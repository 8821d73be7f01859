import { isCornerWord, type Instruction, type Into } from './instruction.ts';

type Work = Extract<Instruction, { kind: 'work' }>;
type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;

/**
 * Rounds that go corner by corner as print says them: `sc in each st around, 3 sc in each corner` for a run to each corner, what
 * is worked there, and the run after the last. The same list where nothing of that stands in it. Reading gives the clauses back.
 */
export function withEachCorner(body: readonly Instruction[]): readonly Instruction[] {
  const out: Instruction[] = [];
  for (let at = 0; at < body.length; at++) {
    const told = eachCorner(body[at]!, body[at + 1]);
    if (told) at++;
    out.push(...(told ?? [body[at]!]));
  }
  return out.length < body.length || out.some((node, index) => node !== body[index]) ? out : body;
}

/** The two clauses that print has for a repeat by corners and the run after it; null for others. */
function eachCorner(node: Instruction, after: Instruction | undefined): readonly [Work, Placed] | null {
  if (node.kind !== 'repeat' || node.style !== 'paren' || node.times.kind !== 'toEnd' || node.times.except !== 0 || node.body.length !== 2) return null;
  const [run, one] = node.body;
  if (run?.kind !== 'work' || run.into.at !== 'across' || run.into.word !== 'corner' || run.into.what !== 'st' || run.into.except !== 0) return null;
  if ((one?.kind !== 'work' && one?.kind !== 'group') || one.into.at !== 'next' || one.into.count !== 1 || !isCornerWord(one.into.what)) return null;
  if (one.kind === 'work' && (one.stitch.together > 1 || one.stitch.spike > 0 || one.stitch.kind === 'slst')) return null;
  if (run.stitch.spike > 0 || run.stitch.post !== 'none' || !after || alike(after) !== alike(run)) return null;
  const { what, loops } = one.into;
  const each: Into = { at: 'across', except: 0, what, word: 'across', ...(loops === undefined ? {} : { loops }) };
  return [{ ...run, into: { at: 'across', except: 0, what: 'st', word: node.times.word } }, { ...one, into: each }];
}

function alike(node: Instruction): string {
  return JSON.stringify({ ...node, range: null });
}
