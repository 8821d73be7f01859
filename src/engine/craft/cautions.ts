/** For whom a piece is made: the designer says it; figures are by age in the cited standards. `object`: nobody wears it. */
export const WEARERS = ['adult', 'older', 'young', 'under3', 'object'] as const;

export type Wearer = (typeof WEARERS)[number];

/** What a piece has that a caution may hang on. */
export const FEATURES = ['sock', 'loop', 'cord', 'fringe', 'bobble', 'button', 'hung', 'infantGarment'] as const;

export type Feature = (typeof FEATURES)[number];

/** One caution: when it applies, what it says, and where its figures come from. */
export interface Caution {
  readonly id: string;
  readonly features: readonly Feature[];
  readonly wearers: readonly Wearer[];
  readonly says: string;
  readonly source: string;
  /** Whether the source's own words were seen; figures from memory are marked in print. */
  readonly seen: boolean;
}

/** The line that stands under every caution. */
export const CAUTION_GUIDANCE = 'These figures are guidance and not legal advice: the rules of the place where the piece is made or sold decide.';

const CHILDREN: readonly Wearer[] = ['older', 'young', 'under3'];
const ANYONE: readonly Wearer[] = WEARERS;
const PEOPLE: readonly Wearer[] = ['adult', 'older', 'young', 'under3'];

/**
 * Cautions of the trade. Age groups as in EN 14682: young is birth to 6 years 11 months (134 cm), older 7 to 13 years 11
 * months; small parts concern children under 3 years. None is complete: the standards themselves have more.
 */
export const CAUTIONS: readonly Caution[] = [
  {
    id: 'slip', features: ['sock'], wearers: PEOPLE,
    says: 'Socks slip on smooth floors: put a non-slip sole on, and don’t rely on one on stairs.',
    source: 'Chari et al., BMC Geriatrics 2009, 9:39: non-slip socks did no better than bare feet; of 19 falls where footwear was to blame, socks were in 14 (Gerontology 70, 611)', seen: true,
  },
  {
    id: 'cordsYoung', features: ['cord'], wearers: ['young', 'under3'],
    says: 'For children under 7 years: no cords or drawstrings at head or neck, and none that tie behind the neck.',
    source: 'EN 14682 as summarised by the Finnish safety agency', seen: true,
  },
  {
    id: 'cordsOlder', features: ['cord'], wearers: ['older'],
    says: 'For children of 7 to 13 years: no drawstring with free ends at head or neck; functional cords there at most 75 mm.',
    source: 'EN 14682 (2007 edition, published summaries)', seen: true,
  },
  {
    id: 'waistCords', features: ['cord'], wearers: CHILDREN,
    says: 'Cords at waist or chest: each free end at most 140 mm with the opening at its full width; no toggles, knots or ornaments at free ends.',
    source: 'EN 14682 (2007 edition, published summaries)', seen: true,
  },
  {
    id: 'fixedLoops', features: ['loop'], wearers: CHILDREN,
    says: 'Fixed loops that stand out: at most 75 mm round.',
    source: 'EN 14682:2014; seen for the equivalent Chinese standards, the European figure is from memory', seen: false,
  },
  {
    id: 'nooses', features: ['cord', 'loop', 'fringe'], wearers: ['under3'],
    says: 'Cords of things for children under 3 years that can form a noose: at most 220 mm long, a noose at most 380 mm round, and at least 1.5 mm thick.',
    source: 'EN 71-1:2005+A8:2009, 5.4 (toys)', seen: true,
  },
  {
    id: 'smallParts', features: ['button', 'bobble', 'fringe'], wearers: ['under3'],
    says: 'Parts that come off must not fit whole into a cylinder 31.7 mm wide and 25.4 to 57.1 mm deep; buttons and eyes count, torn-off yarn does not.',
    source: '16 CFR 1501.4; Canada SOR/2011-17, Schedule 1', seen: true,
  },
  {
    id: 'flameWorn', features: ['sock'], wearers: PEOPLE,
    says: 'Worn textiles fall under flammability rules in some places; socks are not exempt as footwear.',
    source: '16 CFR 1609.1 and 1610: footwear is exempt only without a hosiery part', seen: true,
  },
  {
    id: 'flameHung', features: ['hung'], wearers: ANYONE,
    says: 'Hung by a fire or candles it can burn: hang it well away, and never leave it by an open flame.',
    source: 'common practice', seen: true,
  },
  {
    id: 'infantFlame', features: ['infantGarment'], wearers: ['under3'],
    says: 'Garments up to 9 months are outside the sleepwear rule only as a one-piece of at most 64.8 cm or pieces of at most 40 cm.',
    source: '16 CFR 1615.1', seen: true,
  },
  {
    id: 'hands', features: ['sock', 'hung', 'loop', 'cord', 'fringe', 'bobble', 'button', 'infantGarment'], wearers: ANYONE,
    says: 'Rest the hands while working.',
    source: 'common practice', seen: true,
  },
];

/** The cautions for a wearer and what the piece has, in the table's order. Without a wearer said, those for adults. */
export function cautionsFor(wearer: Wearer | null, features: ReadonlySet<Feature>): readonly Caution[] {
  return CAUTIONS.filter((caution) => caution.wearers.includes(wearer ?? 'adult') && caution.features.some((feature) => features.has(feature)));
}
