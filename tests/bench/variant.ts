import type { Drawing } from '../../src/engine/6-drawing/drawing.ts';
import type { Yarn } from '../../src/engine/1-pattern/pattern.ts';
import type { ViewTransform } from '../../src/editor/chart/viewTransform.ts';

/** What every design draws. */
export interface BenchData {
  readonly drawing: Drawing;
  readonly yarnOf: Uint8Array;
  readonly yarns: readonly Yarn[];
  /** The view it starts with: the whole chart. */
  readonly whole: ViewTransform;
}

/** One design of the chart, mounted. */
export interface BenchChart {
  /** Gives one stitch another yarn. */
  edit(stitch: number, yarn: number): void;
  /** A stroke has touched these stitches so far. */
  brush(stitches: readonly number[], yarn: number): void;
  /** The stroke is done: its stitches keep their yarn. */
  endBrush(stitches: readonly number[], yarn: number): void;
  /** A motif has changed: all these stitches have another yarn. */
  recolour(stitches: readonly number[], yarn: number): void;
  /** Whether all that was changed is drawn; wide changes may take some frames. */
  isSettled(): boolean;
  /** One frame of a gesture: panned, or zoomed about the middle of the frame. */
  view(view: ViewTransform): void;
  /** The gesture is over. */
  rest(): void;
}

/** Puts a design into the page. */
export type Variant = (root: HTMLElement, data: BenchData) => BenchChart;
