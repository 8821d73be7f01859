import type { Box } from '../5-layout/layout.ts';
import type { SymbolSet } from './symbols/symbolSet.ts';

/**
 * The chart as data, in mm, y down. Screen and SVG writer map the same drawing, so they can't drift. Stitches are arrays
 * (index = item, in drawing order), everything else is a short list of marks with roles. No colours here: `Look` maps
 * roles and yarns to them.
 */
export interface Drawing {
  readonly bounds: Box;
  readonly cellWidthMm: number;
  readonly cellHeightMm: number;
  readonly stitches: DrawnStitches;
  /** Each glyph once; `stitches.glyph` refers to it. */
  readonly glyphs: readonly Glyph[];
  readonly marks: readonly Mark[];
  /** Set that the glyphs belong to; absent: the US one. */
  readonly symbols?: SymbolSet;
}

export interface DrawnStitches {
  readonly count: number;
  /** Stitch number in the fabric; the same number can be drawn again as a ghost. */
  readonly stitch: Int32Array;
  readonly row: Int32Array;
  /** 1: drawn in grey for orientation only. */
  readonly ghost: Uint8Array;
  /** Middle of the cell, for blocks and for finding a stitch under the pointer. */
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** Cell corners, 8 numbers an item, as in `Layout.corners`. */
  readonly corners: Float32Array;
  /** Whether the cell is filled with the yarn (chains and turning chains beside the fabric are not); of ghosts, with a tint of it. */
  readonly filled: Uint8Array;
  /** Glyph index, placed with its origin (the head) at `glyphX, glyphY`, turned by `glyphTurnRad`. -1: no symbol. */
  readonly glyph: Int32Array;
  readonly glyphX: Float32Array;
  readonly glyphY: Float32Array;
  readonly glyphTurnRad: Float32Array;
  /** 0 ordinary, 1 WS row, 2 reaches for a stitch elsewhere (attaching stitch of a short row, spike), 3 shaping (increase, decrease). */
  readonly ink: Uint8Array;
}

/** A symbol's geometry: origin at the head of the stitch, foot at (0, length), mm. */
export interface Glyph {
  /** Valid XML id, unique in the drawing, stable for the same geometry. */
  readonly id: string;
  /** Stitch name for the legend, e.g. `sc`, `sc2tog`, `5-dc bobble`, in US terms. */
  readonly name: string;
  readonly strokes: readonly Stroke[];
}

export type Stroke =
  | { readonly kind: 'line'; readonly points: readonly number[] }
  /** A quadratic curve: start, control, end. */
  | { readonly kind: 'curve'; readonly points: readonly [number, number, number, number, number, number] }
  | { readonly kind: 'oval'; readonly x: number; readonly y: number; readonly rx: number; readonly ry: number; readonly turnRad: number; readonly filled: boolean };

export type MarkRole =
  | 'rowNumber' | 'stitchNumber' | 'direction' | 'leader' | 'grid' | 'grid5' | 'grid10' | 'seam' | 'centre' | 'open' | 'openText'
  | 'bandRS' | 'bandWS' | 'attach' | 'repeat' | 'repeatText' | 'title' | 'caption' | 'legendText' | 'legendBox' | 'scale' | 'frame' | 'join' | 'sizeLine';

export type Mark =
  | { readonly kind: 'text'; readonly role: MarkRole; readonly x: number; readonly y: number; readonly text: string; readonly sizeMm: number; readonly anchor: 'start' | 'middle' | 'end'; readonly turnRad: number; readonly row: number | null }
  | { readonly kind: 'line'; readonly role: MarkRole; readonly points: readonly number[]; readonly row: number | null }
  | { readonly kind: 'area'; readonly role: MarkRole; readonly points: readonly number[]; readonly row: number | null };
