import { canonicalCells } from '../canonicalCells.ts';
import type { Applied } from '../edit.ts';
import { patternFault } from '../file.ts';
import type { Pattern } from '../pattern.ts';
import { done, refuse, type EditOf } from './outcome.ts';

/** Puts another state of the pattern in the place of this one; its id stays. Refuses a state that no file could hold. Linear in both. */
export function applyPattern(pattern: Pattern, { pattern: next }: EditOf<'setPattern'>): Applied {
  const fault = patternFault(next);
  if (fault) return refuse(`That state of the pattern can't be taken: ${fault.path.replace(/^pattern\.?/, '') || 'it'} is ${fault.found}, expected ${fault.expected}.`);
  return done({ ...next, id: pattern.id, cells: canonicalCells(next.cells) }, { kind: 'setPattern', pattern });
}
