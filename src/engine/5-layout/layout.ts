/**
 * Where every stitch of one section sits. Millimetres, y down; angles in radians, clockwise from up (0: the stitch stands
 * upright). Right side facing, right-handed: RS rows run right to left. Arrays are indexed by `stitch - first`.
 */
export interface Layout {
  readonly kind: 'flat' | 'tube' | 'turned' | 'disc';
  readonly section: number;
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
}

export type Guide =
  /** Dashed lines. */
  | { readonly kind: 'seam' | 'centre'; readonly points: readonly number[] }
  /** Outline of a run of open stitches, with its count and the row that left it. */
  | { readonly kind: 'open'; readonly points: readonly number[]; readonly count: number; readonly row: number; readonly textX: number; readonly textY: number; readonly turnRad: number };

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}
