import type { PieceFacts } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';
import { Reckoning, type PinProblem } from '../../2-construct/recipes/reckoning.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import type { SectionYarn } from './yarnBySection.ts';
import { yarnLength, yarnNumbers, type YarnGiven, type YarnNumbers } from './yarnNumbers.ts';
import { together, yarnRate, type YarnRate } from './yarnRates.ts';
import { TAIL_CM, yarnUses, type YarnUse } from './yarnUses.ts';

/** An estimate with what it may be at least and at most. */
export interface YarnAmount {
  readonly estimate: number;
  readonly least: number;
  readonly most: number;
}

/** What one yarn is needed for a size. */
export interface YarnTotal {
  readonly letter: string;
  readonly name: string;
  readonly metres: YarnAmount;
  /** Null where nothing is known of the yarn's weight. */
  readonly grams: YarnAmount | null;
  /** Whole balls with the margin; null where the ball is not known. */
  readonly balls: number | null;
  /** Price of those balls. */
  readonly cost: number | null;
  readonly source: string;
  readonly guessed: boolean;
  /** The same with where each comes from; any can be pinned by its key. */
  readonly numbers: YarnNumbers;
}

/** The yarn of a size: totals by yarn, and every use by section and yarn. */
export interface YarnNeed {
  readonly size: number;
  readonly yarns: readonly YarnTotal[];
  readonly uses: readonly YarnUse[];
  readonly marginPercent: number;
  /** Sum of the balls' prices; null where one that is used has none. */
  readonly cost: number | null;
  readonly currency: string;
  /** Every number by its key, and those set by hand that can't be. */
  readonly numbers: ReadonlyMap<string, Origin>;
  readonly problems: readonly PinProblem[];
  /** Where the length of a yarn in one section comes from; `name` is the section's. */
  readonly ofSection: (own: SectionYarn, name: string) => Origin;
}

/** Yarn bought beyond the estimate unless the designer says otherwise, %. */
const MARGIN_PERCENT = 10;

/**
 * The yarn that a worked size needs, colour by colour, with how far it may be off. Balls are whole ones for the estimate with
 * its margin, by metres where a ball's are known, else by weight. A number set by hand is taken as it is. Linear in stitches.
 */
export function yarnNeed(pattern: Pattern, fabric: Fabric, colours: Colours, facts: PieceFacts = pattern.piece ?? {}): YarnNeed {
  const rates = pattern.yarns.map((yarn) => yarnRate(pattern, facts, yarn.letter));
  const uses = yarnUses(pattern, fabric, colours, facts, rates);
  const marginPercent = facts.marginPercent ?? MARGIN_PERCENT;
  const r = new Reckoning(colours.size, facts.pins);
  const given = pattern.yarns.map(({ letter, name }, yarn): YarnGiven => ({
    key: `yarn.${letter}`, says: `yarn ${`${letter} ${name}`.trim()}`, uses: uses.filter((use) => use.yarn === yarn), rate: rates[yarn]!,
    supply: facts.supplies?.find((one) => one.letter === letter) ?? null, marginPercent, tailCm: facts.tailCm ?? TAIL_CM,
  }));
  const yarns = pattern.yarns.map(({ letter, name }, yarn): YarnTotal => {
    const { uses: own, rate } = given[yarn]!;
    const numbers = yarnNumbers(r, given[yarn]!);
    const metres = amountOf(numbers.metres, spreadOf(own));
    return { letter, name, metres, grams: gramsOf(metres, numbers.grams, rate), balls: numbers.balls?.value ?? null, cost: numbers.cost?.value ?? null, source: rate.source, guessed: rate.guessed, numbers };
  });
  const used = yarns.filter((yarn) => yarn.metres.estimate > 0);
  const costs = used.flatMap(({ numbers }) => numbers.cost ?? []);
  const cost = costs.length < used.length ? null : r.reckon({ key: 'yarn.cost', says: 'price of all yarn', unit: 'money', formula: 'sum of the yarns', inputs: costs, exact: costs.reduce((sum, one) => sum + one.value, 0) });
  return {
    size: colours.size, yarns, uses, marginPercent, cost: cost?.value ?? null, currency: facts.currency ?? '', numbers: r.origins, problems: r.problems,
    ofSection: ({ section, yarn, cm }, name) => {
      const { key, says, rate, tailCm } = given[yarn]!;
      return yarnLength(new Reckoning(colours.size), { key: `${key}.section${section}`, says: `${says} in the ${name.toLowerCase()}`, rate, tailCm }, (kind) => cm[kind]);
    },
  };
}

/** How far a length of one yarn may be off, as a share: its uses come from the same hand and swatch, so they are off together. */
function spreadOf(uses: readonly YarnUse[]): number {
  const cm = uses.reduce((sum, use) => sum + use.cm, 0);
  return cm > 0 ? uses.reduce((sum, use) => sum + use.cm * use.spread, 0) / cm : 0;
}

/** A reckoned number with its range; one set by hand has none. */
function amountOf({ value, from }: Origin, spread: number): YarnAmount {
  const off = from.kind === 'pinned' ? 0 : spread;
  return { estimate: value, least: value * (1 - off), most: value * (1 + off) };
}

function gramsOf(metres: YarnAmount, grams: Origin | null, { gramsPerCm, byWeight }: YarnRate): YarnAmount | null {
  if (!grams || !gramsPerCm) return null;
  const length = metres.estimate > 0 ? (metres.most - metres.estimate) / metres.estimate : 0;
  // Lengths that were taken from a weight are off by the yarn's length, which the weight is not.
  const isReckoned = metres.most > metres.estimate;
  return amountOf(grams, byWeight && isReckoned ? Math.sqrt(Math.max(0, length * length - gramsPerCm.spread * gramsPerCm.spread)) : together(length, gramsPerCm.spread));
}
