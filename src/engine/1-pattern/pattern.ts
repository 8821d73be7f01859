import type { Terms } from '../craft/terms.ts';
import type { Amount } from '../notation/instruction.ts';
import type { RowLabel } from '../notation/written.ts';

/** A yarn of the pattern. */
export interface Yarn {
  /** One capital letter, unique in the pattern. */
  readonly letter: string;
  readonly name: string;
  /** `#rrggbb`. */
  readonly colour: string;
  /** How it is told apart in black and white print. */
  readonly mark: PrintMark;
}

/** Print marks differ by shape, not only by tone. */
export type PrintMark = 'none' | 'dot' | 'slash' | 'cross' | 'bars' | 'ring' | 'solid' | 'wedge';

/** Stitches and rows counted over `overCm`, in the stitch named. Fractions are kept. */
export interface Gauge {
  readonly stitches: number;
  readonly rows: number;
  readonly overCm: number;
  readonly stitch: 'sc' | 'hdc' | 'dc';
}

/** One line of a section. The text is a written row in the pattern's own terms; `readRow` gives its instructions. */
export type Line =
  | { readonly kind: 'row'; readonly id: string; readonly label: RowLabel; readonly text: string }
  | { readonly kind: 'step'; readonly id: string; readonly text: string }
  | { readonly kind: 'note'; readonly id: string; readonly text: string };

/** A part of the piece, in worked order. */
export interface Section {
  readonly id: string;
  readonly name: string;
  /** The words in parentheses after the name. */
  readonly remark: string;
  readonly lines: readonly Line[];
  /** Settings of the recipe that made the lines, until they are changed by hand; null for rows written by hand. */
  readonly recipe: { readonly name: string; readonly settings: Readonly<Record<string, Amount | string | boolean>> } | null;
}

/** A colourwork motif. `cells[0]` is the top row as seen on the right side; a letter is a yarn, `.` leaves the yarn below. */
export interface Motif {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly string[];
}

/** A row of a section that keeps its place when rows are put in before it. */
export interface RowKey {
  /** Line id. */
  readonly line: string;
  /** Row of that line, from 0. */
  readonly nth: number;
}

/** A motif laid on a section as a layer over the stitches. Later placements lie over earlier ones. */
export interface Placement {
  readonly id: string;
  readonly section: string;
  readonly motif: string;
  /** The row that the motif's bottom row lies on. */
  readonly row: RowKey;
  /** How the repeats sit in the row's width. */
  readonly align: 'left' | 'centre' | 'right';
  /** Stitches from that edge (left, right) or from the centred position (centre; to the right is positive), as seen on the right side. */
  readonly offset: number;
  /** Repeats across, or as many as fit. */
  readonly across: number | 'fill';
  /** Repeats up. */
  readonly up: number;
  /** Stitches between repeats. */
  readonly gap: number;
  /** Every second repeat mirrored. */
  readonly mirror: boolean;
}

/** Loose cells of one row: `letters[i]` is the yarn of column `from + i` as seen on the right side from the left, `.` leaves it. */
export interface CellRun {
  readonly section: string;
  readonly row: RowKey;
  /** Size index. */
  readonly size: number;
  readonly from: number;
  readonly letters: string;
}

/** The document: plain, immutable, with stable ids; every change is an edit. */
export interface Pattern {
  readonly id: string;
  readonly title: string;
  readonly designer: string;
  /** The terms that the lines are written in. */
  readonly terms: Terms;
  readonly gauge: Gauge;
  /** Hook in mm; null if not said. */
  readonly hookMm: number | null;
  readonly yarns: readonly Yarn[];
  /** Names of the sizes; one empty name for a pattern of one size. */
  readonly sizes: readonly string[];
  /** Whether a turning chain of 2 counts as a half double crochet. */
  readonly hdcTurningChainCounts: boolean;
  /** Header lines with other words, kept in order. */
  readonly notes: readonly { readonly word: string; readonly value: string }[];
  readonly sections: readonly Section[];
  readonly motifs: readonly Motif[];
  readonly placements: readonly Placement[];
  readonly cells: readonly CellRun[];
}
