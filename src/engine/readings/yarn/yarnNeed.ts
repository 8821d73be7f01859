import type { PieceFacts } from '../../1-pattern/pieceFacts.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { together, yarnRate, type YarnRate } from './yarnRates.ts';
import { yarnUses, type YarnUse } from './yarnUses.ts';

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
}

/** Yarn bought beyond the estimate unless the designer says otherwise, %. */
const MARGIN_PERCENT = 10;

/**
 * The yarn that a worked size needs, colour by colour, with how far it may be off. Balls are whole ones for the estimate with
 * its margin, by metres where a ball's are known, else by weight. Linear in stitches.
 */
export function yarnNeed(pattern: Pattern, fabric: Fabric, colours: Colours, facts: PieceFacts = pattern.piece ?? {}): YarnNeed {
  const rates = pattern.yarns.map((yarn) => yarnRate(pattern, facts, yarn.letter));
  const uses = yarnUses(pattern, fabric, colours, facts, rates);
  const marginPercent = facts.marginPercent ?? MARGIN_PERCENT;
  const yarns = pattern.yarns.map(({ letter, name }, yarn): YarnTotal => {
    const own = uses.filter((use) => use.yarn === yarn);
    const metres = summed(own);
    const rate = rates[yarn]!;
    const grams = gramsOf(metres, rate);
    const supply = facts.supplies?.find((one) => one.letter === letter) ?? null;
    const balls = ballsOf(metres, grams, supply?.ballMetres ?? null, supply?.ballGrams ?? null, marginPercent);
    const price = supply?.price ?? null;
    return { letter, name, metres, grams, balls, cost: balls !== null && price !== null ? balls * price : null, source: rate.source, guessed: rate.guessed };
  });
  const used = yarns.filter((yarn) => yarn.metres.estimate > 0);
  const cost = used.some((yarn) => yarn.cost === null) ? null : used.reduce((sum, yarn) => sum + yarn.cost!, 0);
  return { size: colours.size, yarns, uses, marginPercent, cost, currency: facts.currency ?? '' };
}

/** Uses of one yarn come from the same hand and swatch, so they are off together. */
function summed(uses: readonly YarnUse[]): YarnAmount {
  const cm = uses.reduce((sum, use) => sum + use.cm, 0);
  const off = uses.reduce((sum, use) => sum + use.cm * use.spread, 0);
  return { estimate: cm / 100, least: (cm - off) / 100, most: (cm + off) / 100 };
}

function gramsOf(metres: YarnAmount, { gramsPerCm, byWeight }: YarnRate): YarnAmount | null {
  if (!gramsPerCm) return null;
  const estimate = metres.estimate * 100 * gramsPerCm.value;
  const length = metres.estimate > 0 ? (metres.most - metres.estimate) / metres.estimate : 0;
  const spread = byWeight ? Math.sqrt(Math.max(0, length * length - gramsPerCm.spread * gramsPerCm.spread)) : together(length, gramsPerCm.spread);
  return { estimate, least: estimate * (1 - spread), most: estimate * (1 + spread) };
}

function ballsOf(metres: YarnAmount, grams: YarnAmount | null, ballMetres: number | null, ballGrams: number | null, marginPercent: number): number | null {
  if (metres.estimate === 0) return 0;
  const margin = 1 + marginPercent / 100;
  const whole = (amount: YarnAmount, ball: number) => Math.ceil((amount.estimate * margin) / ball - 1e-9);
  if (ballMetres !== null) return whole(metres, ballMetres);
  return ballGrams !== null && grams ? whole(grams, ballGrams) : null;
}
