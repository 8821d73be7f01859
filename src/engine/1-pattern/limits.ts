/**
 * The most that a pattern may hold. Far above any real piece, low enough that a hostile file is refused before it costs
 * memory or time. Edits keep to the same limits as files, so that whatever can be made can be opened again.
 */
export const LIMITS = {
  /** Characters of a pattern file. */
  fileLength: 20_000_000,
  /** Nesting of objects and lists in a pattern file; a sound file has 7. */
  fileDepth: 24,
  /** Characters of an id. */
  idLength: 200,
  /** Characters of one text or name: as many as the longest written pattern has, so that whatever was read can be kept. */
  textLength: 2_000_000,
  sizes: 500,
  yarns: 26,
  notes: 1_000_000,
  sections: 1_000_000,
  lines: 1_000_000,
  settings: 200,
  swatches: 200,
  motifs: 1_000,
  /** Cells across and up of one motif. */
  motifSide: 400,
  placements: 5_000,
  cellRuns: 400_000,
  versions: 200,
  editions: 200,
  /** Stripes of a ground. */
  stripes: 1_000,
  /** Rows of one size, over all lines: some twenty times the rows of the longest piece. */
  rows: 20_000,
  /** Rows that one line stands for, row numbers, columns, repeats and offsets. */
  count: 100_000,
} as const;
