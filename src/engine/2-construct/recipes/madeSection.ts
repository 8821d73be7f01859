import type { Section } from '../../1-pattern/pattern.ts';
import type { MadeRow } from './madeRow.ts';
import type { Reckoning } from './reckoning.ts';

/** A section as a recipe gives it: its lines in every size. */
export interface MadeSection {
  /** Name within the piece: `leg`, `heel`. Also the section's id. */
  readonly role: string;
  readonly name: string;
  readonly remark: string;
  readonly perSize: readonly (readonly MadeRow[])[];
  /** Settings that the document keeps with the section. */
  readonly settings: NonNullable<Section['recipe']>['settings'];
}

/** What a recipe gives: sections, and the numbers of each size with where they come from. */
export interface MadeParts {
  readonly sections: readonly MadeSection[];
  readonly reckonings: readonly Reckoning[];
}
