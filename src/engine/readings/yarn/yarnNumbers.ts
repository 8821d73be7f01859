import type { YarnSupply } from '../../1-pattern/pieceFacts.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import type { Reckoning } from '../../2-construct/recipes/reckoning.ts';
import type { YarnRate } from './yarnRates.ts';
import { SEWN, SLACK, type YarnUse, type YarnUseKind } from './yarnUses.ts';

/** What one yarn is needed for a size, each number with where it comes from. */
export interface YarnNumbers {
  /** In metres. */
  readonly metres: Origin;
  /** Null where nothing is known of the yarn's weight. */
  readonly grams: Origin | null;
  /** Whole balls with the margin; null where the ball is not known. */
  readonly balls: Origin | null;
  /** Price of those balls; null where one ball has none. */
  readonly cost: Origin | null;
}

/** What the numbers of a yarn are reckoned from. */
export interface YarnGiven {
  /** `yarn.A`: the key of its metres, with `.grams`, `.balls` and `.cost` those of the others. */
  readonly key: string;
  /** `yarn A slate`. */
  readonly says: string;
  readonly uses: readonly YarnUse[];
  readonly rate: YarnRate;
  readonly supply: YarnSupply | null;
  readonly marginPercent: number;
  readonly tailCm: number;
}

const isAmount = (pinned: number) => (pinned >= 0 ? null : '0 or more');

/**
 * The numbers of one yarn: its length from what it goes into; weight, whole balls for the length (else the weight) with the
 * margin, and their price from that. Each can be pinned by its key, and what is reckoned from it follows.
 */
export function yarnNumbers(r: Reckoning, given: YarnGiven): YarnNumbers {
  const { key, says, rate, supply } = given;
  const metres = reckonMetres(r, given);
  const grams = rate.gramsPerCm && r.reckon({
    key: `${key}.grams`, says: `weight of ${says}`, unit: 'g', formula: 'length × weight of a metre', allows: isAmount,
    inputs: [metres, r.given(`${key}.gramsPerMetre`, 'weight of a metre', 'g/m', rate.gramsPerCm.value * 100, rate.weightSource)], exact: metres.value * 100 * rate.gramsPerCm.value,
  });
  const balls = reckonBalls(r, given, metres, grams);
  const price = supply?.price ?? null;
  const cost = balls && price !== null ? r.reckon({
    key: `${key}.cost`, says: `price of ${says}`, unit: 'money', formula: 'balls × price of one', allows: isAmount,
    inputs: [balls, r.given(`${key}.price`, 'price of a ball', 'money', price, 'as it is sold')], exact: balls.value * price,
  }) : null;
  return { metres, grams, balls, cost };
}

/** The length of yarn in a size, or in a part of it, by what it goes into: `cmOf` says how much goes into a kind. Not pinned by itself. */
export function yarnLength(r: Reckoning, { key, says, rate, tailCm }: Pick<YarnGiven, 'key' | 'says' | 'rate' | 'tailCm'>, cmOf: (kind: YarnUseKind) => number): Origin {
  const inputs = KINDS.flatMap((kind) => (cmOf(kind) > 0 ? [partOf(r, kind, `${key}.${kind}`, cmOf(kind), rate, tailCm)] : []));
  return r.reckon({ key, says, unit: 'm', formula: inputs.length === 0 ? 'none is needed' : inputs.map((input) => input.says).join(' + '), inputs, exact: inputs.reduce((sum, input) => sum + input.value, 0), allows: isAmount });
}

const KINDS: readonly YarnUseKind[] = ['stitches', 'carried', 'ends', 'seams', 'fringe'];

function reckonMetres(r: Reckoning, given: YarnGiven): Origin {
  return yarnLength(r, given, (kind) => given.uses.reduce((sum, use) => (use.kind === kind ? sum + use.cm : sum), 0));
}

function partOf(r: Reckoning, kind: YarnUseKind, key: string, cm: number, rate: YarnRate, tailCm: number): Origin {
  const of = (says: string, formula: string, inputs: readonly Origin[]) => r.reckon({ key, says, unit: 'm', formula, inputs, exact: cm / 100 });
  switch (kind) {
    case 'stitches': {
      const one = rate.stitchCm('sc').value;
      return of('in stitches', 'yarn in a single crochet × single crochets that the stitches are worth', [
        r.given(`${key}.one`, 'yarn in a single crochet', 'cm', one, rate.source), r.given(`${key}.worth`, 'single crochets that they are worth', 'number', cm / one, 'counted in the worked rows, chains and other stitches by their ratio'),
      ]);
    }
    case 'carried':
      return of('carried along', `width and height that it is carried over × ${SLACK}, as it lies a little slack`, [r.given(`${key}.over`, 'carried over', 'cm', cm / SLACK, 'counted in the worked rows')]);
    case 'ends':
      return of('in ends', 'lengths that are joined × 2 tails', [
        r.given(`${key}.lengths`, 'lengths that are joined', 'number', cm / (2 * tailCm), 'counted in the worked rows'), r.given('yarn.tail', 'a tail', 'cm', tailCm, 'given'),
      ]);
    case 'seams':
      return of('in seams', `length of the seams × ${SEWN} (common practice)`, [r.given(`${key}.length`, 'length of the seams', 'cm', cm / SEWN, 'measured in the finished piece')]);
    case 'fringe':
      return of('in fringe', 'strands × their length, as cut', []);
  }
}

function reckonBalls(r: Reckoning, { key, says, supply, marginPercent }: YarnGiven, metres: Origin, grams: Origin | null): Origin | null {
  const of = supply?.ballMetres ?? null;
  const weighs = supply?.ballGrams ?? null;
  const byLength = of !== null;
  if (!byLength && (weighs === null || !grams)) return null;
  const amount = byLength ? metres : grams!;
  const ball = byLength ? r.given(`${key}.ball`, 'yarn in a ball', 'm', of, 'as it is sold') : r.given(`${key}.ball`, 'weight of a ball', 'g', weighs!, 'as it is sold');
  const margin = r.given('yarn.margin', 'bought beyond the estimate', 'share', marginPercent / 100, 'given');
  return r.reckon({
    key: `${key}.balls`, says: `balls of ${says}`, unit: 'balls', formula: `${byLength ? 'length' : 'weight'} × (1 + margin) ÷ what a ball has`, inputs: [amount, margin, ball],
    exact: (amount.value * (1 + marginPercent / 100)) / ball.value, rounding: { how: 'up', step: 1, plus: 0, least: 0 },
  });
}
