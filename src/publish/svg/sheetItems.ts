import { moved, readTransform, UNMOVED, within, type Matrix } from './matrix.ts';
import { FIRST_PEN, length, penFor, type Pen } from './pen.ts';
import { elementsIn, readSvg, SheetProblem, textIn, type SvgElement } from './readSvg.ts';
import { SHAPES, shapePath } from './shapePath.ts';
import { TEXT_OWN, textChunks, type Chunk } from './textChunks.ts';

/** A shape that cuts what is drawn to its inside. */
export interface Clip {
  readonly d: string;
  readonly matrix: Matrix;
  readonly evenOdd: boolean;
}

/** What every item has. `figure`: index of the figure it belongs to, or null; `aside`: it belongs to the page and not to what is read on it. */
interface Placed {
  readonly matrix: Matrix;
  readonly clips: readonly Clip[];
  readonly figure: number | null;
  readonly aside: boolean;
}

/** One thing to draw, everything worked out: no names to look up, nothing inherited. */
export type SheetItem = Placed & ({ readonly kind: 'path'; readonly d: string; readonly pen: Pen } | { readonly kind: 'text'; readonly chunks: readonly Chunk[]; readonly cell: SheetCell | null });

/** The cell of a table that a text stands in, as its `data-cell` says: row, column and what it is the head of. */
export interface SheetCell {
  readonly row: number;
  readonly column: number;
  readonly headOf: 'column' | 'row' | 'none';
}

/** A sheet flattened: the items in the order they are painted, and the figures with their words. Millimetres, y down. */
export interface SheetItems {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  readonly desc: string;
  /** What each figure shows, in words. */
  readonly figures: readonly string[];
  readonly items: readonly SheetItem[];
  /** Whether it is a page of print, with text to read, and not one drawing. */
  readonly isPage: boolean;
}

/** More than this many elements within one another, or uses of uses, is no drawing of ours. */
const DEEPEST = 60;
const MOST_ITEMS = 400_000;

/** What draws nothing where it stands. */
const SILENT = new Set(['title', 'desc', 'metadata', 'defs', 'clipPath', 'symbol']);
const BOX_OWN = new Set(['x', 'y', 'width', 'height', 'viewBox', 'preserveAspectRatio', 'overflow']);
/** Groups that stand on every page and are not read: ids as the writer of pages gives them. */
const ASIDE = new Set(['running-head', 'page-number', 'paper']);
const GROUP_OWN = new Set(['transform', 'clip-path']);
const USE_OWN = new Set(['transform', 'clip-path', 'x', 'y', 'width', 'height', 'href', 'xlink:href']);

interface Around extends Placed {
  readonly pen: Pen;
  readonly depth: number;
}

/**
 * Reads a sheet's SVG and flattens it. A sheet is a document in mm whose user unit is one millimetre times viewBox. Elements,
 * attributes or values that are not known are a SheetProblem that names them: nothing is left out in silence.
 */
export function sheetItems(svg: string): SheetItems {
  const root = readSvg(svg);
  const ids = new Map<string, SvgElement>();
  collectIds(root, ids);
  const items: SheetItem[] = [];
  const figures: string[] = [];
  const size = (name: 'width' | 'height'): number => length((root.attributes[name] ?? '').replace(/mm$/, ''));
  const [widthMm, heightMm] = [size('width'), size('height')];
  const pen = penFor('svg', root.attributes, FIRST_PEN, BOX_OWN);
  const start: Around = { matrix: viewMatrix(root, 0, 0, widthMm, heightMm), pen, clips: [], figure: null, aside: false, depth: 0 };
  for (const child of elementsIn(root)) draw(child, start);
  return { widthMm, heightMm, title: wordsOf(root, 'title'), desc: wordsOf(root, 'desc'), figures, items, isPage: ids.has('page') };

  function draw(element: SvgElement, around: Around): void {
    const { name, attributes } = element;
    if (SILENT.has(name)) return;
    if (around.depth > DEEPEST) throw new SheetProblem(`elements stand more than ${DEEPEST} deep within one another`);
    if (items.length > MOST_ITEMS) throw new SheetProblem(`more than ${MOST_ITEMS} things to draw were found`);
    if (name === 'g' || name === 'svg') return group(element, around);
    if (name === 'use') return use(element, around);
    if (name === 'text') {
      const here = inside(element, around, TEXT_OWN);
      if (!here) return;
      const chunks = textChunks(element, here.pen);
      if (chunks.length > 0) items.push({ kind: 'text', chunks, cell: cellOf(attributes['data-cell']), matrix: here.matrix, clips: here.clips, figure: here.figure, aside: here.aside });
      return;
    }
    if (Object.hasOwn(SHAPES, name)) {
      const here = inside(element, around, SHAPES[name]!);
      if (!here || here.pen.hidden) return;
      const d = shapePath(name, attributes);
      if (d !== '') items.push({ kind: 'path', d, pen: here.pen, matrix: here.matrix, clips: here.clips, figure: here.figure, aside: here.aside });
      return;
    }
    throw new SheetProblem(`the element “${name}” is not known to the writer of PDF`);
  }

  function group(element: SvgElement, around: Around): void {
    const { name, attributes } = element;
    const own = name === 'svg' ? new Set([...BOX_OWN, ...GROUP_OWN]) : GROUP_OWN;
    let here = inside(element, around, own);
    if (!here) return;
    if (name === 'svg') here = box(element, here, length(attributes.x ?? '0'), length(attributes.y ?? '0'), attributes.width, attributes.height);
    const says = attributes['aria-label'] ?? (wordsOf(element, 'desc') || wordsOf(element, 'title'));
    if (here.figure === null && says !== '') here = { ...here, figure: figures.push(says) - 1 };
    // A picture that says nothing stands beside words that do.
    else if (attributes.role === 'img' && says === '') here = { ...here, aside: true };
    for (const child of elementsIn(element)) draw(child, here);
  }

  function use(element: SvgElement, around: Around): void {
    const { attributes } = element;
    const here = inside(element, around, USE_OWN);
    if (!here) return;
    const href = attributes.href ?? attributes['xlink:href'] ?? '';
    const named = href.startsWith('#') ? ids.get(href.slice(1)) : undefined;
    if (!named) throw new SheetProblem(`use of “${href}”: there is no such element in this sheet`);
    const placed: Around = { ...here, matrix: within(here.matrix, moved(length(attributes.x ?? '0'), length(attributes.y ?? '0'))) };
    if (named.name !== 'symbol') return draw(named, placed);
    const insideIt = inside(named, placed, new Set([...BOX_OWN, 'refX', 'refY']));
    if (!insideIt) return;
    const boxed = named.attributes.viewBox === undefined ? insideIt : box(named, insideIt, 0, 0, attributes.width ?? named.attributes.width, attributes.height ?? named.attributes.height);
    for (const child of elementsIn(named)) draw(child, boxed);
  }

  /** The state for what is inside an element; null where it is not shown at all. */
  function inside(element: SvgElement, around: Around, own: ReadonlySet<string>): Around | null {
    const { name, attributes } = element;
    if (attributes.display === 'none') return null;
    const known = attributes.display === undefined ? own : new Set([...own, 'display']);
    const made = penFor(name, attributes, around.pen, known);
    const matrix = attributes.transform === undefined ? around.matrix : within(around.matrix, readTransform(attributes.transform));
    const clip = attributes['clip-path'];
    const clips = clip === undefined || clip === 'none' ? around.clips : [...around.clips, clipOf(clip, matrix)];
    return { matrix, pen: made, clips, figure: around.figure, aside: around.aside || ASIDE.has(attributes.id ?? ''), depth: around.depth + 1 };
  }

  function clipOf(value: string, matrix: Matrix): Clip {
    const id = /^url\(["']?#([^"')]+)["']?\)$/.exec(value.trim())?.[1];
    const named = id === undefined ? undefined : ids.get(id);
    if (named?.name !== 'clipPath') throw new SheetProblem(`clip-path="${value}": there is no such clipPath in this sheet`);
    const shapes = elementsIn(named);
    const parts = shapes.map((shape) => {
      if (!Object.hasOwn(SHAPES, shape.name) || shape.attributes.transform !== undefined) throw new SheetProblem(`a clipPath of plain shapes was expected, “${shape.name}” was found`);
      return shapePath(shape.name, shape.attributes);
    });
    const evenOdd = shapes.some((shape) => shape.attributes['clip-rule'] === 'evenodd');
    return { d: parts.join(''), matrix: within(matrix, readTransform(named.attributes.transform ?? '')), evenOdd };
  }
}

/** A nested viewport: placed, scaled to its box and cut to it. */
function box(element: SvgElement, around: Around, x: number, y: number, width: string | undefined, height: string | undefined): Around {
  const view = viewBoxOf(element);
  const [w, h] = [width === undefined ? view?.[2] : length(width), height === undefined ? view?.[3] : length(height)];
  if (w === undefined || h === undefined) throw new SheetProblem(`${element.name}: width and height were expected inside a sheet`);
  const clip: Clip = { d: shapePath('rect', { x: String(x), y: String(y), width: String(w), height: String(h) }), matrix: around.matrix, evenOdd: false };
  const clips = element.attributes.overflow === 'visible' ? around.clips : [...around.clips, clip];
  return { ...around, matrix: within(around.matrix, viewMatrix(element, x, y, w, h)), clips };
}

function cellOf(value: string | undefined): SheetCell | null {
  if (value === undefined) return null;
  const [, row, column, headOf] = /^(\d{1,6}) (\d{1,6}) (column|row|none)$/.exec(value) ?? [];
  if (headOf === undefined) throw new SheetProblem(`data-cell="${value}": a row, a column and “column”, “row” or “none” were expected`);
  return { row: Number(row), column: Number(column), headOf: headOf as SheetCell['headOf'] };
}

function viewMatrix(element: SvgElement, x: number, y: number, width: number, height: number): Matrix {
  const view = viewBoxOf(element);
  if (!view) return x === 0 && y === 0 ? UNMOVED : moved(x, y);
  const [left, top, w, h] = view;
  const aspect = element.attributes.preserveAspectRatio ?? 'xMidYMid';
  if (!/^(none|xMidYMid( meet)?)$/.test(aspect)) throw new SheetProblem(`preserveAspectRatio="${aspect}": none or xMidYMid was expected`);
  const [sx, sy] = [width / w, height / h];
  const s = Math.min(sx, sy);
  const [kx, ky] = aspect === 'none' ? [sx, sy] : [s, s];
  return [kx, 0, 0, ky, x + (width - w * kx) / 2 - left * kx, y + (height - h * ky) / 2 - top * ky];
}

function viewBoxOf({ attributes, name }: SvgElement): [number, number, number, number] | null {
  if (attributes.viewBox === undefined) return null;
  const numbers = attributes.viewBox.trim().split(/[\s,]+/).map(length);
  if (numbers.length !== 4 || !(numbers[2]! > 0) || !(numbers[3]! > 0)) throw new SheetProblem(`viewBox="${attributes.viewBox}" of ${name}: four numbers were expected, the last two above 0`);
  return numbers as [number, number, number, number];
}

function wordsOf(element: SvgElement, name: 'title' | 'desc'): string {
  const found = elementsIn(element).find((child) => child.name === name);
  return found ? textIn(found).replace(/\s+/g, ' ').trim() : '';
}

function collectIds(element: SvgElement, ids: Map<string, SvgElement>): void {
  const { id } = element.attributes;
  if (id !== undefined && !ids.has(id)) ids.set(id, element);
  for (const child of elementsIn(element)) collectIds(child, ids);
}
