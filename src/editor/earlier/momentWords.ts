/** A moment as the reader's own browser writes date and time: "25 Nov 2026, 14:02". */
export function momentWords(at: number): string {
  return new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

/** A day as the reader's own browser writes it: "25 November 2026". */
export function dayWords(at: number): string {
  return new Date(at).toLocaleDateString(undefined, { dateStyle: 'long' });
}
