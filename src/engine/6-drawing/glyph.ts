import type { Glyph, Stroke } from './drawing.ts';
import type { SymbolSet } from './symbols/symbolSet.ts';

/** Collects glyphs, each geometry once. */
export interface GlyphTable {
  readonly glyphs: Glyph[];
  readonly index: Map<string, number>;
  /** Glyphs of upright stitches with one foot straight below, by what they are and their length: most stitches of most charts. */
  readonly upright: Map<number, number>;
  /** Glyphs of stitches with one foot, by what they are and how they stand. */
  readonly posed: Map<number, Map<number, number>>;
  readonly set: SymbolSet;
}

/** An empty table for symbols of one set. */
export function newGlyphTable(set: SymbolSet): GlyphTable {
  return { glyphs: [], index: new Map(), upright: new Map(), posed: new Map(), set };
}

/** Index of the glyph of this name and these strokes, added if it is new. Its id depends on its name and geometry (to 0.001 mm) only. */
export function addGlyph(table: GlyphTable, name: string, strokes: readonly Stroke[]): number {
  const key = `${name} ${strokes.map(strokeKey).join(' ')}`;
  const known = table.index.get(key);
  if (known !== undefined) return known;
  const index = table.glyphs.push({ id: freeId(table, name, key), name, strokes }) - 1;
  table.index.set(key, index);
  return index;
}

function strokeKey(stroke: Stroke): string {
  const numbers = stroke.kind === 'oval' ? [stroke.x, stroke.y, stroke.rx, stroke.ry, stroke.turnRad, stroke.filled ? 1 : 0] : stroke.points;
  return stroke.kind[0]! + numbers.map((value) => Math.round(value * 1000)).join(',');
}

function freeId(table: GlyphTable, name: string, key: string): string {
  const words = name.replace(/[^A-Za-z0-9]+/g, '-');
  const base = `st-${words}-${fnv1a(key).toString(16).padStart(8, '0')}`;
  let id = base;
  for (let n = 2; table.glyphs.some((glyph) => glyph.id === id); n++) id = `${base}-${n}`;
  return id;
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo 1991), over UTF-16 units. */
function fnv1a(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
