import { inksOnYarns, INK_CODES, type YarnInks } from '../../src/editor/chart/inks.ts';
import { printLook } from '../../src/engine/6-drawing/look.ts';
import type { Drawing, Stroke } from '../../src/engine/6-drawing/drawing.ts';
import type { BenchData } from './variant.ts';

/** The colours that all designs use. */
export function coloursOf(data: BenchData): YarnInks {
  return inksOnYarns(printLook(data.yarns));
}

/** Colour of a stitch's symbol. */
export function inkOf(inks: YarnInks, yarn: number, code: number): string {
  return inks.colours[inks.table[yarn * INK_CODES + code]!]!;
}

/** Path data of a glyph's strokes, mm, for designs that stroke. */
export function strokesPath(strokes: readonly Stroke[]): string {
  return strokes
    .map((stroke) => {
      if (stroke.kind === 'line') return stroke.points.map((n, i) => `${i === 0 ? 'M' : i % 2 === 0 ? 'L' : ' '}${n}`).join('');
      if (stroke.kind === 'curve') {
        const [x0, y0, cx, cy, x1, y1] = stroke.points;
        return `M${x0} ${y0}Q${cx} ${cy} ${x1} ${y1}`;
      }
      const { x, y, rx, ry } = stroke;
      return `M${x - rx} ${y}A${rx} ${ry} 0 1 0 ${x + rx} ${y}A${rx} ${ry} 0 1 0 ${x - rx} ${y}`;
    })
    .join('');
}

/** Outline of one cell, mm. */
export function cellPath({ stitches }: Drawing, item: number): string {
  const c = Array.from(stitches.corners.subarray(item * 8, item * 8 + 8));
  return `M${c[0]} ${c[1]}L${c[2]} ${c[3]}L${c[4]} ${c[5]}L${c[6]} ${c[7]}Z`;
}

/** A stitch as one node's attributes: a group in `defs` for its cell and glyph would have to be the same for all, so both are paths. */
export interface StitchNode {
  readonly stitch: number;
  readonly cell: string;
  readonly symbol: string;
  readonly turn: string;
  readonly fill: string;
  readonly ink: string;
}

/** All stitches as node attributes. */
export function stitchNodes(data: BenchData, inks: YarnInks): StitchNode[] {
  const { stitches, glyphs } = data.drawing;
  const symbols = glyphs.map((glyph) => strokesPath(glyph.strokes));
  return Array.from({ length: stitches.count }, (_, i) => {
    const yarn = data.yarnOf[stitches.stitch[i]!]!;
    return {
      stitch: stitches.stitch[i]!,
      cell: cellPath(data.drawing, i),
      symbol: symbols[stitches.glyph[i]!] ?? '',
      turn: `translate(${stitches.glyphX[i]!} ${stitches.glyphY[i]!}) rotate(${(stitches.glyphTurnRad[i]! * 180) / Math.PI})`,
      fill: inks.cells[yarn]!,
      ink: inkOf(inks, yarn, stitches.ink[i]!),
    };
  });
}

/** Width of symbol lines, mm. */
export const LINE_MM = 0.32;
