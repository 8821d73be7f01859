import type { Terms } from '../../craft/terms.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { Step } from './rowSteps.ts';

/** What a step says: what to do, and how many places are open on the paper's left and right. */
export interface StepWords {
  readonly label: string;
  readonly does: string;
  /** Empty where nothing was on the hook's edge before, as for a foundation. */
  readonly open: string;
}

/** The words of a step in one size: its clauses as the row has them, or what the row has made when it is done. */
export function stepWords(fabric: Fabric, step: Step, { terms, size, hand }: { readonly terms: Terms; readonly size: number; readonly hand: 'right' | 'left' }): StepWords {
  const row = fabric.rows[step.row]!;
  const label = `${row.word === 'round' ? 'Rnd' : 'Row'} ${row.number ?? ''}`.trim();
  const clauses = step.clauses.length === 0 ? '' : writeRow(step.clauses, null, { terms, size });
  const made = `${row.made} ${row.made === 1 ? 'st' : 'sts'} made${row.round ? '' : ': turn'}.`;
  const does = step.end ? [capital(clauses), `${label} is done, ${made}`].filter((part) => part !== '').join(' ') : capital(clauses);
  const toLeft = (row.direction < 0) !== (hand === 'left');
  const [left, right] = toLeft ? [step.open.ahead, step.open.behind] : [step.open.behind, step.open.ahead];
  return { label: `${label}, step ${step.nth}`, does, open: row.below < 0 ? '' : `open: ${left} on the left, ${right} on the right` };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
