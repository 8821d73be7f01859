/**
 * The main piece as a web of stitch heads: which stand beside each other and which on which. Heads are numbered row by row
 * in working order of the rows, and within a row from left to right as seen on the right side with the work growing upwards.
 * Lengths in stitch widths.
 */
export interface Web {
  readonly count: number;
  /** Stitch number of each head. */
  readonly stitch: Int32Array;
  /** Index in `rows` of each head. */
  readonly rowOf: Int32Array;
  readonly rows: readonly WebRow[];
  /** Neighbours in the row, -1 at an edge. */
  readonly left: Int32Array;
  readonly right: Int32Array;
  /** Base heads of head i, left to right: `bases[baseStart[i]] … bases[baseStart[i + 1] - 1]`; all of earlier rows. */
  readonly baseStart: Int32Array;
  readonly bases: Int32Array;
  /** Width that each head takes in its row. */
  readonly width: Float64Array;
  /** Height of each stitch over its bases. */
  readonly height: Float64Array;
  /** 1: takes up an open stitch beyond the end of the row below. */
  readonly attaches: Uint8Array;
  /** 1: a chain that stands at the end of a row without a base of its own: the side of the fabric, to work into later. */
  readonly selvedge: Uint8Array;
  /** Where each stitch stands on its bases, as `STANDS`. */
  readonly stands: Uint8Array;
  /** Heads whose tops are sewn to each other, in pairs one after the other. */
  readonly sewn: Int32Array;
  /** Width of a single crochet, mm. */
  readonly cellWidthMm: number;
  /** Sections of which no stitch is part of the main piece, by index. */
  readonly leftOut: readonly number[];
}

/** Heads `[first, end)` of one row. */
export interface WebRow {
  /** Row index in the fabric. */
  readonly row: number;
  readonly first: number;
  readonly end: number;
  /** Whether its ends meet: worked in the round, or seamed. */
  readonly wraps: boolean;
  /** Covers only part of the edge: a turned short row. */
  readonly partial: boolean;
  /** A ring or single chain that a whole round is worked into. */
  readonly centre: boolean;
  /** Its tops are drawn together at the end. */
  readonly drawnShut: boolean;
  /** Index in `rows` of the row whose chains this one, or what it grows from, is worked into from below: a heel set into an opening, a thumb. -1: none. */
  readonly setInto: number;
}
