import { svgHead, type SvgWords } from '../svgHead.ts';
import { attributes, escapeXml, num, pathData } from '../svgText.ts';
import type { Lengths } from './lengthWords.ts';
import type { Dimension, Schematic } from './schematic.ts';
import { BESIDE, dimensionWords, standsLevel, wordsWidth } from './textRoom.ts';

/** How a schematic is written. */
export interface SchematicOptions extends SvgWords {
  /** Size of text on paper, mm; 6 pt is the least. */
  readonly textMm: number;
  /** What lengths are said in. */
  readonly lengths: Lengths;
  /** The line that says the scale. Default true; false for a screen, whose size is not known. */
  readonly scaleLine?: boolean;
}

/** A drawing on paper: its elements and the box that they fill, mm. */
export interface PlacedSchematic {
  readonly shapes: readonly string[];
  readonly dimensions: readonly string[];
  readonly box: Box;
}

const OUTLINE_MM = 0.5;
const THIN_MM = 0.2;
const TICK_MM = 1;
/** White around the drawing. */
const MARGIN_MM = 2;
const INK = '#1c1c1c';
const SOFT = '#5a5a5a';

/** Room beside the shapes that dimension lines and their texts take on paper, mm. */
export function dimensionRoom(textMm: number): number {
  return textMm * 3 + 3;
}

/** Paper that a placed schematic takes with its scale line, mm. */
export function paperOf({ box }: PlacedSchematic, textMm: number): { readonly widthMm: number; readonly heightMm: number } {
  return { widthMm: Math.max(box.x1 - box.x0, wordsWidth('Scale 1 : 100', textMm)) + 2 * MARGIN_MM, heightMm: box.y1 - box.y0 + 2 * MARGIN_MM + textMm * 2.2 };
}

/** A schematic at a scale of 1 to `scale`: outlines, names inside or above them, dimension lines with their words. */
export function placeSchematic(schematic: Schematic, scale: number, { textMm, lengths }: Pick<SchematicOptions, 'textMm' | 'lengths'>): PlacedSchematic {
  const box = emptyBox();
  const shapes = schematic.shapes.map((shape) => {
    const scaled = (points: readonly number[]) => points.map((value) => value / scale);
    for (const points of shape.outlines) grow(box, scaled(points));
    const outlines = shape.outlines.map((points) => pathData(scaled(points), true)).join('');
    const inner = shape.inner.map((points) => pathData(scaled(points), false)).join('');
    const ys = shape.outlines.flat().filter((_, i) => i % 2 === 1);
    const [top, bottom] = [Math.min(...ys) / scale, Math.max(...ys) / scale];
    // A shape too small for its name has it above, beyond the dimension line that may stand there.
    const fits = bottom - top >= textMm * 1.6 && widthAt(scaled(shape.outlines[0] ?? []), shape.labelY / scale) >= wordsWidth(shape.label, textMm) + textMm;
    const hasAbove = schematic.dimensions.some((one) => one.side === 'above' && Math.abs(one.fromY / scale - top) < 0.01 && one.fromX / scale <= shape.labelX / scale && one.toX / scale >= shape.labelX / scale);
    const labelY = fits ? shape.labelY / scale + textMm / 3 : top - textMm * (hasAbove ? BESIDE.line + BESIDE.text : 0.6);
    const label = shape.label === '' ? '' : text({ x: shape.labelX / scale, y: labelY, words: shape.label, sizeMm: textMm, anchor: 'middle', turned: false }, box);
    return `<g id="${escapeXml(shape.id)}"><path${attributes({ fill: 'none', stroke: INK, 'stroke-width': OUTLINE_MM, 'stroke-linejoin': 'round', d: outlines })}/>`
      + (inner === '' ? '' : `<path${attributes({ fill: 'none', stroke: SOFT, 'stroke-width': THIN_MM, 'stroke-dasharray': '2 1', d: inner })}/>`) + `${label}</g>`;
  });
  const dimensions = schematic.dimensions.map((one) => dimension(one, scale, textMm, dimensionWords(one, lengths), box));
  return { shapes, dimensions, box: box.x0 > box.x1 ? { x0: 0, y0: 0, x1: 1, y1: 1 } : box };
}

/**
 * A placed schematic as one SVG file: outlines to scale, dimension lines in cm, inches or both, a group for each shape (its own id) and
 * one for all dimensions. Millimetres as user units, self-contained; the same input gives the same bytes.
 */
export function writeSchematic(placed: PlacedSchematic, scale: number, options: SchematicOptions): string {
  const { textMm } = options;
  const { box } = placed;
  const paper = paperOf(placed, textMm);
  const view = { x: (box.x0 + box.x1 - paper.widthMm) / 2, y: box.y0 - MARGIN_MM, width: paper.widthMm, height: paper.heightMm };
  const foot = { x: view.x + MARGIN_MM, y: view.y + view.height - MARGIN_MM - textMm * 0.3, words: `Scale 1 : ${num(scale)}`, sizeMm: textMm, anchor: 'start', turned: false } as const;
  return `${svgHead(view, options)}
<rect id="paper" x="${num(view.x)}" y="${num(view.y)}" width="${num(view.width)}" height="${num(view.height)}" fill="#ffffff"/>
<g id="shapes"${attributes({ 'font-family': FONTS, fill: INK })}>${placed.shapes.join('\n')}</g>
<g id="dimensions"${attributes({ 'font-family': FONTS, fill: INK })}>${placed.dimensions.join('\n')}</g>
${options.scaleLine === false ? '' : `<g id="scale"${attributes({ 'font-family': FONTS, fill: SOFT })}>${text(foot, emptyBox())}</g>
`}</svg>
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

interface Box {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

function emptyBox(): Box {
  return { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
}

function grow(box: Box, points: readonly number[]): void {
  for (let i = 0; i + 1 < points.length; i += 2) {
    [box.x0, box.x1] = [Math.min(box.x0, points[i]!), Math.max(box.x1, points[i]!)];
    [box.y0, box.y1] = [Math.min(box.y0, points[i + 1]!), Math.max(box.y1, points[i + 1]!)];
  }
}

/** The line beside the points with ticks at its ends, and its words along it, or level beside it where it is shorter than they are. */
function dimension(one: Dimension, scale: number, textMm: number, words: string, box: Box): string {
  const away = TICK_MM * 2 + textMm * 0.3 + one.tier * (textMm * 1.6);
  const upright = one.side === 'left' || one.side === 'right';
  const out = one.side === 'left' || one.side === 'above' ? -away : away;
  const [x1, y1, x2, y2] = [one.fromX / scale, one.fromY / scale, one.toX / scale, one.toY / scale];
  const [ax, ay, bx, by] = upright ? [x1 + out, y1, x2 + out, y2] : [x1, y1 + out, x2, y2 + out];
  const ticks = upright
    ? [[ax - TICK_MM, ay, ax + TICK_MM, ay], [bx - TICK_MM, by, bx + TICK_MM, by]]
    : [[ax, ay - TICK_MM, ax, ay + TICK_MM], [bx, by - TICK_MM, bx, by + TICK_MM]];
  const drawn = [[ax, ay, bx, by], ...ticks];
  for (const points of drawn) grow(box, points);
  const [tx, ty] = [(ax + bx) / 2, (ay + by) / 2];
  // Words longer than their line stand clear of the ticks at its ends.
  const beyond = textMm * 0.4 + (!upright && standsLevel(Math.abs(bx - ax), words, textMm) ? TICK_MM : 0);
  const level = upright && standsLevel(Math.abs(by - ay), words, textMm);
  const right = one.side === 'right';
  const set = { words, sizeMm: textMm, turned: upright && !level };
  const label = level ? text({ ...set, x: right ? tx + beyond + TICK_MM : tx - beyond - TICK_MM, y: ty + textMm / 3, anchor: right ? 'start' : 'end' }, box)
    : upright ? text({ ...set, x: right ? tx + beyond + textMm * 0.8 : tx - beyond, y: ty, anchor: 'middle' }, box)
    : text({ ...set, x: tx, y: one.side === 'above' ? ty - beyond : ty + beyond + textMm * 0.8, anchor: 'middle' }, box);
  return `<g><path${attributes({ fill: 'none', stroke: SOFT, 'stroke-width': THIN_MM, d: drawn.map((points) => pathData(points, false)).join('') })}/>${label}</g>`;
}

interface SetWords {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly sizeMm: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Read from below to above. */
  readonly turned: boolean;
}

/** Words as an element; the box grows by the room that they take. */
function text({ x, y, words, sizeMm, anchor, turned }: SetWords, box: Box): string {
  const long = wordsWidth(words, sizeMm);
  const from = anchor === 'start' ? 0 : anchor === 'end' ? -long : -long / 2;
  grow(box, turned ? [x - sizeMm * 0.8, y - from - long, x + sizeMm * 0.25, y - from] : [x + from, y - sizeMm * 0.8, x + from + long, y + sizeMm * 0.25]);
  return `<text${attributes({ x, y, 'font-size': sizeMm, 'text-anchor': anchor, transform: turned ? `rotate(-90 ${num(x)} ${num(y)})` : null })}>${escapeXml(words)}</text>`;
}
