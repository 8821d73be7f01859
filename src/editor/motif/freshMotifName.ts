import type { Pattern } from '../../engine/1-pattern/pattern.ts';

/** A name that no motif of the pattern has: "Motif 2". */
export function freshMotifName({ motifs }: Pick<Pattern, 'motifs'>): string {
  const names = motifs.map((each) => each.name);
  const nth = Array.from({ length: names.length + 1 }, (_, i) => i + 1).find((n) => !names.includes(`Motif ${n}`)) ?? 1;
  return `Motif ${nth}`;
}
