import type { Instruction } from './instruction.ts';

/**
 * `ch 3, turn, miss first st, dc in next st …`: the first stitch is missed because the chain stands for a stitch in its
 * place (*common practice* of UK patterns). The chain then counts as a stitch and takes that place itself, so the words
 * are kept as a remark. Chains of 1, chains said not to count and "skip next st" are left as they are.
 */
export function settleSkippedFirst(body: readonly Instruction[], text: string): readonly Instruction[] {
  const passed = new Set<Instruction['kind']>(['turn', 'yarn', 'remark']);
  const chainAt = body.findIndex(({ kind }) => !passed.has(kind));
  const chain = body[chainAt];
  if (chain?.kind !== 'chain' || chain.counts === 'no' || chain.counts === 'each' || (typeof chain.count === 'number' ? chain.count < 2 : chain.count.some((count) => count < 2))) return body;
  const skipAt = body.findIndex(({ kind }, index) => index > chainAt && !passed.has(kind));
  const skip = body[skipAt];
  if (skip?.kind !== 'skip' || skip.count !== 1 || body[skipAt + 1] === undefined) return body;
  const words = text.slice(...skip.range);
  if (!/\b(first|1st)\b/i.test(words)) return body;
  return body.map((node, index) => {
    if (index === chainAt) return { ...chain, counts: 'stitch' };
    return index === skipAt ? { kind: 'remark', text: words, range: skip.range } : node;
  });
}
