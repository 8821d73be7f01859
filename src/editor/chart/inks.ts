import type { PrintMark, Yarn } from '../../engine/1-pattern/pattern.ts';
import { cellColour } from '../../engine/6-drawing/svgCells.ts';
import { inkOn } from '../../engine/6-drawing/inkOn.ts';
import { INK_NAMES, type Look } from '../../engine/6-drawing/look.ts';

/** Ink codes of `DrawnStitches.ink`. */
export const INK_CODES = INK_NAMES.length;

/** Ink of stitches that reach for a stitch elsewhere. */
export const REACHING_INK = INK_NAMES.indexOf('attaching');

/** Ink class of ghosts, after the ink codes. */
export const GHOST_INK = INK_CODES;

/** The colours of cells, and of symbols on them. */
export interface YarnInks {
  /** Colour of each yarn's cells: the yarn's own, or in black and white its tone. */
  readonly cells: readonly string[];
  /** Distinct colours of symbols. */
  readonly colours: readonly string[];
  /** Index into `colours` for yarn × INK_CODES + ink code. */
  readonly table: Uint8Array;
}

/** Greys for cells too small for their print marks, darker as the mark covers more. Only there is a tone all that tells them apart. */
const TONES = {
  none: '#ffffff', dot: '#dcdcdc', ring: '#c8c8c8', slash: '#b4b4b4', cross: '#9c9c9c', bars: '#848484', wedge: '#666666', solid: '#3a3a3a',
} as const satisfies Record<PrintMark, string>;

/** The same inks with cells in greys, for a chart in black and white seen from afar. */
export function tonedInks(inks: YarnInks, yarns: readonly Yarn[]): YarnInks {
  return { ...inks, cells: yarns.map((yarn) => TONES[yarn.mark]) };
}

/** The colours that the printed chart would have: screen and paper choose by the same rule. */
export function inksOnYarns(look: Look): YarnInks {
  const cells = look.yarns.map((_, yarn) => cellColour(look, yarn));
  const colours: string[] = [];
  const table = new Uint8Array(cells.length * INK_CODES);
  cells.forEach((cell, yarn) => {
    for (let code = 0; code < INK_CODES; code++) {
      const ink = inkOn(look, code, cell);
      let at = colours.indexOf(ink);
      if (at < 0) at = colours.push(ink) - 1;
      table[yarn * INK_CODES + code] = at;
    }
  });
  return { cells, colours, table };
}
