import type { Motif } from '../../engine/1-pattern/pattern.ts';
import type { PlacementFit } from '../../engine/4-colour/colours.ts';

const count = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;
const sts = (n: number) => count(n, 'stitch', 'stitches');

/** How a motif comes out in its row: "Puffin: 5 repeats, 3 stitches left over. Whole repeats fill 40 or 48." */
export function fitSentence(motif: Motif, fit: PlacementFit): string {
  const over = fit.leftOver.left + fit.leftOver.right;
  const parts = [`${motif.name}: ${count(fit.across, 'repeat')} in ${sts(fit.width)}`];
  const beyond = Math.max(0, -fit.leftOver.left) + Math.max(0, -fit.leftOver.right);
  if (beyond > 0) parts.push(`${sts(beyond)} over the edge`);
  else if (over > 0) parts.push(`${sts(over)} left over (${fit.leftOver.left} left, ${fit.leftOver.right} right)`);
  else parts.push('nothing left over');
  const sentences = [`${parts.join(', ')}.`];
  if (over !== 0) sentences.push(`Whole repeats fill ${fit.nearest.down === fit.nearest.up || fit.nearest.down === 0 ? fit.nearest.up : `${fit.nearest.down} or ${fit.nearest.up}`}.`);
  if (fit.rowsCut > 0) sentences.push(`${count(fit.rowsCut, 'row')} of it find no row to lie on.`);
  if (fit.cutAtSeam) sentences.push('It is cut at the seam.');
  return sentences.join(' ');
}
