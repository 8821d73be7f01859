import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import type { History } from '../../engine/1-pattern/history.ts';
import type { Pattern, Section } from '../../engine/1-pattern/pattern.ts';
import { handWritten } from '../../engine/2-construct/recipes/handWritten.ts';

/** The section that the last step was the first to change by hand, so that its recipe no longer changes it; null for none. */
export function handNotice(pattern: Pattern, history: History): Section | null {
  const step = history.past.at(-1);
  const now = handWritten(pattern);
  if (!step || now.length === 0) return null;
  const before = applyTransaction(pattern, step.inverse);
  if (!before.ok) return null;
  const then = handWritten(before.pattern);
  const known = (id: string) => before.pattern.sections.some((section) => section.id === id);
  return pattern.sections.find(({ id }) => now.includes(id) && known(id) && !then.includes(id)) ?? null;
}
