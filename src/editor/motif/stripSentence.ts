import type { FriezeFound } from '../../engine/4-colour/frieze.ts';

/** What symmetry the strip has that a motif makes along a row: "Along a row: mirrored left and right (p1m1), every 8 stitches." */
export function stripSentence(found: FriezeFound | null): string {
  if (!found) return 'Nothing is drawn yet.';
  return `Along a row: ${found.words} (${found.group}), every ${found.period === 1 ? 'stitch' : `${found.period} stitches`}.`;
}
