import type { Stroke } from '../../engine/6-drawing/drawing.ts';

/** Path data of one stroke of a glyph, in its own mm. */
export function strokePath(stroke: Stroke): string {
  const at = (x: number, y: number): string => `${x.toFixed(3)} ${y.toFixed(3)}`;
  if (stroke.kind === 'line') {
    const { points } = stroke;
    let d = '';
    for (let i = 0; i + 1 < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${at(points[i]!, points[i + 1]!)}`;
    return d;
  }
  if (stroke.kind === 'curve') {
    const [x0, y0, cx, cy, x1, y1] = stroke.points;
    return `M${at(x0, y0)}Q${at(cx, cy)} ${at(x1, y1)}`;
  }
  const { x, y, rx, ry, turnRad } = stroke;
  const [dx, dy] = [rx * Math.cos(turnRad), rx * Math.sin(turnRad)];
  const arc = `A${rx.toFixed(3)} ${ry.toFixed(3)} ${((turnRad * 180) / Math.PI).toFixed(3)} 1 0 `;
  return `M${at(x - dx, y - dy)}${arc}${at(x + dx, y + dy)}${arc}${at(x - dx, y - dy)}Z`;
}
