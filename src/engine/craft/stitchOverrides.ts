import type { StitchKind } from './stitches.ts';

/** Which side of the fabric a raised stitch stands out on, as the worker faces it: away, or as it is closed (either), or not raised. */
export type Raised = 'far' | 'either' | 'no';

/** A stitch that a motif can set in the place of the plain one that the row says. */
export interface StitchOverride {
  /** How the second grid of a motif writes it: one small letter. */
  readonly letter: string;
  /** What it is called, singular, in US and UK terms alike. */
  readonly name: string;
  /** The stitch; null for the row's own. */
  readonly kind: StitchKind | null;
  /** Loop that the hook takes, as the worker faces it; `'seen'`: the one that leaves a ridge on the right side. */
  readonly loop: 'both' | 'front' | 'back' | 'seen';
  /** Around the post, so that the stitch stands out on the right side. */
  readonly post: 'none' | 'seen';
  readonly raised: Raised;
}

/**
 * Stitches that take the place of one plain stitch and give one top, so that no count moves. Bobbles, puffs and clusters
 * among shorter stitches stand out on the side away from the worker, so for the right side they are worked on wrong side
 * rows (*common practice*). A popcorn is closed to either side: hook from front to back on right side rows, from back to
 * front on wrong side rows (published lessons).
 */
export const STITCH_OVERRIDES: readonly StitchOverride[] = [
  { letter: 'b', name: 'bobble', kind: 'bobble', loop: 'both', post: 'none', raised: 'far' },
  { letter: 'u', name: 'puff stitch', kind: 'puff', loop: 'both', post: 'none', raised: 'far' },
  { letter: 'n', name: 'cluster', kind: 'cluster', loop: 'both', post: 'none', raised: 'far' },
  { letter: 'o', name: 'popcorn', kind: 'popcorn', loop: 'both', post: 'none', raised: 'either' },
  { letter: 'k', name: 'stitch in the back loop', kind: null, loop: 'back', post: 'none', raised: 'no' },
  { letter: 'f', name: 'stitch in the front loop', kind: null, loop: 'front', post: 'none', raised: 'no' },
  { letter: 'r', name: 'ridge', kind: null, loop: 'seen', post: 'none', raised: 'no' },
  { letter: 'p', name: 'raised post stitch', kind: null, loop: 'both', post: 'seen', raised: 'no' },
];

const BY_LETTER = new Map(STITCH_OVERRIDES.map((row) => [row.letter, row]));

/** The override that a letter of a motif's second grid means; null for `.` and letters that mean none. */
export function overrideOf(letter: string): StitchOverride | null {
  return BY_LETTER.get(letter) ?? null;
}
