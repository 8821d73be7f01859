import type { Migration } from './migration.ts';

/**
 * Version 2 has more to say about colour: stitches of motifs, how placements fill and follow, what differs by size, grounds
 * and techniques of sections, versions, limits of the checks. All of it may be left out, and a pattern of version 1 leaves
 * all of it out, so it is one of version 2 as it is. The number went up so that an older reader says that the file is newer.
 */
export const TO_002: Migration = {
  from: 1,
  change: 'stitches of motifs, more ways to place them, grounds, techniques, versions, limits of the checks of colour',
  up: (pattern) => pattern,
};
