import { formatHex, interpolate } from 'culori';
import type { PrintMark } from '../1-pattern/pattern.ts';
import type { Drawing } from './drawing.ts';
import type { Look } from './look.ts';
import { printMark } from './printMark.ts';
import { attributes, pathData } from './svgText.ts';

/** Colour that a yarn's cells have on paper. */
export function cellColour(look: Look, yarn: number): string {
  const { colour, mark } = look.yarns[yarn] ?? FALLBACK;
  if (!look.mono) return colour;
  return mark === 'solid' ? '#3a3a3a' : look.paper;
}

const FALLBACK = { colour: '#d8d2c4', mark: 'none' as PrintMark, letter: '' };

/** How much of a yarn's colour is left in the cells of grey stitches. */
const GHOST_PART = 0.38;

/** The look of grey stitches: yarns as tints of their colours, marks in grey. */
export function ghostLook(look: Look): Look {
  const tint = (colour: string): string => formatHex(interpolate([look.paper, colour], 'rgb')(GHOST_PART));
  return { ...look, yarns: look.yarns.map((yarn) => ({ ...yarn, colour: tint(yarn.colour), mark: yarn.mark === 'solid' ? 'bars' : yarn.mark })), markInk: look.ghostInk };
}

/** The filled cells of some items of the drawing: a path a yarn, and in black and white its marks. */
export function svgCells(drawing: Drawing, items: readonly number[], look: Look, yarnOf: Uint8Array): string {
  const { stitches } = drawing;
  const byYarn = new Map<number, number[]>();
  for (const item of items) {
    if (!stitches.filled[item]) continue;
    const yarn = yarnOf[stitches.stitch[item]!] ?? 0;
    const list = byYarn.get(yarn);
    if (list) list.push(item);
    else byYarn.set(yarn, [item]);
  }
  return [...byYarn].sort(([a], [b]) => a - b).map(([yarn, list]) => yarnPaths(drawing, list, look, yarn)).join('');
}

function yarnPaths(drawing: Drawing, items: readonly number[], look: Look, yarn: number): string {
  const { letter, mark } = look.yarns[yarn] ?? FALLBACK;
  const colour = cellColour(look, yarn);
  const runs = mergeRuns(drawing, items).map((points) => pathData(points, true)).join('');
  // The stroke in the cell's own colour closes the hairlines that renderers leave between adjoining fills.
  let text = `<path${attributes({ class: `yarn-${letter}`, fill: colour, stroke: colour, 'stroke-width': 0.2, 'stroke-linejoin': 'round', d: runs })}/>`;
  if (look.mono && mark !== 'none' && mark !== 'solid') {
    let filled = '';
    let stroked = '';
    for (const item of items) {
      const path = printMark(mark, Array.from(drawing.stitches.corners.subarray(item * 8, item * 8 + 8)), drawing.stitches.glyph[item]! >= 0 ? 'corner' : 'whole');
      filled += path.filled;
      stroked += path.stroked;
    }
    if (filled) text += `<path${attributes({ class: `mark-${letter}`, fill: look.markInk, d: filled })}/>`;
    if (stroked) text += `<path${attributes({ class: `mark-${letter}`, fill: 'none', stroke: look.markInk, 'stroke-width': look.lineMm, d: stroked })}/>`;
  }
  return text;
}

/** Outlines of cells; neighbours whose common edge is the same and whose long edges run on straight become one. */
function mergeRuns({ stitches }: Drawing, items: readonly number[]): number[][] {
  const corners = (item: number): number[] => Array.from(stitches.corners.subarray(item * 8, item * 8 + 8));
  const cells = items.map(corners).sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
  const runs: number[][] = [];
  for (const cell of cells) {
    const last = runs.at(-1);
    if (last && last[2] === cell[0] && last[3] === cell[1] && last[4] === cell[6] && last[5] === cell[7] && straightOn(last, cell)) {
      last.splice(2, 4, cell[2]!, cell[3]!, cell[4]!, cell[5]!);
    } else runs.push(cell);
  }
  return runs;
}

function straightOn(a: readonly number[], b: readonly number[]): boolean {
  return a[1] === a[3] && b[1] === b[3] && a[5] === a[7] && b[5] === b[7];
}
