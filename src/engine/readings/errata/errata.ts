import type { Pattern } from '../../1-pattern/pattern.ts';
import { headerErrata } from './headerErrata.ts';
import { measureErrata } from './measureErrata.ts';
import { rowErrata } from './rowErrata.ts';
import { workedEditions } from './workedEditions.ts';

/** One change between two editions: where, in which sizes, what it says now and what it said. */
export interface Erratum {
  /** What it is about, as print names it: `Heel, row 12`, `Gauge`. */
  readonly place: string;
  /** Section id; null for what stands above the rows. */
  readonly section: string | null;
  /** Names of the sizes it is for; empty: all of them. */
  readonly sizes: readonly string[];
  /** Null where it is gone. */
  readonly now: string | null;
  /** Null where it is new. */
  readonly was: string | null;
}

/**
 * What has changed from one edition of a pattern to another, by meaning: header, yarns, sizes, each row's instructions, counts and
 * colours, and what the piece measures. Rows are matched by line id and their place in it, then by section and number; in rows
 * that are worded otherwise but are worked the same, nothing has changed. Both are written in the terms of `after`; sizes are matched
 * by name. Empty for two patterns that are the same. Linear in stitches of both in all sizes.
 */
export function errata(before: Pattern, after: Pattern): readonly Erratum[] {
  const editions = workedEditions(before, after);
  return [...headerErrata(before, after), ...rowErrata(editions), ...measureErrata(editions)];
}
