import type { LayOutOptions } from '../../engine/5-layout/layOutSection.ts';
import type { Layout, TurnedView } from '../../engine/5-layout/layout.ts';
import type { DrawOptions } from '../../engine/6-drawing/draw.ts';
import type { SectionPrint } from '../../engine/6-drawing/printSection.ts';
import type { SymbolSet } from '../../engine/6-drawing/symbols/symbolSet.ts';
import type { ChartView } from './stage.ts';

/** What may be chosen about a chart's drawing; it changes no pattern. */
export interface DrawnHow {
  readonly shows: ChartView;
  /** Yarns by print mark instead of colour. */
  readonly mono: boolean;
  readonly symbols: SymbolSet;
  readonly hand: 'right' | 'left';
  /** Turned short rows. */
  readonly view: TurnedView;
  /** Closed rounds: as they grow, unrolled, or seen from their middle. */
  readonly rounds: 'auto' | 'tube' | 'disc';
  /** Travel of unturned rounds, stitches a round. */
  readonly leanStitches: number;
  readonly spiral: boolean;
  /** Stitches repeated in grey on either side of a tube. */
  readonly tubeMargin: number;
}

export const USUALLY_DRAWN: DrawnHow = { shows: 'both', mono: false, symbols: 'us', hand: 'right', view: 'wedge', rounds: 'auto', leanStitches: 0, spiral: false, tubeMargin: 4 };

/** What can be chosen, with the word for it. */
export const DRAWN_CHOICES = {
  symbols: [['us', 'US'], ['jis', 'JIS L 0201']],
  hand: [['right', 'right-handed'], ['left', 'left-handed']],
  view: [['wedge', 'as a wedge'], ['grid', 'in columns'], ['fan', 'as a half fan']],
  rounds: [['auto', 'as they grow'], ['tube', 'unrolled'], ['disc', 'about the middle']],
  leanStitches: [[0, 'straight up'], [0.125, '⅛'], [0.25, '¼'], [0.5, '½ stitch a round']],
  spiral: [[false, 'level'], [true, 'rising as a spiral']],
  tubeMargin: [[0, 'none'], [2, '2'], [4, '4'], [8, '8 stitches']],
} as const satisfies { readonly [K in keyof DrawnHow]?: readonly (readonly [DrawnHow[K], string])[] };

export type DrawnChoice = keyof typeof DRAWN_CHOICES;

/** The choices that make a difference for a section laid out like this. */
export function choicesFor(layout: Layout): readonly DrawnChoice[] {
  const has = (...kinds: readonly Layout['kind'][]): boolean => layout.parts.some(({ kind }) => kinds.includes(kind));
  return [
    'symbols', 'hand',
    ...(layout.parts.some(({ kind, keepsColumns }) => kind === 'turned' && !keepsColumns) ? (['view'] as const) : []),
    ...(has('tube', 'disc', 'oval') ? (['rounds'] as const) : []),
    ...(has('tube') ? (['leanStitches', 'spiral', 'tubeMargin'] as const) : []),
  ];
}

/** Why a choice that might be looked for isn't there; null where all are. */
export function choiceLeftOut(layout: Layout): string | null {
  const keeps = layout.parts.some(({ keepsColumns }) => keepsColumns);
  return keeps ? 'These short rows stay in columns: every row leaves a stitch or takes one back, so the rows lie as two wedges tip to tip already, and only the stitch that takes one back reaches across.' : null;
}

/** For `layOut`. */
export function laidAs({ hand, view, rounds, leanStitches, spiral, tubeMargin }: DrawnHow): LayOutOptions {
  return { hand, view, rounds, leanStitches, spiral, tubeMargin };
}

/** For `draw`. */
export function drawnAs({ shows, symbols }: DrawnHow): DrawOptions {
  return { symbols: shows === 'colour' ? 'none' : symbols, numbers: true, grid: true };
}

/** For `printSection`: the same chart on paper. */
export function printedAs(how: DrawnHow, mmPerStitch: number, paper: SectionPrint['paper']): SectionPrint {
  const { symbols } = drawnAs(how);
  return { ...laidAs(how), hand: how.hand, symbols, fills: how.shows === 'symbols' ? 'none' : 'yarn', mono: how.mono, mmPerStitch, paper };
}
