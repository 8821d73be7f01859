import { FIRST_YARN_INK, GHOST_FILL } from './blockPaths.ts';
import type { BlockPrints } from './blockPrints.ts';
import { GHOST_INK, type YarnInks } from './inks.ts';
import type { KeyedPath } from './keyedPaths.ts';

/** The elements of the blocks in the document: one group a block for fills and one for symbols, one path a yarn or ink. */
export interface BlockLayer {
  /** The blocks in the document, each with its note. */
  readonly blocks: ReadonlyMap<number, string>;
  /** Puts a block's paths in, or changes those that differ. `note` is kept with the block. */
  put(block: number, fills: readonly KeyedPath[], symbols: readonly KeyedPath[], prints: BlockPrints | null, note: string): void;
  drop(block: number): void;
  clear(): void;
  /** New colours of cells and symbols. */
  paint(inks: YarnInks): void;
}

const SVG = 'http://www.w3.org/2000/svg';

interface Drawn {
  readonly group: SVGGElement;
  readonly paths: Map<number, { readonly path: SVGPathElement; d: string }>;
}

/** Keeps blocks as children of three groups of one SVG: all fills below all print marks below all symbols. */
export function blockLayer(fillsGroup: SVGGElement, printsGroup: SVGGElement, symbolsGroup: SVGGElement): BlockLayer {
  const fillsOf = new Map<number, Drawn>();
  const symbolsOf = new Map<number, Drawn>();
  const printsOf = new Map<number, SVGGElement>();
  const shown = new Map<number, string>();
  let inks: YarnInks = { cells: [], colours: [], table: new Uint8Array(0) };

  function paintFill(path: SVGPathElement, key: number): void {
    if (key === GHOST_FILL) path.setAttribute('class', 'ghost-fill');
    else path.setAttribute('fill', inks.cells[key] ?? '#808080');
  }
  function paintSymbol(path: SVGPathElement, key: number): void {
    if (key < FIRST_YARN_INK) path.setAttribute('class', key === GHOST_INK ? 'ghost-ink' : `ink-${key}`);
    else path.setAttribute('fill', inks.colours[key - FIRST_YARN_INK] ?? '#000000');
  }
  function put(of: Map<number, Drawn>, parent: SVGGElement, block: number, parts: readonly KeyedPath[], paint: (path: SVGPathElement, key: number) => void): void {
    let drawn = of.get(block);
    if (!drawn) {
      if (parts.length === 0) return;
      drawn = { group: document.createElementNS(SVG, 'g'), paths: new Map() };
      of.set(block, drawn);
    }
    const { group, paths } = drawn;
    if (paths.size > 0) {
      const keys = new Set(parts.map((part) => part.key));
      for (const [key, { path }] of paths) {
        if (keys.has(key)) continue;
        path.remove();
        paths.delete(key);
      }
    }
    let before: ChildNode | null = group.firstChild;
    for (const { key, d } of parts) {
      let entry = paths.get(key);
      if (!entry) {
        entry = { path: document.createElementNS(SVG, 'path'), d: '' };
        paint(entry.path, key);
        paths.set(key, entry);
        group.insertBefore(entry.path, before);
      } else before = entry.path.nextSibling;
      if (entry.d !== d) {
        entry.path.setAttribute('d', d);
        entry.d = d;
      }
    }
    if (!group.parentNode) parent.append(group);
  }
  function print(block: number, prints: BlockPrints | null): void {
    const before = printsOf.get(block);
    if (!prints) {
      before?.remove();
      printsOf.delete(block);
      return;
    }
    const group = before ?? printsGroup.appendChild(document.createElementNS(SVG, 'g'));
    printsOf.set(block, group);
    const paths = (['filled', 'stroked'] as const).map((kind) => {
      const path = document.createElementNS(SVG, 'path');
      path.setAttribute('class', `print-${kind}`);
      path.setAttribute('d', prints[kind]);
      return path;
    });
    group.replaceChildren(...paths);
  }
  function drop(of: Map<number, Drawn>, block: number): void {
    of.get(block)?.group.remove();
    of.delete(block);
  }

  return {
    blocks: shown,
    put(block, fills, symbols, prints, note) {
      put(fillsOf, fillsGroup, block, fills, paintFill);
      put(symbolsOf, symbolsGroup, block, symbols, paintSymbol);
      print(block, prints);
      shown.set(block, note);
    },
    drop(block) {
      drop(fillsOf, block);
      drop(symbolsOf, block);
      print(block, null);
      shown.delete(block);
    },
    clear() {
      fillsGroup.replaceChildren();
      symbolsGroup.replaceChildren();
      printsGroup.replaceChildren();
      printsOf.clear();
      fillsOf.clear();
      symbolsOf.clear();
      shown.clear();
    },
    paint(next) {
      inks = next;
      for (const { paths } of fillsOf.values()) for (const [key, { path }] of paths) paintFill(path, key);
      for (const { paths } of symbolsOf.values()) for (const [key, { path }] of paths) paintSymbol(path, key);
    },
  };
}
