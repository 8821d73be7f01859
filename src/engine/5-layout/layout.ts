import type { StoodRow } from './stoodRow.ts';

/**
 * Where every stitch of one section sits. Millimetres, y down; angles in radians, clockwise from up (0: the stitch stands
 * upright). Right side facing, right-handed: RS rows run right to left. Arrays are indexed by `stitch - first`.
 */
export interface Layout {
  /** Of its largest part. */
  readonly kind: LayoutKind;
  readonly section: number;
  /** Pieces that were begun one after another in the section, side by side from left to right; mostly one. */
  readonly parts: readonly LaidPart[];
  /** Stitch numbers [first, end). */
  readonly first: number;
  readonly end: number;
  /** Size of a single crochet from the gauge, mm. */
  readonly cellWidthMm: number;
  readonly cellHeightMm: number;
  /** Head (top centre) of each stitch. */
  readonly headX: Float32Array;
  readonly headY: Float32Array;
  /** Foot: mean of the heads of its bases, or straight below the head where it has none. */
  readonly footX: Float32Array;
  readonly footY: Float32Array;
  readonly angle: Float32Array;
  /** Corners of the stitch's cell, 8 numbers a stitch: bottom left, bottom right, top right, top left as it stands (x, y each). */
  readonly corners: Float32Array;
  /** Stitches of other sections, and repeat margins of a tube, drawn in grey for orientation. */
  readonly ghosts: readonly Ghost[];
  readonly rows: readonly LaidRow[];
  /** Lines and bands that belong to the layout: seam, centre, open stitches. */
  readonly guides: readonly Guide[];
  readonly bounds: Box;
}

/** Rows back and forth; rounds unrolled; turned short rows; rounds about a point; rounds about a foundation chain. */
export type LayoutKind = 'flat' | 'tube' | 'turned' | 'disc' | 'oval';

/** The three pictures of turned short rows. */
export type TurnedView = 'wedge' | 'grid' | 'fan';

/** A piece of a section, laid out by itself. */
export interface LaidPart {
  readonly kind: LayoutKind;
  /** Row indices in the fabric, in working order. */
  readonly rows: readonly number[];
  /** Turned short rows whose open stitches make no two plain flanks: they keep their columns in every view. */
  readonly keepsColumns: boolean;
}

export interface Ghost {
  readonly stitch: number;
  readonly headX: number;
  readonly headY: number;
  readonly angle: number;
}

export interface LaidRow {
  /** Row index in the fabric. */
  readonly row: number;
  /** Side of the drawing that the row starts from. */
  readonly startsAt: 'left' | 'right';
  /** Where its number stands (middle of the text), and the point of the row it belongs to (end of the leader). */
  readonly labelX: number;
  readonly labelY: number;
  readonly startX: number;
  readonly startY: number;
  /** `'inside'`: the number stands on the fabric itself, between end and start of its round. */
  readonly stands: 'beside' | 'inside';
  /** Outline of the row where its cells don't give it well: a closed round. Null: as the cells lie. */
  readonly band: readonly number[] | null;
}

export type Guide =
  /** Dashed lines. */
  | { readonly kind: 'seam' | 'centre'; readonly points: readonly number[] }
  /** Arrow along the way that all rounds of a disc are worked; the row it begins at. */
  | { readonly kind: 'way'; readonly points: readonly number[]; readonly row: number }
  /** Where a round begins that is not joined: a small mark, `turnRad` clockwise. */
  | { readonly kind: 'start'; readonly x: number; readonly y: number; readonly turnRad: number; readonly row: number }
  /** A run of grey stitches and the section they belong to: a line along them, and where its name stands. */
  | { readonly kind: 'from'; readonly points: readonly number[]; readonly section: number; readonly textX: number; readonly textY: number }
  /**
   * Outline of a run of open stitches, with its count and the row that left it, or the first and last of the rows that did.
   * Count 0: an outline without words; no points: the words of several outlines.
   */
  | { readonly kind: 'open'; readonly points: readonly number[]; readonly count: number; readonly row: number; readonly lastRow: number; readonly textX: number; readonly textY: number; readonly turnRad: number };

/** One piece as its layout function gives it; its stitches are in the ground. */
export interface PlacedPart {
  readonly kind: LayoutKind;
  readonly rows: readonly LaidRow[];
  readonly ghosts: readonly Ghost[];
  readonly guides: readonly Guide[];
  /** See `LaidPart`. Absent: no. */
  readonly keepsColumns?: boolean;
  /** Its rows as they stand one on another, where an edit may keep them. */
  readonly stood?: readonly StoodRow[];
}

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}
