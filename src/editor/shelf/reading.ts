import { patternFromText, type PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import { readingReport, type ReadingReport } from './readingReport.ts';

/** A written pattern as it was read, with what was understood of it. Plain data: it goes from one thread to another. */
export interface Reading {
  readonly read: PatternFromText;
  readonly report: ReadingReport;
}

/** What a thread is asked to read. */
export interface ReadingAsked {
  readonly text: string;
  readonly terms: Terms | null;
}

/** Reads a text, in the terms asked for or in its own. About a third of a millisecond a row. */
export function reading({ text, terms }: ReadingAsked): Reading {
  const read = patternFromText(text, terms);
  return { read, report: readingReport(text, read) };
}
