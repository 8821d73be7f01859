/**
 * A line drawing with dimensions, at true size in mm, y down: shapes of worked sections or of the finished piece. The writer
 * scales it to paper. No colours, no rounding.
 */
export interface Schematic {
  readonly shapes: readonly SchematicShape[];
  readonly dimensions: readonly Dimension[];
}

export interface SchematicShape {
  /** Valid XML id, unique in the schematic. */
  readonly id: string;
  readonly label: string;
  /** Where the label stands: middle of the text. */
  readonly labelX: number;
  readonly labelY: number;
  /** Closed outlines, `x, y, x, y …` each. */
  readonly outlines: readonly (readonly number[])[];
  /** Lines inside, such as folds and the edges of sections: drawn thin. */
  readonly inner: readonly (readonly number[])[];
}

/** A measurement between two points, drawn as a line beside them. */
export interface Dimension {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  /** Which side of the points the line stands on. */
  readonly side: 'left' | 'right' | 'above' | 'below';
  /** Lines of the same side stand further out, one after another. */
  readonly tier: number;
  readonly cm: number;
  /** What it is: `round` for a girth that lies folded; '' for a plain length. */
  readonly word: '' | 'round' | 'across';
}
