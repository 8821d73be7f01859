import type { Yarn } from '../1-pattern/pattern.ts';
import { POINT_MM } from './textSize.ts';

/** Ink of a symbol, in the order of `DrawnStitches.ink`. */
export type InkName = 'rightSide' | 'wrongSide' | 'attaching' | 'shaping';
export const INK_NAMES = ['rightSide', 'wrongSide', 'attaching', 'shaping'] as const satisfies readonly InkName[];

/** How a drawing is printed: yarns, inks, faces and weights. Lengths in mm, colours `#rrggbb`. */
export interface Look {
  readonly yarns: readonly Yarn[];
  /** Black and white: yarns by print mark instead of colour, one ink. */
  readonly mono: boolean;
  /** `'yarn'`: cells filled with their yarn; `'none'`: rows tinted by side, for symbol charts. */
  readonly fills: 'yarn' | 'none';
  readonly inks: Readonly<Record<InkName, string>>;
  /** Inks for dark yarns. */
  readonly paleInks: Readonly<Record<InkName, string>>;
  readonly ghostInk: string;
  /** What is printed on: ground of symbols beside the cells, and the halo round what must be seen on any yarn. */
  readonly paper: string;
  readonly textInk: string;
  readonly bandRS: string;
  readonly bandWS: string;
  readonly openFill: string;
  readonly openInk: string;
  readonly seamInk: string;
  /** Marks of yarns in black and white. */
  readonly markInk: string;
  readonly gridInk: string;
  readonly gridStrongInk: string;
  readonly font: string;
  readonly symbolMm: number;
  readonly lineMm: number;
  readonly gridMm: number;
  readonly grid5Mm: number;
  readonly grid10Mm: number;
  /** Text of legend and captions; least size of any text. */
  readonly textMm: number;
}

/** What may be chosen of the print look. */
export interface LookChoice {
  readonly mono?: boolean;
  readonly fills?: 'yarn' | 'none';
  /** 12 pt text and heavier lines; draw with `textMm` of the look, so that the numbers get their room. */
  readonly large?: boolean;
  /** Width of a stitch on paper, mm: symbols on larger charts have heavier lines. Default 4. */
  readonly mmPerStitch?: number;
}

/** The printed look: symbols with lines of 0.065 of a stitch's width, from 0.2 to 0.6 mm; one dark ink, a blue for wrong-side rows, a red that means "here". */
export function printLook(yarns: readonly Yarn[], { mono = false, fills = 'yarn', large = false, mmPerStitch = 4 }: LookChoice = {}): Look {
  const heavy = large ? 1.5 : 1;
  const black = '#000000';
  return {
    yarns, mono, fills,
    inks: mono ? { rightSide: black, wrongSide: black, attaching: black, shaping: black } : { rightSide: '#27221b', wrongSide: '#2a5a86', attaching: '#a8321b', shaping: '#a8321b' },
    paleInks: mono ? { rightSide: '#ffffff', wrongSide: '#ffffff', attaching: '#ffffff', shaping: '#ffffff' } : { rightSide: '#fcf9f2', wrongSide: '#c3ddf2', attaching: '#ffc2ad', shaping: '#ffc2ad' },
    ghostInk: mono ? '#8a8a8a' : '#a89f8e', paper: '#ffffff', textInk: mono ? black : '#27221b',
    bandRS: mono ? '#ffffff' : '#f7f2e6', bandWS: mono ? '#ececec' : '#e8eff5',
    openFill: mono ? '#d9d9d9' : '#f8dfae', openInk: mono ? '#404040' : '#7d5200', seamInk: mono ? '#404040' : '#8c6414', markInk: black,
    gridInk: mono ? '#8f8f8f' : '#b5ab98', gridStrongInk: mono ? '#404040' : '#6b6253',
    font: "'Alegreya Sans', 'Gill Sans', 'Segoe UI', sans-serif",
    symbolMm: Math.min(0.6, Math.max(0.2, 0.065 * mmPerStitch * heavy)), lineMm: 0.25 * heavy, gridMm: 0.2, grid5Mm: 0.32, grid10Mm: 0.5, textMm: (large ? 12 : 8) * POINT_MM,
  };
}
