import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import type { Detail } from './detail.ts';
import { strokeOutline } from './strokeOutline.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** Appendable path data of a glyph, turned, relative to the point where it stands. */
export type GlyphPen = (glyph: number, turnRad: number) => string;

/** Turns are rounded to half a degree: a symbol 4 mm long is off by 0.02 mm at most, and equal symbols share their text. */
const TURNS = 720;

/** Makes a pen for the glyphs of a drawing at one detail; it remembers what it has drawn. */
export function glyphPen(drawing: Drawing, detail: Detail): GlyphPen {
  const widthMm = detail.lineWidth * Math.min(drawing.cellWidthMm, drawing.cellHeightMm);
  const outlines = drawing.glyphs.map((glyph) => glyph.strokes.flatMap((stroke) => strokeOutline(stroke, widthMm, detail.points)));
  const drawn = new Map<number, string>();
  return (glyph, turnRad) => {
    const turn = ((Math.round((turnRad / (2 * Math.PI)) * TURNS) % TURNS) + TURNS) % TURNS;
    const key = glyph * TURNS + turn;
    let text = drawn.get(key);
    if (text === undefined) {
      text = relativePath(outlines[glyph] ?? [], (turn / TURNS) * 2 * Math.PI);
      drawn.set(key, text);
    }
    return text;
  };
}

/** Path data in whole units from the point the pen stands on; every number is a difference of rounded places, so errors don't add up. */
function relativePath(outlines: readonly (readonly number[])[], turnRad: number): string {
  const cos = Math.cos(turnRad) * UNITS_PER_MM, sin = Math.sin(turnRad) * UNITS_PER_MM;
  let text = '';
  let penX = 0, penY = 0;
  for (const outline of outlines) {
    let startX = 0, startY = 0;
    for (let p = 0; p < outline.length; p += 2) {
      const x = Math.round(outline[p]! * cos - outline[p + 1]! * sin);
      const y = Math.round(outline[p]! * sin + outline[p + 1]! * cos);
      if (p === 0) {
        startX = x;
        startY = y;
        text += `m${x - penX} ${y - penY}l`;
      } else text += `${p > 2 ? ' ' : ''}${x - penX} ${y - penY}`;
      penX = x;
      penY = y;
    }
    text += 'z';
    penX = startX;
    penY = startY;
  }
  return text;
}
