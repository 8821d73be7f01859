import type { Glyph, Stroke } from './drawing.ts';
import { attributes, num, pathData } from './svgText.ts';

/** A glyph as a group for `<defs>`. Strokes take stroke and fill from where they are used; open shapes are never filled. */
export function svgGlyph(glyph: Glyph): string {
  return `<g id="${glyph.id}">${merged(glyph.strokes)}${glyph.strokes.filter((stroke) => stroke.kind === 'oval').map(svgOval).join('')}</g>`;
}

/** Id of a glyph's halo. */
export function haloId({ id }: Glyph): string {
  return `${id}-halo`;
}

/** The same strokes with their dots stroked too, to be drawn wider underneath in the colour of the paper. */
export function svgHalo(glyph: Glyph): string {
  return `<g id="${haloId(glyph)}">${merged(glyph.strokes)}${glyph.strokes.map((stroke) => svgOval(stroke).replace(' stroke="none"', '')).join('')}</g>`;
}

function merged(strokes: readonly Stroke[]): string {
  const d = strokes.map((stroke) => {
    if (stroke.kind === 'line') return pathData(stroke.points, false);
    if (stroke.kind === 'oval') return '';
    const [x0, y0, cx, cy, x1, y1] = stroke.points;
    return `M${num(x0)} ${num(y0)}Q${num(cx)} ${num(cy)} ${num(x1)} ${num(y1)}`;
  }).join('');
  return d === '' ? '' : `<path fill="none" d="${d}"/>`;
}

function svgOval(stroke: Stroke): string {
  if (stroke.kind !== 'oval') return '';
  const { x, y, rx, ry, turnRad, filled } = stroke;
  const turn = turnRad === 0 || rx === ry ? null : `rotate(${num((turnRad * 180) / Math.PI)} ${num(x)} ${num(y)})`;
  return `<ellipse${attributes({ cx: x, cy: y, rx, ry, transform: turn })} ${filled ? 'stroke="none"' : 'fill="none"'}/>`;
}
