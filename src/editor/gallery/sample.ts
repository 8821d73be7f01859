import type { Terms } from '../../engine/craft/terms.ts';

/** Where a sample stands in the gallery. */
export type SampleGroup = 'rows' | 'texture' | 'rounds' | 'shortRows' | 'pieces' | 'colour';

/** A small written pattern and how its chart is drawn. */
export interface Sample {
  /** Also the name of its file among the kept charts. */
  readonly name: string;
  readonly title: string;
  readonly group: SampleGroup;
  /** A written pattern; rows alone are taken as one section. */
  readonly text: string;
  readonly look?: SampleLook;
}

/** What differs from an ordinary chart in colour, for the right hand. */
export interface SampleLook {
  /** Section to draw, by its place. Default 0. */
  readonly section?: number;
  readonly fills?: 'yarn' | 'none';
  readonly symbols?: 'us' | 'jis' | 'none';
  readonly grid?: boolean;
  readonly mono?: boolean;
  readonly large?: boolean;
  readonly mmPerStitch?: number;
  readonly hand?: 'right' | 'left';
  readonly terms?: Terms;
  readonly rounds?: 'auto' | 'tube' | 'disc';
  readonly spiral?: boolean;
  readonly leanStitches?: number;
  readonly view?: 'wedge' | 'grid' | 'fan';
  readonly brackets?: readonly { readonly from: number; readonly to: number; readonly text: string }[];
}
