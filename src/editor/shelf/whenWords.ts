const DAY_MS = 24 * 60 * 60 * 1000;

/** A moment in words as near as they are useful, dates and times as the reader's own browser writes them: "today, 14:02", "yesterday, 9:30", "25 November", "25 November 2024". */
export function whenWords(at: number, now: number): string {
  const then = new Date(at);
  const time = then.toLocaleTimeString(undefined, { hour: 'numeric', minute: '2-digit' });
  const midnight = new Date(now).setHours(0, 0, 0, 0);
  if (at >= midnight) return `today, ${time}`;
  if (at >= midnight - DAY_MS) return `yesterday, ${time}`;
  const isThisYear = then.getFullYear() === new Date(now).getFullYear();
  return then.toLocaleDateString(undefined, { day: 'numeric', month: 'long', ...(isThisYear ? {} : { year: 'numeric' }) });
}
