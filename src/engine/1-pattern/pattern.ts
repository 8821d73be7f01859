import type { Technique } from '../craft/colourTechniques.ts';
import type { Terms } from '../craft/terms.ts';
import type { Amount } from '../notation/instruction.ts';
import type { WordStyle } from '../notation/writeWork.ts';
import type { RowLabel } from '../notation/written.ts';
import type { PieceFacts } from './pieceFacts.ts';

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
  /** How its colours are worked; left out where nothing is said. */
  readonly colour?: SectionColour;
}

/** How the colours of a section are worked. */
export interface SectionColour {
  /** Left out: as its rows show (stripes where no row changes yarn, else carried inside). */
  readonly technique?: Technique;
  /** What lies under all layers; left out: the yarns that the rows say. */
  readonly ground?: Ground;
}

/** The yarns under all layers of a section. */
export type Ground =
  /** The yarns that the rows say. */
  | { readonly kind: 'rows' }
  /** Those, but each `from` in `to`; all at once, so that two can change over. */
  | { readonly kind: 'replace'; readonly yarns: readonly { readonly from: string; readonly to: string }[] }
  /** Whole rows in turn, from the section's first row on; one stripe makes it plain. */
  | { readonly kind: 'stripes'; readonly stripes: readonly { readonly letter: string; readonly rows: number }[] };

/** A colourwork motif. `cells[0]` is the top row as seen on the right side; a letter is a yarn, `.` leaves the yarn below. */
export interface Motif {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly string[];
  /** Rows as long as those of `cells`: a small letter of `STITCH_OVERRIDES` sets the stitch of a cell, `.` leaves it. Left out: none is set. */
  readonly stitches?: readonly string[];
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
  /** Rows between repeats going up; 0 if left out. */
  readonly gapUp?: number;
  /** How `'fill'` fills: whole repeats (if left out), whole repeats with what is left spread into the gaps, or on to the edges, where repeats are cut. */
  readonly fill?: 'whole' | 'spread' | 'edges';
  /**
   * What `align` and `offset` count from: the row's own ends and middle (if left out), the seam, or the centre front
   * opposite to it. At seam and front, `align` says which part lies there: the left edge, the middle or the right edge
   * of the repeats (of one repeat where they fill), `offset` is to the right, and repeats go on around the seam; so do
   * repeats that fill a row whose ends meet, when they are moved.
   */
  readonly anchor?: 'row' | 'seam' | 'front';
  /** What columns follow where rows are wider or narrower than the bottom row; the aligned edge or centre if left out. */
  readonly follow?: 'left' | 'centre' | 'right';
  readonly stagger?: Stagger;
  /** Every second repeat going up turned top to bottom. */
  readonly flip?: boolean;
  /** What differs by size: one entry a size, null where nothing does. */
  readonly bySize?: readonly (PlacementOfSize | null)[];
  /** Not laid, unless a version says so. */
  readonly hidden?: boolean;
  /** Edits leave it where it lies until it is unlocked. */
  readonly locked?: boolean;
}

/** Every second repeat moved: in a half-drop up the rows, in a brick along the row to the right. */
export interface Stagger {
  readonly kind: 'halfDrop' | 'brick';
  /** Rows or stitches; half a repeat with its gap, rounded down, for `'half'`. */
  readonly by: number | 'half';
  /** Whether what is moved out on one side of all repeats comes in on the other. */
  readonly closed: boolean;
}

/** What a placement does otherwise in one size; what is left out is as in all sizes. */
export interface PlacementOfSize {
  readonly leftOut?: boolean;
  /** Rows that the bottom row lies higher (lower if negative). */
  readonly rowsUp?: number;
  readonly offset?: number;
  readonly across?: number | 'fill';
  readonly up?: number;
  readonly gap?: number;
  readonly gapUp?: number;
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

/** A version of the pattern, such as an easier one: the same rows with other colours in some sections. */
export interface Version {
  readonly id: string;
  readonly name: string;
  /** The sections that differ. */
  readonly sections: readonly SectionVersion[];
}

/** What one section has in a version; what is left out is as in the pattern. */
export interface SectionVersion {
  readonly section: string;
  /** The placements that are laid, hidden ones too; none for an empty list. */
  readonly placements?: readonly string[];
  /** Whether loose cells are laid. */
  readonly cells?: boolean;
  readonly technique?: Technique;
  readonly ground?: Ground;
}

/** From where on the checks of colour ask; what is left out is as the technique has it (`techniqueLimits`), or as said here. */
export interface ColourLimits {
  /** Stitches over which a yarn may be carried; null: any. */
  readonly longestCarry?: number | null;
  /** Yarns in one row; null: any. */
  readonly mostYarns?: number | null;
  /** Rows over which a yarn may be carried up before it is cut. */
  readonly rowsUp?: number;
  /** Least CIEDE2000 between two yarns of a section. */
  readonly leastDifference?: number;
  /** Least contrast in light and dark (WCAG, from 1 on) between two yarns of a section. */
  readonly leastContrast?: number;
}

/** How the designer words the pattern when it is written out; what is left out is as `WordStyle` has it first, and in the pattern's own terms. */
export interface Wording extends WordStyle {
  readonly terms?: Terms;
}

/** What the designer says about the pattern where it is published; what is left out is not printed. */
export interface Imprint {
  /** A few words about the piece, as a reader of the first page wants them; line ends part paragraphs. */
  readonly about?: string;
  /** What may be done with the pattern and with pieces made from it. */
  readonly licence?: string;
  /** Who helped: testers, technical editor, photographs. */
  readonly credits?: string;
  /** Name of this edition, and its date as the designer gives it; never the clock's. */
  readonly edition?: string;
  readonly date?: string;
  /** Earlier editions, the latest first. */
  readonly editions?: readonly Edition[];
}

/** An edition that came before, with what has changed since, in words. */
export interface Edition {
  readonly name: string;
  readonly date: string;
  readonly errata: string;
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
  /** Versions beside the pattern as it stands; none if left out. */
  readonly versions?: readonly Version[];
  readonly colourLimits?: ColourLimits;
  /** What the piece is made to and of; nothing known if left out. */
  readonly piece?: PieceFacts;
  /** Changes nothing of the rows; as usual if left out. */
  readonly wording?: Wording;
  /** What is said about it where it is published. */
  readonly imprint?: Imprint;
}
