import type { TextRange } from './instruction.ts';

/** Wrong: a number or an instruction that can't be. Doubtful: it can be worked, but a technical editor would ask. */
export type Degree = 'wrong' | 'doubtful' | 'note';

/** Every rule the tool knows. Prose for each is in `readings/checks/prose.ts`, nowhere else. */
export type Rule =
  // reading
  | 'unread' | 'emptyText' | 'tooLong' | 'sizesMismatch' | 'labelOrder' | 'badHeader' | 'otherTerms' | 'unknownYarn' | 'textOutsideSection' | 'noRows' | 'termsGuessed' | 'rowsAssumed'
  // working
  | 'notEnoughPlaces' | 'repeatUneven' | 'statedCount' | 'leftCount' | 'noBase' | 'noSeam' | 'noRing' | 'noMarker' | 'noSuchRow' | 'repeatEmpty'
  | 'tooManyStitches' | 'lastNotNext' | 'leftUnsaid' | 'noPiece' | 'sideSaid' | 'cornersUnsure' | 'evenlyUnsaid'
  // the words
  | 'turningChains' | 'abbreviationUnexplained'
  // the piece
  | 'neverUsed' | 'heelOpen' | 'heelOffCentre' | 'openSidesUnequal'
  // colour
  | 'motifCut' | 'motifRowsCut' | 'motifPastEdge' | 'unknownMotif' | 'raisedFar' | 'stitchesLeftOut'
  | 'carryLong' | 'yarnsInRow' | 'loneStitches' | 'jog' | 'changeInStripes' | 'yarnAtOtherEnd' | 'intarsiaInRounds'
  | 'yarnsAlike' | 'yarnsAlikeSeen' | 'yarnsAlikeInTone' | 'marksAlike'
  // gauge and sizes
  | 'gaugeUnusual' | 'hookUnusual' | 'swatchSmall' | 'swatchUnwashed' | 'openingNarrow' | 'measureOff' | 'pinUnusable';

/** Where a finding is. Everything that is known is given; `text` is a range of the line's own text. */
export interface Where {
  /** Section id, or null for the header and the whole piece. */
  readonly section: string | null;
  /** Line id. */
  readonly line: string | null;
  /** Row of the line's range, from 0. */
  readonly nth: number | null;
  readonly text: TextRange | null;
  /** Stitch number of the fabric. */
  readonly stitch: number | null;
}

/** A certain mend: the text to put at a range of a line, or the number of its label. */
export interface Mend {
  readonly line: string;
  readonly range: TextRange;
  readonly text: string;
  /** The number that the row's label should have; the words stay. */
  readonly label?: string;
}

/** Something the tool found. Data only: sentences are made by `describeFinding`. */
export interface Finding {
  readonly degree: Degree;
  readonly rule: Rule;
  readonly where: Where;
  readonly found: number | string | null;
  readonly expected: number | string | null;
  /** Further values for the sentence, by name. */
  readonly params: Readonly<Record<string, number | string>>;
  readonly mend: Mend | null;
}

/** Nowhere in particular: the whole pattern. */
export const WHOLE: Where = { section: null, line: null, nth: null, text: null, stitch: null };

/** Builds a finding; all but degree, rule and where may be left out. */
export function finding(degree: Degree, rule: Rule, where: Partial<Where>, more: Partial<Omit<Finding, 'degree' | 'rule' | 'where'>> = {}): Finding {
  return { degree, rule, where: { ...WHOLE, ...where }, found: null, expected: null, params: {}, mend: null, ...more };
}
