import { length, penFor, type Pen } from './pen.ts';
import { SheetProblem, type SvgElement } from './readSvg.ts';

/** Words that follow one another from a place that was given; the anchor holds for all of them together. */
export interface Chunk {
  readonly x: number;
  readonly y: number;
  readonly runs: readonly TextRun[];
}

/** Words in one face. `dx`, `dy`: moved on from where the run before ended. */
export interface TextRun {
  readonly text: string;
  readonly pen: Pen;
  readonly dx: number;
  readonly dy: number;
}

export const TEXT_OWN: ReadonlySet<string> = new Set(['transform', 'clip-path', 'x', 'y', 'dx', 'dy', 'data-cell']);
const SPAN_OWN: ReadonlySet<string> = new Set(['x', 'y', 'dx', 'dy']);

interface Writing { x: number; y: number; runs: { text: string; pen: Pen; dx: number; dy: number }[] }

/** The words of a text element as chunks, spaces put together as SVG says (xml:space). One x and one y a place; text on paths is not known. */
export function textChunks(element: SvgElement, pen: Pen): Chunk[] {
  const chunks: Writing[] = [];
  let next: { x: number | null; y: number | null; dx: number; dy: number } = { x: 0, y: 0, dx: 0, dy: 0 };
  let spaceBefore = true;
  place(element);
  walk(element, pen);
  const last = chunks.at(-1)?.runs.at(-1);
  if (last && !last.pen.keepSpaces) last.text = last.text.replace(/ $/, '');
  return chunks.map((chunk) => ({ ...chunk, runs: chunk.runs.filter((run) => run.text !== '' && !run.pen.hidden) })).filter((chunk) => chunk.runs.length > 0);

  function walk(parent: SvgElement, here: Pen): void {
    for (const child of parent.children) {
      if (typeof child === 'string') write(child, here);
      else if (child.name === 'tspan') {
        place(child);
        walk(child, penFor('tspan', child.attributes, here, SPAN_OWN));
      } else if (child.name !== 'title' && child.name !== 'desc') throw new SheetProblem(`“${child.name}” inside a text is not known to the writer of PDF`);
    }
  }

  function place({ attributes }: SvgElement): void {
    const one = (name: string): number | null => (attributes[name] === undefined ? null : length(attributes[name]));
    next = { x: one('x') ?? next.x, y: one('y') ?? next.y, dx: next.dx + (one('dx') ?? 0), dy: next.dy + (one('dy') ?? 0) };
  }

  function write(raw: string, here: Pen): void {
    let text = raw.replace(/[\t\r\n]/g, ' ');
    if (!here.keepSpaces) {
      text = text.replace(/ +/g, ' ');
      if (spaceBefore) text = text.replace(/^ /, '');
    }
    if (text === '') return;
    spaceBefore = text.endsWith(' ');
    const before = chunks.at(-1);
    if (next.x !== null || next.y !== null) {
      if (next.x === null) throw new SheetProblem('a tspan with y and without x is not known to the writer of PDF');
      chunks.push({ x: next.x, y: next.y ?? before!.y, runs: [{ text, pen: here, dx: next.dx, dy: next.dy }] });
    } else before!.runs.push({ text, pen: here, dx: next.dx, dy: next.dy });
    next = { x: null, y: null, dx: 0, dy: 0 };
  }
}
