import { mapAmount } from '../notation/amounts.ts';
import type { Amount, Instruction } from '../notation/instruction.ts';

type Work = Extract<Instruction, { kind: 'work' }>;
type Repeat = Extract<Instruction, { kind: 'repeat' }>;

/** Whether a row's instructions change yarn after its first stitch: in mid-row, or anywhere in a repeat. */
export function changesYarnInside(body: readonly Instruction[]): boolean {
  const first = body.findIndex(makesStitch);
  return first >= 0 && body.slice(first).some(holdsYarn);
}

/** Whether a row's instructions name a yarn before their first stitch. */
export function namesYarnFirst(body: readonly Instruction[]): boolean {
  const first = body.findIndex(makesStitch);
  return body.slice(0, first < 0 ? body.length : first).some((node) => node.kind === 'yarn' || (node.kind === 'joinAt' && node.yarn !== null));
}

/** The letter that is named last in a row's instructions; null if none is. */
export function lastYarn(body: readonly Instruction[]): string | null {
  let last: string | null = null;
  for (const node of body) {
    if (node.kind === 'yarn') last = node.letter;
    else if (node.kind === 'joinAt') last = node.yarn ?? last;
    else if (node.kind === 'repeat' || node.kind === 'group') last = lastYarn(node.body) ?? last;
  }
  return last;
}

function makesStitch(node: Instruction): boolean {
  return node.kind === 'work' || node.kind === 'group' || node.kind === 'repeat';
}

function holdsYarn(node: Instruction): boolean {
  return node.kind === 'yarn' || ((node.kind === 'repeat' || node.kind === 'group') && node.body.some(holdsYarn));
}

/** The instructions without their yarns; runs and repeats that were cut by a change of yarn only are joined again. */
export function withoutYarns(body: readonly Instruction[]): readonly Instruction[] {
  const out: Instruction[] = [];
  for (const node of body) {
    if (node.kind === 'yarn') continue;
    const plain = node.kind === 'repeat' && holdsYarn(node) ? unrolled({ ...node, body: withoutYarns(node.body) }) : node.kind === 'group' && holdsYarn(node) ? { ...node, body: withoutYarns(node.body) } : node;
    const before = out.at(-1);
    const joined = before ? joinedRun(before, plain) : null;
    if (joined) out[out.length - 1] = joined;
    else out.push(plain);
  }
  return out;
}

/** A repeat of one plain run as that run. */
function unrolled(node: Repeat): Instruction {
  const [only] = node.body;
  if (node.body.length !== 1 || only?.kind !== 'work' || only.into.at !== 'next' || only.each !== 1 || only.stitch.together !== 1) return node;
  const { range, times } = node;
  if (times.kind === 'toEnd') return { ...only, range, into: { at: 'across', except: times.except, what: only.into.what, word: times.word } };
  const { count } = only.into;
  const total = typeof count === 'number' ? mapAmount(times.times, (often) => often * count) : typeof times.times === 'number' ? mapAmount(count, (one) => one * (times.times as number)) : null;
  return total === null ? node : { ...only, range, into: { ...only.into, count: total } };
}

function joinedRun(a: Instruction, b: Instruction): Work | null {
  if (a.kind !== 'work' || b.kind !== 'work' || a.into.at !== 'next') return null;
  if (a.each !== 1 || b.each !== 1 || JSON.stringify(a.stitch) !== JSON.stringify(b.stitch) || a.stitch.together !== 1) return null;
  if (b.into.at === 'next' && a.into.what === b.into.what && a.into.loops === b.into.loops) return { ...a, into: { ...a.into, count: sum(a.into.count, b.into.count) } };
  if (b.into.at === 'across' && a.into.what === b.into.what && a.into.loops === undefined) return { ...b, range: a.range };
  return null;
}

function sum(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => value + a);
  return a.map((value, size) => value + (typeof b === 'number' ? b : (b[size] ?? 0)));
}
