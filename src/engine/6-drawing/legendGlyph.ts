import { stitchRow } from '../craft/stitches.ts';
import type { Glyph } from './drawing.ts';
import { addGlyph, newGlyphTable } from './glyph.ts';
import { drawSymbol } from './symbols/drawSymbol.ts';
import { slashes } from './symbols/symbolCall.ts';
import type { SymbolCall } from './symbols/symbolCall.ts';
import { symbolName } from './symbols/symbolName.ts';
import type { SymbolSet } from './symbols/symbolSet.ts';

/** Stands beside others on one base, or holds to an open stitch. */
export type LegendPose = 'plain' | 'shared' | 'attaching';

/** The symbol as a legend shows it: upright, at its own height, bases one stitch apart, whatever the chart makes of it. */
export function legendGlyph(call: SymbolCall, pose: LegendPose, w: number, h: number, set: SymbolSet): Glyph {
  const length = (call.turning && call.kind === 'ch' ? 0.44 : stitchRow(call.legKind ?? call.kind).height) * h;
  const feet = Array.from({ length: call.together }, (_, k) => [(k - (call.together - 1) / 2) * w, length] as const);
  const frame = {
    w, h, length, feet: pose === 'attaching' ? [[0.35 * w, length] as const] : feet, legs: call.legs, slashes: slashes(call.kind, call.legKind),
    shared: pose !== 'plain', inSpace: false, standing: call.turning, across: w, set,
  };
  const table = newGlyphTable(set);
  addGlyph(table, symbolName(call, 'us'), drawSymbol(call, frame));
  return table.glyphs[0]!;
}
