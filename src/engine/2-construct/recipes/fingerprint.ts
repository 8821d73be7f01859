import type { Line } from '../../1-pattern/pattern.ts';

/**
 * A short mark of a section's lines, ids aside: a recipe keeps it, so that lines which were changed by hand since are known.
 * FNV-1a, 32 bits, twice with different starts.
 */
export function fingerprint(lines: readonly Line[]): string {
  const text = JSON.stringify(lines.map((line) => (line.kind === 'row' ? [line.kind, line.label.word, line.label.rows, line.label.start, line.label.side, line.text] : [line.kind, line.text])));
  return hash(text, 0x811c9dc5) + hash(text, 0x01234567);
}

function hash(text: string, start: number): string {
  let value = start;
  for (let i = 0; i < text.length; i++) {
    value ^= text.charCodeAt(i);
    value = Math.imul(value, 0x01000193);
  }
  return (value >>> 0).toString(16).padStart(8, '0');
}
