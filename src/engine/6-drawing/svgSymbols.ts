import type { Drawing } from './drawing.ts';
import { inkOn } from './inkOn.ts';
import type { Look } from './look.ts';
import { cellColour } from './svgCells.ts';
import { attributes, num } from './svgText.ts';

/** The symbols of some items, grouped by ink. */
export function svgSymbols({ stitches, glyphs }: Drawing, items: readonly number[], look: Look, yarnOf: Uint8Array): string {
  const byInk = new Map<string, string>();
  const inks = new Map<number, string>();
  for (const item of items) {
    const glyph = glyphs[stitches.glyph[item]!];
    if (!glyph) continue;
    const ink = stitches.ghost[item] ? look.ghostInk : symbolInk(inks, stitches.ink[item]!, stitches.filled[item] && look.fills === 'yarn' ? (yarnOf[stitches.stitch[item]!] ?? 0) : -1, look);
    const [x, y, turn] = [stitches.glyphX[item]!, stitches.glyphY[item]!, stitches.glyphTurnRad[item]!];
    const degrees = num((turn * 180) / Math.PI);
    const use = degrees === '0' ? `<use href="#${glyph.id}" x="${num(x)}" y="${num(y)}"/>` : `<use href="#${glyph.id}" transform="translate(${num(x)} ${num(y)}) rotate(${degrees})"/>`;
    byInk.set(ink, (byInk.get(ink) ?? '') + use);
  }
  return [...byInk].sort(([a], [b]) => (a < b ? -1 : 1)).map(([ink, uses]) => `<g${attributes({ stroke: ink, fill: ink })}>${uses}</g>`).join('');
}

/** `yarn` -1: on paper. */
function symbolInk(known: Map<number, string>, ink: number, yarn: number, look: Look): string {
  const key = ink * 1000 + yarn;
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = inkOn(look, ink, yarn < 0 ? '#ffffff' : cellColour(look, yarn));
  known.set(key, made);
  return made;
}
