import type { Migration } from './migration.ts';

/**
 * Version 3 knows what a piece is made to and of: swatches, measurements with their ease, numbers set by hand, yarn as it is
 * sold, for whom it is. All of it may be left out, and a pattern of version 2 leaves all of it out, so it is one of version 3
 * as it is. The number went up so that an older reader says that the file is newer.
 */
export const TO_003: Migration = {
  from: 2,
  change: 'swatches, measurements, pinned numbers, yarn as sold, wearer',
  up: (pattern) => pattern,
};
