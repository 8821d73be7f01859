import type { Applied } from '../edit.ts';
import type { Pattern } from '../pattern.ts';
import { wordingSchema } from '../schema.ts';
import { done, refuse, valueFault, type EditOf } from './outcome.ts';

/** Says how the pattern is worded when it is written out. */
export function applyWording(pattern: Pattern, { wording }: EditOf<'setWording'>): Applied {
  const fault = wording && valueFault('The wording', wordingSchema, wording);
  if (fault) return refuse(fault);
  const { wording: before, ...rest } = pattern;
  return done(wording ? { ...rest, wording } : rest, { kind: 'setWording', wording: before ?? null });
}
