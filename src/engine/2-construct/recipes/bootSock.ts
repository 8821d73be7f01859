import type { Gauge } from '../../1-pattern/pattern.ts';
import { nearestMultiple, rowsIn, stitchesIn } from './counts.ts';
import { heelSides, shortRowHeel } from './shortRowHeel.ts';
import { sizesText } from './sizesText.ts';

/** What a size of a boot sock is to measure, in cm. */
export interface SockSize {
  readonly name: string;
  readonly girthCm: number;
  /** Cuff edge to the top of the heel. */
  readonly legCm: number;
  /** Heel to toe. */
  readonly footCm: number;
}

/**
 * A boot sock from the cuff down: cuff and leg flat and seamed at centre back, heel in short rows on half of the stitches,
 * foot in a spiral, toe in paired decreases at both sides, drawn shut. Counts are multiples of 4.
 */
export function bootSock(gauge: Gauge, sizes: readonly SockSize[]): string[] {
  const around = sizes.map((size) => nearestMultiple(stitchesIn(size.girthCm, gauge), 4, 16));
  const chains = around.map((count) => count + 1);
  const cuffRows = nearestMultiple(rowsIn(3.5, gauge), 2, 4);
  const legRows = sizes.map((size) => nearestMultiple(rowsIn(size.legCm, gauge) - cuffRows, 2, 4));
  const heel = around.map((count) => count / 2);
  const sides = heel.map(heelSides);
  const toe = toeCounts(around);
  const toeRounds = toe.dec.length + toe.even;
  // The heel's wedge adds the rows of one flank to the length of the foot.
  const footRounds = sizes.map((size, i) => Math.max(4, Math.round(rowsIn(size.footCm, gauge) - toeRounds - (sides[i]!.first + sides[i]!.second) / 2 - 1)));
  return [
    [
      'CUFF (worked flat)',
      `Foundation: with A, ch ${sizesText(chains)}.`,
      `Row 1 (RS): sc in 2nd ch from hook and in each ch across. (${sizesText(around)} sc)`,
      `Rows 2-${cuffRows}: ch 1, turn, sc in back loop only of each st across. (${sizesText(around)} sc)`,
    ].join('\n'),
    [
      'LEG (worked flat, then seamed)',
      `Rows 1-${sizesText(legRows)}: ch 1, turn, sc in each st across. (${sizesText(around)} sc)`,
      'Fasten off.',
      'Seam the side edges.',
    ].join('\n'),
    shortRowHeel('Heel', { stitches: heel, leftFirst: sides.map((side) => side.first), leftSecond: sides.map((side) => side.second), yarn: 'A' }),
    [
      'FOOT (worked in a spiral over instep and heel)',
      `Rnds 1-${sizesText(footRounds)}: sc in each st around. (${sizesText(around)} sc)`,
    ].join('\n'),
    toeText(toe),
  ];
}

interface Toe {
  /** Counts after each round that decreases, one vector a round. */
  readonly dec: readonly (readonly number[])[];
  /** Even rounds between the first ones. */
  readonly even: number;
}

/** Four decreases a round, at first every second round, then every round, to about a quarter of the stitches (handbooks). */
function toeCounts(around: readonly number[]): Toe {
  const rounds = Math.max(1, Math.floor((Math.min(...around) * 3) / 16));
  const dec = Array.from({ length: rounds }, (_, i) => around.map((count) => count - 4 * (i + 1)));
  return { dec, even: Math.floor((rounds - 1) / 2) };
}

function toeText(toe: Toe): string {
  const lines = ['TOE (worked in a spiral)'];
  let round = 1;
  toe.dec.forEach((counts, i) => {
    const between = sizesText(counts.map((count) => count / 2 - 2));
    lines.push(`Rnd ${round++}: (sc2tog, sc in next ${between} sts, sc2tog) 2 times. (${sizesText(counts)} sts)`);
    if (i < toe.even) lines.push(`Rnd ${round++}: sc in each st around. (${sizesText(counts)} sts)`);
  });
  lines.push(`Draw the yarn through the remaining ${sizesText(toe.dec.at(-1)!)} sts and pull tight.`, 'Fasten off.');
  return lines.join('\n');
}
