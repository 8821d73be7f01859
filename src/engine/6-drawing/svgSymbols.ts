import type { Drawing, Glyph } from './drawing.ts';
import { inkOn } from './inkOn.ts';
import type { Look } from './look.ts';
import { cellColour } from './svgCells.ts';
import { haloId } from './svgGlyph.ts';
import { attributes, num } from './svgText.ts';

/** Width of the halo beside a line, in line widths. */
const HALO = 1.4;
/** Ink of what reaches for a stitch elsewhere. */
const REACHING = 2;

/** Whether a symbol crosses cells of any yarn and has to be seen on all: it stands on a halo, in its own ink. */
function stands({ stitches }: Drawing, item: number, look: Look): boolean {
  return stitches.ink[item] === REACHING && look.fills === 'yarn' && !stitches.ghost[item];
}

/** Glyphs of a drawing that are drawn on a halo somewhere. */
export function glyphsOnHalo(drawing: Drawing, look: Look): Glyph[] {
  const found = new Set<number>();
  for (let item = 0; item < drawing.stitches.count; item++) if (stands(drawing, item, look)) found.add(drawing.stitches.glyph[item]!);
  return [...found].sort((a, b) => a - b).flatMap((glyph) => drawing.glyphs[glyph] ?? []);
}

/** The symbols of some items, grouped by ink; those on a halo last. */
export function svgSymbols(drawing: Drawing, items: readonly number[], look: Look, yarnOf: Uint8Array): string {
  const { stitches, glyphs } = drawing;
  const byInk = new Map<string, string>();
  const inks = new Map<number, string>();
  let halos = '';
  let onHalo = '';
  for (const item of items) {
    const glyph = glyphs[stitches.glyph[item]!];
    if (!glyph) continue;
    const use = (id: string): string => {
      const [x, y, turn] = [stitches.glyphX[item]!, stitches.glyphY[item]!, stitches.glyphTurnRad[item]!];
      const degrees = num((turn * 180) / Math.PI);
      return degrees === '0' ? `<use xlink:href="#${id}" x="${num(x)}" y="${num(y)}"/>` : `<use xlink:href="#${id}" transform="translate(${num(x)} ${num(y)}) rotate(${degrees})"/>`;
    };
    if (stands(drawing, item, look)) {
      halos += use(haloId(glyph));
      onHalo += use(glyph.id);
      continue;
    }
    const ink = stitches.ghost[item] ? look.ghostInk : symbolInk(inks, stitches.ink[item]!, stitches.filled[item] && look.fills === 'yarn' ? (yarnOf[stitches.stitch[item]!] ?? 0) : -1, look);
    byInk.set(ink, (byInk.get(ink) ?? '') + use(glyph.id));
  }
  const plain = [...byInk].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ink, uses]) => `<g${attributes({ stroke: ink, fill: ink })}>${uses}</g>`).join('');
  if (onHalo === '') return plain;
  const ink = look.inks.attaching;
  return `${plain}<g${attributes({ stroke: look.paper, fill: look.paper, 'stroke-width': look.symbolMm * (1 + 2 * HALO) })}>${halos}</g><g${attributes({ stroke: ink, fill: ink })}>${onHalo}</g>`;
}

/** `yarn` -1: on paper. */
function symbolInk(known: Map<number, string>, ink: number, yarn: number, look: Look): string {
  const key = ink * 1000 + yarn;
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = inkOn(look, ink, yarn < 0 ? look.paper : cellColour(look, yarn));
  known.set(key, made);
  return made;
}
