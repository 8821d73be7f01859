import type { Instruction } from '../../notation/instruction.ts';
import { across, closeUp, next, plain, times, together, withYarn } from './clauses.ts';
import { note, rounds, step, type MadeRow } from './madeRow.ts';
import type { ToePlan } from './toePlan.ts';

/**
 * The rounds of a toe (or of a heel set in afterwards): from the start of the round, which lies at a side, two decreases of
 * each pair stand on either side of both edges. Closed by drawing the yarn through what is left, or laid flat and closed by
 * slip stitches through both layers.
 */
export function toeRows(plan: ToePlan, close: 'drawn' | 'seam', yarn: string): readonly MadeRow[] {
  const made: MadeRow[] = [];
  const begun = [withYarn(yarn)];
  let count = plan.from;
  plan.decreases.forEach(({ evenBefore, pairs }, i) => {
    made.push(rounds(`even${i + 1}`, evenBefore, [...(i === 0 ? begun : []), across('sc', 'around')], count, 'sts'));
    count -= 4 * pairs;
    made.push(rounds(`decrease${i + 1}`, 1, [...(i === 0 && evenBefore === 0 ? begun : []), ...decreasing(count + 4 * pairs, pairs)], count, 'sts'));
  });
  if (close === 'drawn') return [...made, step('close', plain('drawThrough')), step('fasten', plain('fastenOff'))];
  return [...made, note('turn', 'Turn the toe inside out and lay it flat, the decreases at both sides.'), step('close', closeUp('toe', 'slst')), step('fasten', plain('fastenOff'))];
}

/** `(sc2tog, sc in next 20 sts, sc2tog) 2 times`. */
function decreasing(from: number, pairs: number): readonly Instruction[] {
  return [times(2, [together('sc', 2, pairs), next('sc', from / 2 - 4 * pairs), together('sc', 2, pairs)])];
}
