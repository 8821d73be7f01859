import type { Gauge } from '../../1-pattern/pattern.ts';
import { nearestMultiple, rowsIn, stitchesIn } from './counts.ts';
import { sizesText } from './sizesText.ts';

/** Width (or girth) and height in cm of a size of a plain piece. */
export interface PieceSize {
  readonly name: string;
  readonly widthCm: number;
  readonly heightCm: number;
}

/** A flat panel of single crochet. */
export function flatPanel(gauge: Gauge, sizes: readonly PieceSize[]): string[] {
  const width = sizes.map((size) => nearestMultiple(stitchesIn(size.widthCm, gauge), 1, 2));
  const rows = sizes.map((size) => nearestMultiple(rowsIn(size.heightCm, gauge), 1, 2));
  return [
    [
      'PANEL (worked flat)',
      `Foundation: with A, ch ${sizesText(width.map((count) => count + 1))}.`,
      `Row 1 (RS): sc in 2nd ch from hook and in each ch across. (${sizesText(width)} sc)`,
      `Rows 2-${sizesText(rows)}: ch 1, turn, sc in each st across. (${sizesText(width)} sc)`,
      'Fasten off.',
    ].join('\n'),
  ];
}

/** A leg warmer: a tube in a spiral. */
export function legWarmer(gauge: Gauge, sizes: readonly PieceSize[]): string[] {
  const around = sizes.map((size) => nearestMultiple(stitchesIn(size.widthCm, gauge), 4, 8));
  const rounds = sizes.map((size) => nearestMultiple(rowsIn(size.heightCm, gauge), 1, 2));
  return [
    [
      'TUBE (worked in a spiral)',
      `Foundation: with A, ch ${sizesText(around)}, join to form a ring.`,
      `Rnds 1-${sizesText(rounds)}: sc in each st around. (${sizesText(around)} sc)`,
      'Fasten off.',
    ].join('\n'),
  ];
}

/**
 * A flat disc, and around it, where the height is more than the disc's radius, the even sides of a cap; in one size, since
 * sizes differ by whole rounds of increases. Six stitches more in each round lie flat in single crochet (published counts;
 * 2π times height over width of a stitch).
 */
export function discOrCap(gauge: Gauge, size: PieceSize): string[] {
  const first = 6;
  const rounds = Math.max(2, Math.round(rowsIn(size.widthCm / 2, gauge)));
  const sides = Math.max(0, Math.round(rowsIn(size.heightCm, gauge)) - rounds);
  const crown = ['CROWN (worked in a spiral)', `Rnd 1: with A, magic ring, ${first} sc in ring. (${first} sc)`, `Rnd 2: 2 sc in each st around. (${first * 2} sc)`];
  for (let round = 3; round <= rounds; round++) {
    const plain = round === 3 ? 'sc in next st' : `sc in next ${round - 2} sts`;
    crown.push(`Rnd ${round}: *${plain}, 2 sc in next st; rep from * around. (${first * round} sc)`);
  }
  if (sides === 0) return [[...crown, 'Fasten off.'].join('\n')];
  const label = sides === 1 ? 'Rnd 1' : `Rnds 1-${sides}`;
  return [crown.join('\n'), ['SIDES (worked in a spiral)', `${label}: sc in each st around. (${first * rounds} sc)`, 'Fasten off.'].join('\n')];
}
