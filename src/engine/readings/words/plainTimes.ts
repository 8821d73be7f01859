import { amountFor, type Amount, type Instruction } from '../../notation/instruction.ts';

/**
 * Clauses as they are said where numbers are known: repeats worked once are their clauses, what is worked no times, or in no
 * stitch, is left out. `size` (0-based) tells the numbers of vectors; without it vectors stay. The same list where nothing is so.
 */
export function plainTimes(body: readonly Instruction[], size?: number): readonly Instruction[] {
  const known = (amount: Amount): number | null => (typeof amount === 'number' ? amount : size === undefined ? null : amountFor(amount, size));
  const out = body.flatMap((node): readonly Instruction[] => {
    if (node.kind === 'work' && node.into.at === 'next' && known(node.into.count) === 0) return [];
    if (node.kind === 'skip' && known(node.count) === 0) return [];
    if (node.kind !== 'repeat') return [node];
    const times = node.times.kind === 'times' ? known(node.times.times) : null;
    if (times === 0) return [];
    const inner = plainTimes(node.body, size);
    if (times === 1) return inner;
    return inner.length === 0 ? [] : inner === node.body ? [node] : [{ ...node, body: inner }];
  });
  return out.length === body.length && out.every((node, index) => node === body[index]) ? body : out;
}
