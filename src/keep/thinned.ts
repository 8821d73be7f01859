const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** The most automatic versions that are kept of one pattern. */
export const MOST_EARLIER = 80;

/** When a version was kept, and its name if it was given one. */
export interface KeptVersion {
  readonly at: number;
  readonly name: string | null;
}

/**
 * The moments of the versions that can go: of the automatic ones, those of the last two hours stay, the newest of each hour
 * for a day, of each day for a month, of each 30 days for good; no more than `MOST_EARLIER`. Those with a name stay always.
 */
export function thinned(versions: readonly KeptVersion[], now: number): readonly number[] {
  const automatic = versions.filter((version) => version.name === null).sort((a, b) => b.at - a.at);
  const spans = new Set<string>();
  let stay = 0;
  return automatic.flatMap(({ at }) => {
    const age = now - at;
    const spanMs = age < 2 * HOUR_MS ? 1 : age < DAY_MS ? HOUR_MS : age < 30 * DAY_MS ? DAY_MS : 30 * DAY_MS;
    const span = `${spanMs} ${Math.floor(at / spanMs)}`;
    if (spans.has(span) || stay >= MOST_EARLIER) return [at];
    spans.add(span);
    stay++;
    return [];
  });
}
