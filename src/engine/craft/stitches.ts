/**
 * The stitch catalogue, in US terms (the inner form). One row a stitch; every other table that depends on the stitch is
 * checked against `StitchKind` by the compiler, so a new stitch shows where it is still missing.
 *
 * Heights are relative to a single crochet as commonly taught (1 : 1.5 : 2 : 3, *common practice*, from memory; real gauges
 * differ, so they are only a fallback where no row gauge of that stitch is known). Turning chains: published lessons of a
 * crochet guild (1997) and two how-to publishers agree on 1, 2, 3, 4, 5 chains and on what counts. The extended stitches (esc, ehdc,
 * edc, etr) and triple treble are in two published lists of abbreviations, the UK word for a US triple treble, all their heights and
 * their turning chains are *from memory*; reverse and twisted single crochet are named by published guides to chart symbols.
 */
export type StitchKind =
  | 'ring' | 'ch' | 'slst' | 'sc' | 'hdc' | 'dc' | 'tr' | 'dtr'
  | 'trtr' | 'esc' | 'ehdc' | 'edc' | 'etr' | 'rsc' | 'tsc'
  | 'bobble' | 'puff' | 'popcorn' | 'cluster' | 'shell' | 'vst' | 'picot';

/** One stitch of the trade. */
export interface StitchRow {
  readonly kind: StitchKind;
  /** US abbreviation, as written in a row. */
  readonly us: string;
  /** UK abbreviation. */
  readonly uk: string;
  /** Full US name, singular. */
  readonly usName: string;
  /** Full UK name, singular. */
  readonly ukName: string;
  /** Height in single-crochet heights. */
  readonly height: number;
  /** Yarn overs before the hook goes in: the slashes of the symbol. */
  readonly yarnOvers: number;
  /** Chains of the turning chain that reaches this height. */
  readonly turningChains: number;
  /** Whether that turning chain counts as a stitch: always, never, or as the section sets it (half double crochet). */
  readonly turningChainCounts: 'yes' | 'no' | 'set';
  /** Whether the stitch counts in a row's stated count. */
  readonly counts: boolean;
  /** For stitches made of several legs: how many when the pattern gives no number, and of which stitch. 0 for plain stitches. */
  readonly legs: number;
  readonly legKind: StitchKind | null;
}

const plain = { legs: 0, legKind: null, counts: true } as const;

/** The catalogue in the order of codes: `STITCHES[code]`, see `stitchCode`. */
export const STITCHES: readonly StitchRow[] = [
  { kind: 'ring', us: 'ring', uk: 'ring', usName: 'magic ring', ukName: 'magic ring', height: 0.35, yarnOvers: 0, turningChains: 0, turningChainCounts: 'no', ...plain, counts: false },
  { kind: 'ch', us: 'ch', uk: 'ch', usName: 'chain', ukName: 'chain', height: 0.4, yarnOvers: 0, turningChains: 0, turningChainCounts: 'no', ...plain, counts: false },
  { kind: 'slst', us: 'sl st', uk: 'sl st', usName: 'slip stitch', ukName: 'slip stitch', height: 0.35, yarnOvers: 0, turningChains: 0, turningChainCounts: 'no', ...plain },
  { kind: 'sc', us: 'sc', uk: 'dc', usName: 'single crochet', ukName: 'double crochet', height: 1, yarnOvers: 0, turningChains: 1, turningChainCounts: 'no', ...plain },
  { kind: 'hdc', us: 'hdc', uk: 'htr', usName: 'half double crochet', ukName: 'half treble crochet', height: 1.5, yarnOvers: 1, turningChains: 2, turningChainCounts: 'set', ...plain },
  { kind: 'dc', us: 'dc', uk: 'tr', usName: 'double crochet', ukName: 'treble crochet', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', ...plain },
  { kind: 'tr', us: 'tr', uk: 'dtr', usName: 'treble crochet', ukName: 'double treble crochet', height: 3, yarnOvers: 2, turningChains: 4, turningChainCounts: 'yes', ...plain },
  { kind: 'dtr', us: 'dtr', uk: 'ttr', usName: 'double treble crochet', ukName: 'triple treble crochet', height: 4, yarnOvers: 3, turningChains: 5, turningChainCounts: 'yes', ...plain },
  { kind: 'trtr', us: 'trtr', uk: 'qtr', usName: 'triple treble crochet', ukName: 'quadruple treble crochet', height: 5, yarnOvers: 4, turningChains: 6, turningChainCounts: 'yes', ...plain },
  { kind: 'esc', us: 'esc', uk: 'edc', usName: 'extended single crochet', ukName: 'extended double crochet', height: 1.3, yarnOvers: 0, turningChains: 2, turningChainCounts: 'no', ...plain },
  { kind: 'ehdc', us: 'ehdc', uk: 'ehtr', usName: 'extended half double crochet', ukName: 'extended half treble crochet', height: 1.8, yarnOvers: 1, turningChains: 3, turningChainCounts: 'set', ...plain },
  { kind: 'edc', us: 'edc', uk: 'etr', usName: 'extended double crochet', ukName: 'extended treble crochet', height: 2.4, yarnOvers: 1, turningChains: 4, turningChainCounts: 'yes', ...plain },
  { kind: 'etr', us: 'etr', uk: 'edtr', usName: 'extended treble crochet', ukName: 'extended double treble crochet', height: 3.4, yarnOvers: 2, turningChains: 5, turningChainCounts: 'yes', ...plain },
  { kind: 'rsc', us: 'rev sc', uk: 'rev dc', usName: 'reverse single crochet', ukName: 'reverse double crochet', height: 1, yarnOvers: 0, turningChains: 1, turningChainCounts: 'no', ...plain },
  { kind: 'tsc', us: 'twisted sc', uk: 'twisted dc', usName: 'twisted single crochet', ukName: 'twisted double crochet', height: 1, yarnOvers: 0, turningChains: 1, turningChainCounts: 'no', ...plain },
  { kind: 'bobble', us: 'bobble', uk: 'bobble', usName: 'bobble', ukName: 'bobble', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', counts: true, legs: 5, legKind: 'dc' },
  { kind: 'puff', us: 'puff st', uk: 'puff st', usName: 'puff stitch', ukName: 'puff stitch', height: 1.5, yarnOvers: 1, turningChains: 2, turningChainCounts: 'set', counts: true, legs: 3, legKind: 'hdc' },
  { kind: 'popcorn', us: 'popcorn', uk: 'popcorn', usName: 'popcorn', ukName: 'popcorn', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', counts: true, legs: 5, legKind: 'dc' },
  { kind: 'cluster', us: 'cluster', uk: 'cluster', usName: 'cluster', ukName: 'cluster', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', counts: true, legs: 3, legKind: 'dc' },
  { kind: 'shell', us: 'shell', uk: 'shell', usName: 'shell', ukName: 'shell', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', counts: true, legs: 5, legKind: 'dc' },
  { kind: 'vst', us: 'V-st', uk: 'V-st', usName: 'V-stitch', ukName: 'V-stitch', height: 2, yarnOvers: 1, turningChains: 3, turningChainCounts: 'yes', counts: true, legs: 2, legKind: 'dc' },
  { kind: 'picot', us: 'picot', uk: 'picot', usName: 'picot', ukName: 'picot', height: 0.9, yarnOvers: 0, turningChains: 0, turningChainCounts: 'no', counts: false, legs: 3, legKind: 'ch' },
];

const CODES = Object.fromEntries(STITCHES.map((row, code) => [row.kind, code])) as Record<StitchKind, number>;

/** The number under which typed arrays keep a stitch kind. */
export function stitchCode(kind: StitchKind): number {
  return CODES[kind];
}

/** The catalogue row of a stitch kind. */
export function stitchRow(kind: StitchKind): StitchRow {
  return STITCHES[CODES[kind]]!;
}

/** The catalogue row of a code from a typed array; a code outside the catalogue is a programmer's slip. */
export function stitchOfCode(code: number): StitchRow {
  const row = STITCHES[code];
  if (!row) throw new RangeError(`stitch code ${code} is outside the catalogue of ${STITCHES.length}`);
  return row;
}
