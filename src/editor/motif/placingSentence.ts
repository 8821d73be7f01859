import type { Motif, Placement } from '../../engine/1-pattern/pattern.ts';
import type { PlacementFit } from '../../engine/4-colour/colours.ts';

const count = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;
const sts = (n: number) => count(n, 'stitch', 'stitches');

/**
 * How a placed motif comes out, with what happens where the sides meet: "Puffin: 5 repeats of 8 in 43 stitches; 3 stitches
 * stay free. At the seam, 1 stitch and 2 stitches meet: 3 between the last repeat and the first."
 */
export function placingSentence(motif: Motif, placement: Placement, fit: PlacementFit | null, meets: boolean): string {
  if (placement.hidden) return `${motif.name} is not laid.`;
  if (!fit) return `${motif.name} is left out in this size.`;
  if (fit.width === 0) return `${motif.name} finds no row to lie on in this size.`;
  const wide = motif.cells[0]?.length ?? 0;
  const { left, right } = fit.leftOver;
  const over = left + right;
  const fill = placement.across === 'fill' ? (placement.fill ?? 'whole') : 'whole';
  const sentences: string[] = [];
  const laid = `${motif.name}: ${count(fit.across, 'repeat')} of ${wide} in ${sts(fit.width)}`;
  const beyond = Math.max(0, -left) + Math.max(0, -right);
  if (fill === 'edges') sentences.push(fit.cellsCut > 0 ? `${laid}, and on to the edges, where repeats are cut.` : `${laid}, on to the edges.`);
  else if (beyond > 0) sentences.push(`${laid}; it hangs ${sts(beyond)} over the edge.`);
  else if (over === 0) sentences.push(fill === 'spread' ? `${laid}, spread over the whole row.` : `${laid}, nothing left over.`);
  else sentences.push(`${laid}; ${left === right ? `${sts(left)} stay free on each side` : `${left} left and ${right} right stay free`}.`);
  if (meets && fill !== 'edges' && fit.across > 0 && beyond === 0) sentences.push(seamSentence(placement, over, left, right));
  if (fit.cutAtSeam) sentences.push('A repeat is cut at the seam.');
  else if (fit.cellsCut > 0 && fill !== 'edges') sentences.push(`${count(fit.cellsCut, 'cell')} of it ${fit.cellsCut === 1 ? 'falls' : 'fall'} beyond the row’s ends.`);
  if (fit.rowsCut > 0) sentences.push(`${count(fit.rowsCut, 'row')} of it find no row to lie on.`);
  if (over !== 0 && fill === 'whole' && fit.nearest.down !== fit.width) sentences.push(`Whole repeats fill ${fit.nearest.down === fit.nearest.up || fit.nearest.down === 0 ? fit.nearest.up : `${fit.nearest.down} or ${fit.nearest.up}`}.`);
  return sentences.join(' ');
}

function seamSentence(placement: Placement, over: number, left: number, right: number): string {
  const isMovedRound = placement.across === 'fill' && (placement.fill ?? 'whole') === 'whole' && placement.offset !== 0;
  if ((placement.anchor ?? 'row') !== 'row' || isMovedRound) return over > 0 ? `It goes on around the seam; ${over} stay free where the repeats end.` : 'It goes on around the seam without a break.';
  const between = left + right;
  if (between === placement.gap) return placement.gap === 0 ? 'At the seam the repeats meet without a break.' : 'At the seam there is the same gap as between the repeats.';
  return `At the seam ${between === 0 ? 'the last repeat meets the first' : `${sts(between)} ${between === 1 ? 'lies' : 'lie'} between the last repeat and the first`}, ${placement.gap} elsewhere.`;
}
