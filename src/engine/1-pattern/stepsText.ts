import * as v from 'valibot';
import { transactionSchema } from './editSchema.ts';
import type { Step } from './history.ts';

const stepsSchema = v.array(v.strictObject({ done: transactionSchema, inverse: transactionSchema }));

/** Steps of a history as JSON text, for keeping. */
export function writeSteps(steps: readonly Step[]): string {
  return JSON.stringify(steps);
}

/** Reads steps that `writeSteps` wrote; `null` if the text is anything else. Never throws. */
export function readSteps(text: string): readonly Step[] | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  const result = v.safeParse(stepsSchema, value, { abortEarly: true });
  return result.success ? result.output : null;
}
