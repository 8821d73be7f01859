/** What is lit up in a chart: a stitch, the stitches it is worked into, those worked into it, and its row. */
export interface ChartHighlight {
  readonly stitch: number | null;
  readonly bases: readonly number[];
  readonly above: readonly number[];
  readonly row: number | null;
}

/** A cell shown in another yarn over the chart without changing it. */
export interface GhostCell {
  readonly stitch: number;
  readonly yarn: number;
}

/** A step of the current stitch: along the row as drawn, up to a stitch worked into it, down to its base. */
export type WalkStep = 'left' | 'right' | 'up' | 'down';
