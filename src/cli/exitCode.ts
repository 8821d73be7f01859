import type { Loaded } from './loadFile.ts';
import { readReport } from './readReport.ts';

export const FINE = 0;
export const WRONG = 1;
export const UNREADABLE = 2;

/** `WRONG` where working a pattern in one of the sizes finds something of degree wrong, else `FINE`. */
export function exitCodeOf(loaded: Loaded, sizes: readonly number[]): number {
  return sizes.some((size) => readReport(loaded, size).findings.some((found) => found.degree === 'wrong')) ? WRONG : FINE;
}
