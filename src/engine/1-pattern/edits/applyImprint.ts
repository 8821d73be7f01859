import type { Applied } from '../edit.ts';
import type { Pattern } from '../pattern.ts';
import { imprintSchema } from '../schema.ts';
import { done, refuse, valueFault, type EditOf } from './outcome.ts';

/** Says what is printed about the pattern where it is published. */
export function applyImprint(pattern: Pattern, { imprint }: EditOf<'setImprint'>): Applied {
  const fault = imprint && valueFault('What is said where it is published', imprintSchema, imprint);
  if (fault) return refuse(fault);
  const { imprint: before, ...rest } = pattern;
  return done(imprint ? { ...rest, imprint } : rest, { kind: 'setImprint', imprint: before ?? null });
}
