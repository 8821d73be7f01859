import type { Pattern } from '../../../engine/1-pattern/pattern.ts';

/** Ids that the pattern does not use yet: `prefix` and a number, counted on from the highest in use. */
export function freshIds(pattern: Pattern, prefix: string, count: number): string[] {
  const used = [
    ...pattern.sections.flatMap((section) => [section.id, ...section.lines.map((line) => line.id)]),
    ...pattern.motifs.map((motif) => motif.id),
    ...pattern.placements.map((placement) => placement.id),
  ];
  const highest = used.reduce((most, id) => {
    const tail = id.startsWith(prefix) ? Number(id.slice(prefix.length)) : Number.NaN;
    return Number.isInteger(tail) ? Math.max(most, tail) : most;
  }, 0);
  return Array.from({ length: count }, (_, i) => `${prefix}${highest + 1 + i}`);
}
