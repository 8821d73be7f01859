import type { Room } from './flatSchematic.ts';
import type { Lengths } from './lengthWords.ts';
import type { Schematic } from './schematic.ts';
import { dimensionRoom, paperOf, placeSchematic, type PlacedSchematic } from './writeSchematic.ts';

/** Paper that a schematic is to fit on. */
export interface SchematicPaper {
  /** Size of text that is asked for, and the least that it may be made, mm. */
  readonly textMm: number;
  readonly leastMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lengths: Lengths;
}

/** A schematic that fits its paper: at a scale of 1 to `scale`, in text of a size. */
export interface FittedSchematic {
  readonly placed: PlacedSchematic;
  readonly scale: number;
  readonly textMm: number;
}

/** Draws with the room that words need, in mm of the piece. */
export type DrawSchematic = (room: Room) => Schematic;

/** Scales that a ruler knows: 1 to so many. Larger things go on by hundreds. */
const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000];
/** Words may make a drawing so many times smaller than it would be without them. */
const SMALLER_FOR_WORDS = 2;
/** Text of hardly any size, mm. */
const NO_TEXT_MM = 0.2;
/** Text is made smaller by such steps where its words leave no room for the shapes at any scale. */
const SMALLER = 0.94;

/**
 * Draws in the largest text, not above the one asked for, that leaves room for the shapes; in the least text where none does. No
 * larger than 1 to `from`. What fits at no scale is drawn at the smallest.
 */
export function fitSchematic(draw: DrawSchematic, paper: SchematicPaper, from = 1): FittedSchematic {
  const bare = atText(draw, paper, NO_TEXT_MM, from)?.scale ?? 1;
  for (let textMm = paper.textMm; textMm > paper.leastMm; textMm *= SMALLER) {
    const found = atText(draw, paper, textMm, from);
    if (found && found.scale <= bare * SMALLER_FOR_WORDS) return found;
  }
  const last = SCALES.at(-1)!;
  return atText(draw, paper, paper.leastMm, from) ?? { placed: placeSchematic(draw(roomAt(paper, paper.leastMm, last)), last, { ...paper, textMm: paper.leastMm }), scale: last, textMm: paper.leastMm };
}

/** The scale at which each of several drawings fits the paper. */
export function largestScale(draws: readonly DrawSchematic[], paper: SchematicPaper): number {
  return Math.max(1, ...draws.map((draw) => fitSchematic(draw, paper).scale));
}

/** The largest scale that fits; room between shapes is measured on paper, so it grows with the scale. */
function atText(draw: DrawSchematic, paper: SchematicPaper, textMm: number, from: number): FittedSchematic | null {
  for (const scale of SCALES) {
    if (scale < from) continue;
    const placed = placeSchematic(draw(roomAt(paper, textMm, scale)), scale, { textMm, lengths: paper.lengths });
    const { widthMm, heightMm } = paperOf(placed, textMm);
    if (widthMm <= paper.widthMm && heightMm <= paper.heightMm) return { placed, scale, textMm };
  }
  return null;
}

function roomAt({ widthMm, lengths }: SchematicPaper, textMm: number, scale: number): Room {
  return { gapMm: dimensionRoom(textMm) * scale, textMm: textMm * scale, lineMm: (widthMm - 4) * scale, lengths };
}
