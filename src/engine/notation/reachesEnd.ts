import { isCornerWord, isEnd, type Instruction } from './instruction.ts';

/** Whether a clause works the row below to its end, or joins the round. */
export function reachesEnd(node: Instruction | undefined): boolean {
  if (node?.kind === 'join') return true;
  if (node?.kind === 'repeat') return node.times.kind === 'toEnd' && node.times.except === 0;
  return (node?.kind === 'work' || node?.kind === 'group') && node.into.at === 'across' && node.into.except === 0 && isEnd(node.into.word);
}

/**
 * Whether two clauses ask for all stitches and for all chain spaces: `sc in each dc and 2 sc in each ch-2 sp`. They come in the
 * order that they lie in, which two clauses one after the other don't say.
 */
export function splitsPlaces(before: Instruction, [clause]: readonly Instruction[]): boolean {
  const goes = (node: Instruction | undefined, space: boolean) => reachesEnd(node) && (node?.kind === 'work' || node?.kind === 'group') && node.into.at === 'across' && (node.into.what === 'sp') === space && !isCornerWord(node.into.what);
  return (goes(before, false) && goes(clause, true)) || (goes(before, true) && goes(clause, false));
}
