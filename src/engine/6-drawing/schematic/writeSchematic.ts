import { svgHead, type SvgWords } from '../svgHead.ts';
import { attributes, escapeXml, num, pathData } from '../svgText.ts';
import type { Dimension, Schematic } from './schematic.ts';
import { BESIDE, dimensionWords, standsLevel, wordsWidth } from './textRoom.ts';

/** How a schematic is written. */
export interface SchematicOptions extends SvgWords {
  /** Size of text on paper, mm; 6 pt is the least. */
  readonly textMm: number;
  /** Paper that it is to fit on, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Scales that a ruler knows: 1 to so many. */
const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50];
const OUTLINE_MM = 0.5;
const THIN_MM = 0.2;
const TICK_MM = 1;
const INK = '#1c1c1c';
const SOFT = '#5a5a5a';

/** Room beside the shapes that dimension lines and their texts take on paper, mm. */
export function dimensionRoom(textMm: number): number {
  return textMm * 3 + 3;
}

/** The largest scale (1 to n) at which a drawing of so many mm fits the paper with room for its dimensions and scale line. */
export function schematicScale(widthMm: number, heightMm: number, { textMm, widthMm: paperW, heightMm: paperH }: Pick<SchematicOptions, 'textMm' | 'widthMm' | 'heightMm'>): number {
  const room = 2 * dimensionRoom(textMm) + 2 * textMm * 6;
  const fits = (scale: number) => widthMm / scale + room <= paperW && heightMm / scale + 2 * dimensionRoom(textMm) + textMm * 4 <= paperH;
  return SCALES.find(fits) ?? Math.ceil(Math.max(widthMm / Math.max(1, paperW - room), heightMm / Math.max(1, paperH - room)));
}

/**
 * A schematic as one SVG file: outlines to scale, dimension lines in cm and inches, a group for each shape (its own id) and one
 * for all dimensions. Millimetres as user units, self-contained; the same input gives the same bytes.
 */
export function writeSchematic(schematic: Schematic, scale: number, options: SchematicOptions): string {
  const { textMm } = options;
  const room = dimensionRoom(textMm);
  const box = bounds(schematic, scale);
  const side = room + textMm * 6;
  const view = { x: box.x0 - side, y: box.y0 - room, width: box.x1 - box.x0 + 2 * side, height: box.y1 - box.y0 + 2 * room + textMm * 3 };
  const shapes = schematic.shapes.map((shape) => {
    const scaled = (points: readonly number[]) => points.map((value) => value / scale);
    const outlines = shape.outlines.map((points) => pathData(scaled(points), true)).join('');
    const inner = shape.inner.map((points) => pathData(scaled(points), false)).join('');
    const ys = shape.outlines.flat().filter((_, i) => i % 2 === 1);
    const [top, bottom] = [Math.min(...ys) / scale, Math.max(...ys) / scale];
    // A shape too small for its name has it above, beyond the dimension line that may stand there.
    const fits = bottom - top >= textMm * 1.6 && widthAt(scaled(shape.outlines[0] ?? []), shape.labelY / scale) >= wordsWidth(shape.label, textMm) + textMm;
    const hasAbove = schematic.dimensions.some((one) => one.side === 'above' && Math.abs(one.fromY / scale - top) < 0.01 && one.fromX / scale <= shape.labelX / scale && one.toX / scale >= shape.labelX / scale);
    const labelY = fits ? shape.labelY / scale + textMm / 3 : top - textMm * (hasAbove ? BESIDE.line + BESIDE.text : 0.6);
    const label = shape.label === '' ? '' : text(shape.labelX / scale, labelY, shape.label, textMm, 'middle', 0);
    return `<g id="${escapeXml(shape.id)}"><path${attributes({ fill: 'none', stroke: INK, 'stroke-width': OUTLINE_MM, 'stroke-linejoin': 'round', d: outlines })}/>`
      + (inner === '' ? '' : `<path${attributes({ fill: 'none', stroke: SOFT, 'stroke-width': THIN_MM, 'stroke-dasharray': '2 1', d: inner })}/>`) + `${label}</g>`;
  });
  const foot = `Scale 1 : ${num(scale)}`;
  return `${svgHead(view, options)}
<rect id="paper" x="${num(view.x)}" y="${num(view.y)}" width="${num(view.width)}" height="${num(view.height)}" fill="#ffffff"/>
<g id="shapes"${attributes({ 'font-family': FONTS, fill: INK })}>${shapes.join('\n')}</g>
<g id="dimensions"${attributes({ 'font-family': FONTS, fill: INK })}>${schematic.dimensions.map((one) => dimension(one, scale, textMm)).join('\n')}</g>
<g id="scale"${attributes({ 'font-family': FONTS, fill: SOFT })}>${text(box.x0, box.y1 + room + textMm * 1.8, foot, textMm, 'start', 0)}</g>
</svg>
`;
}

const FONTS = '\'Alegreya Sans\', \'Gill Sans\', Verdana, sans-serif';

/** How wide an outline is at a height: between its outermost crossings there. */
function widthAt(points: readonly number[], y: number): number {
  const crossings: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const [x1, y1] = [points[i]!, points[i + 1]!];
    const [x2, y2] = [points[(i + 2) % points.length]!, points[(i + 3) % points.length]!];
    if ((y1 <= y) !== (y2 <= y)) crossings.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
  }
  return crossings.length < 2 ? 0 : Math.max(...crossings) - Math.min(...crossings);
}

function bounds(schematic: Schematic, scale: number): { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number } {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const points of schematic.shapes.flatMap((shape) => shape.outlines)) {
    for (let i = 0; i + 1 < points.length; i += 2) {
      [x0, x1] = [Math.min(x0, points[i]! / scale), Math.max(x1, points[i]! / scale)];
      [y0, y1] = [Math.min(y0, points[i + 1]! / scale), Math.max(y1, points[i + 1]! / scale)];
    }
  }
  return x0 > x1 ? { x0: 0, y0: 0, x1: 1, y1: 1 } : { x0, y0, x1, y1 };
}

/** The line beside the points with ticks at its ends, thin lines from the points to it, and its length along it. */
function dimension(one: Dimension, scale: number, textMm: number): string {
  const away = TICK_MM * 2 + textMm * 0.3 + one.tier * (textMm * 1.6);
  const upright = one.side === 'left' || one.side === 'right';
  const out = one.side === 'left' || one.side === 'above' ? -away : away;
  const [x1, y1, x2, y2] = [one.fromX / scale, one.fromY / scale, one.toX / scale, one.toY / scale];
  const [ax, ay, bx, by] = upright ? [x1 + out, y1, x2 + out, y2] : [x1, y1 + out, x2, y2 + out];
  const ticks = upright
    ? [[ax - TICK_MM, ay, ax + TICK_MM, ay], [bx - TICK_MM, by, bx + TICK_MM, by]]
    : [[ax, ay - TICK_MM, ax, ay + TICK_MM], [bx, by - TICK_MM, bx, by + TICK_MM]];
  const lines = [[ax, ay, bx, by], ...ticks].map((points) => pathData(points, false)).join('');
  const words = dimensionWords(one);
  const [tx, ty] = [(ax + bx) / 2, (ay + by) / 2];
  // Words longer than their line stand clear of the ticks at its ends.
  const beyond = textMm * 0.4 + (!upright && standsLevel(Math.abs(bx - ax), words, textMm) ? TICK_MM : 0);
  const level = upright && standsLevel(Math.abs(by - ay), words, textMm);
  const label = level ? text(one.side === 'right' ? tx + beyond + TICK_MM : tx - beyond - TICK_MM, ty + textMm / 3, words, textMm, one.side === 'right' ? 'start' : 'end', 0)
    : upright ? text(one.side === 'right' ? tx + beyond + textMm * 0.8 : tx - beyond, ty, words, textMm, 'middle', -90)
    : text(tx, one.side === 'above' ? ty - beyond : ty + beyond + textMm * 0.8, words, textMm, 'middle', 0);
  return `<g><path${attributes({ fill: 'none', stroke: SOFT, 'stroke-width': THIN_MM, d: lines })}/>${label}</g>`;
}

function text(x: number, y: number, words: string, sizeMm: number, anchor: 'start' | 'middle' | 'end', turnDeg: number): string {
  const turn = turnDeg === 0 ? null : `rotate(${turnDeg} ${num(x)} ${num(y)})`;
  return `<text${attributes({ x, y, 'font-size': sizeMm, 'text-anchor': anchor, transform: turn })}>${escapeXml(words)}</text>`;
}
