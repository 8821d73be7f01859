import type { Pattern } from '../engine/1-pattern/pattern.ts';
import type { Earlier } from './earlier.ts';

/** While somebody works, a version is kept after this time. */
export const VERSION_EVERY_MS = 3_600_000;

/**
 * Keeps versions as work goes on: the pattern as it was before the first change of this sitting, then one an hour. The
 * function it gives is told of each whole that has reached the device. What can't be kept is tried again with the next one.
 */
export function keepEarlier(earlier: Earlier, start: { readonly pattern: Pattern; readonly at: number | null }): (pattern: Pattern, at: number) => Promise<void> {
  let isStartKept = start.at === null;
  let lastAt: number | null = null;
  return async (pattern, at) => {
    lastAt ??= at;
    if (!isStartKept && start.at !== null && start.pattern !== pattern) {
      isStartKept = true;
      try {
        await earlier.keep(start.pattern, start.at, null);
      } catch {
        isStartKept = false;
      }
    }
    if (at - lastAt < VERSION_EVERY_MS) return;
    const before = lastAt;
    lastAt = at;
    try {
      await earlier.keep(pattern, at, null);
    } catch {
      lastAt = before;
    }
  };
}
