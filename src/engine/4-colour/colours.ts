/** How a placement came out in one size: what the placing panel and the checks say. */
export interface PlacementFit {
  readonly placement: string;
  /** Stitches of the row that the motif's bottom row lies on; 0 when that row is not there in this size. */
  readonly width: number;
  /** Repeats laid across and up (whole ones). */
  readonly across: number;
  readonly up: number;
  /** Stitches of the row not covered, left and right of the repeats as seen on the right side. Negative: the motif hangs over the edge. */
  readonly leftOver: { readonly left: number; readonly right: number };
  /** Rows of the motif that found no row to lie on. */
  readonly rowsCut: number;
  /** Cells of the motif (not `.`) that fell beyond the end of a row, in any of its rows. */
  readonly cellsCut: number;
  /** Whether a repeat is cut where the sides meet at the seam. */
  readonly cutAtSeam: boolean;
  /** Nearest stitch counts, down and up, that whole repeats would fill exactly. */
  readonly nearest: { readonly down: number; readonly up: number };
}

/** The yarn of every stitch of one size, after base yarns, placements and loose cells in that order. */
export interface Colours {
  /** Size index. */
  readonly size: number;
  /** Yarn index per stitch number. */
  readonly yarn: Uint8Array;
  /** Index of the placement that gave it, plus 1; 0 for base yarn and loose cells. */
  readonly placement: Uint16Array;
  /** One for each placement that is laid in this size, in their order. */
  readonly fits: readonly PlacementFit[];
}
