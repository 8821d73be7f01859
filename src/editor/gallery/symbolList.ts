import { STITCHES, stitchRow } from '../../engine/craft/stitches.ts';
import type { StitchKind } from '../../engine/craft/stitches.ts';
import type { Glyph } from '../../engine/6-drawing/drawing.ts';
import { legendGlyph } from '../../engine/6-drawing/legendGlyph.ts';
import type { LegendPose } from '../../engine/6-drawing/legendGlyph.ts';
import type { SymbolCall } from '../../engine/6-drawing/symbols/symbolCall.ts';
import { symbolFullName, symbolName } from '../../engine/6-drawing/symbols/symbolName.ts';
import type { SymbolSet } from '../../engine/6-drawing/symbols/symbolSet.ts';

/** One line of the table of symbols. */
export interface SymbolEntry {
  readonly key: string;
  readonly call: SymbolCall;
  readonly pose: LegendPose;
  /** What the symbol says beside the stitch's name; '' if nothing. */
  readonly note: string;
}

/** A cell to draw symbols in, mm. */
const CELL = { w: 4, h: 3.6 } as const;

function entry(kind: StitchKind, more: Partial<SymbolCall> = {}, pose: LegendPose = 'plain', note = ''): SymbolEntry {
  const call: SymbolCall = { kind, together: 1, legs: stitchRow(kind).legs, loop: 'both', post: 'none', spike: false, turning: false, ...more };
  return { key: [kind, call.together, call.loop, call.post, call.spike, call.turning, pose].join(' '), call, pose, note };
}

const tall = ['dc', 'tr'] as const satisfies readonly StitchKind[];

/** Every symbol: the whole catalogue, then what can be done with a stitch. */
export const SYMBOLS: readonly SymbolEntry[] = [
  ...STITCHES.map(({ kind }) => entry(kind)),
  entry('ch', { turning: true }),
  ...(['sc', 'hdc', 'dc'] as const).flatMap((kind) => [entry(kind, { together: 2 }), entry(kind, { together: 3 })]),
  ...(['sc', 'dc'] as const).map((kind) => entry(kind, {}, 'shared', 'one of several in one stitch')),
  entry('sc', {}, 'attaching', 'last of its row, into the next open stitch'),
  entry('sc', { spike: true }, 'attaching', 'into a row further down'),
  ...(['sc', 'hdc', 'dc'] as const).flatMap((kind) => [entry(kind, { loop: 'front' }), entry(kind, { loop: 'back' })]),
  ...(['sc', 'hdc', ...tall] as const).flatMap((kind) => [entry(kind, { post: 'front' }), entry(kind, { post: 'back' })]),
];

/** The symbol of an entry in one set. */
export function entryGlyph({ call, pose }: SymbolEntry, set: SymbolSet): Glyph {
  return legendGlyph(call, pose, CELL.w, CELL.h, set);
}

/** Its abbreviation and name in both sets of terms. */
export function entryNames({ call }: SymbolEntry): readonly { readonly terms: 'us' | 'uk'; readonly short: string; readonly full: string }[] {
  return (['us', 'uk'] as const).map((terms) => ({ terms, short: symbolName(call, terms), full: symbolFullName(call, terms) }));
}
