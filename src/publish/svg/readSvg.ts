import { SaxesParser } from 'saxes';

/** An element of a sheet: names as written, texts and elements in order. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (SvgElement | string)[];
}

/** A sheet that can't be put on paper; the message names the element, attribute or value, and the sheet where it is known. */
export class SheetProblem extends Error {}

interface Open { readonly name: string; readonly attributes: Record<string, string>; readonly children: (SvgElement | string)[] }

/** Reads the text of a sheet. Throws a SheetProblem where it is not well-formed XML, has a document type, or is no SVG. */
export function readSvg(text: string): SvgElement {
  const stack: Open[] = [];
  let root: SvgElement | null = null;
  const parser = new SaxesParser();
  const add = (words: string): void => void stack.at(-1)?.children.push(words);
  parser.on('error', (error) => { throw new SheetProblem(`not well-formed XML: ${error.message}`); });
  parser.on('doctype', () => { throw new SheetProblem('a document type was found; none is expected'); });
  parser.on('processinginstruction', ({ target }) => { throw new SheetProblem(`a processing instruction “${target}” was found; none is expected`); });
  parser.on('text', add);
  parser.on('cdata', add);
  parser.on('opentag', ({ name, attributes }) => {
    const element: Open = { name, attributes: { ...attributes }, children: [] };
    stack.at(-1)?.children.push(element);
    root ??= element;
    stack.push(element);
  });
  parser.on('closetag', () => void stack.pop());
  parser.write(text).close();
  const found = root as SvgElement | null;
  if (found?.name !== 'svg') throw new SheetProblem(`an svg element was expected as the root, ${found ? `“${found.name}”` : 'nothing'} was found`);
  return found;
}

/** The elements among an element's children. */
export function elementsIn(element: SvgElement): SvgElement[] {
  return element.children.filter((child): child is SvgElement => typeof child !== 'string');
}

/** All text inside an element, spaces as written. */
export function textIn(element: SvgElement): string {
  return element.children.map((child) => (typeof child === 'string' ? child : textIn(child))).join('');
}
