import type { Drawing } from '../../engine/6-drawing/drawing.ts';

/** The chart of a section with the rows that are still to be made in grey: `row` and the rows before it stay as they are. */
export function alongDrawing(drawing: Drawing, row: number): Drawing {
  const { stitches } = drawing;
  const ghost = stitches.ghost.slice();
  for (let i = 0; i < stitches.count; i++) if (stitches.row[i]! > row) ghost[i] = 1;
  return { ...drawing, stitches: { ...stitches, ghost } };
}
