import type { Pattern } from '../engine/1-pattern/pattern.ts';
import type { PublishChoices } from '../engine/publish/publishChoices.ts';

/** What can be made of the sheets. `svg`: each sheet; `text`: the files that go beside them. */
export const OUTPUTS = ['pdf', 'svg', 'png', 'text'] as const;

export type Output = (typeof OUTPUTS)[number];

/** What is asked of a job. */
export interface PublishOrder {
  readonly pattern: Pattern;
  readonly choices: PublishChoices;
  readonly outputs: readonly Output[];
  readonly pngDpi: number;
  /** All files in one ZIP, named after the pattern, instead of one by one. */
  readonly zip: boolean;
}

/** How far a job is: `done` of `of` steps of one size, and what is being made. */
export interface Progress {
  readonly done: number;
  readonly of: number;
  readonly making: 'sheets' | Output | 'zip';
}
