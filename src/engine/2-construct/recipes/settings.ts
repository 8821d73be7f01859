import type { Measure, Pins, Swatch } from '../../1-pattern/pieceFacts.ts';
import type { Gauge } from '../../1-pattern/pattern.ts';

/** An edge that a piece begins or ends with. */
export interface EdgeSettings {
  /** `posts`: ribs in front and back posts; `folded`: doubled inwards at a ridge; `picot`: doubled inwards at a row of holes. */
  readonly edge: 'none' | 'plain' | 'backLoops' | 'posts' | 'folded' | 'picot';
  readonly heightCm: number;
  readonly yarn: string;
}

/** What a motif asks of a count: a multiple of `repeat` and `edge` more. `repeat` 0: nothing. */
export interface MotifMultiple {
  readonly repeat: number;
  readonly edge: number;
}

export interface LegSettings {
  readonly way: 'flat' | 'rounds';
  /** Wider at the calf, decreased evenly towards the ankle. */
  readonly calf: boolean;
  readonly yarn: string;
  readonly motif: MotifMultiple;
}

export interface HeelSettings {
  readonly kind: 'shortRows' | 'flap' | 'afterthought';
  /** Share of the round that the heel takes. */
  readonly share: number;
  /** Short rows: both sides left at once, or `step` fewer in each row. */
  readonly turn: 'atOnce' | 'stepped';
  readonly step: 1 | 2;
  /** Slip stitches into the leg that tie down the corners. */
  readonly corners: boolean;
  /** Gusset rounds: decreases in every round or every second. */
  readonly gusset: 'every' | 'second';
  readonly yarn: string;
}

export interface ToeSettings {
  readonly pace: 'every' | 'second' | 'half' | 'graduated';
  /** Plain rounds between the decreases of `half`, where the designer says them. */
  readonly evens: number | null;
  /** All sizes in the same rounds, larger ones with more decreases in the last. */
  readonly inStep: boolean;
  readonly close: 'drawn' | 'seam';
  readonly yarn: string;
}

/** A strip that is folded and sewn on. */
export interface LoopSettings {
  readonly cm: number;
  readonly yarn: string;
}

/** Strands knotted along the last edge: one bunch in every `every`th stitch. */
export interface FringeSettings {
  readonly every: number;
  readonly strands: number;
  /** Length of a strand as cut. */
  readonly cm: number;
  readonly yarn: string;
}

/** A row of bobbles about `every` stitches apart, at a share of the height. */
export interface BobbleSettings {
  readonly every: number;
  readonly at: number;
}

export interface SockSettings {
  readonly kind: 'sock';
  readonly cuff: EdgeSettings;
  readonly leg: LegSettings;
  readonly heel: HeelSettings;
  readonly foot: { readonly yarn: string };
  readonly toe: ToeSettings;
  readonly loop: LoopSettings | null;
  readonly fringe: FringeSettings | null;
}

export interface PanelSettings {
  readonly kind: 'panel';
  readonly stitch: Gauge['stitch'];
  readonly yarn: string;
  readonly motif: MotifMultiple;
  readonly bobbles: BobbleSettings | null;
  readonly loop: LoopSettings | null;
  readonly fringe: FringeSettings | null;
}

export interface TubeSettings {
  readonly kind: 'tube';
  readonly start: EdgeSettings;
  readonly end: EdgeSettings;
  readonly yarn: string;
  readonly motif: MotifMultiple;
  /** Changes of the count stand above each other, or half way between those before. */
  readonly changes: 'stacked' | 'staggered';
  readonly loop: LoopSettings | null;
}

export interface DiscSettings {
  readonly kind: 'disc';
  readonly stitch: Gauge['stitch'];
  /** The same number more in each round, or as many as the gauge asks for. */
  readonly more: 'constant' | 'byGauge';
  readonly changes: 'stacked' | 'staggered';
  readonly yarn: string;
  /** Ends with an edge: a cap's brim. */
  readonly brim: EdgeSettings;
}

export interface OvalSettings {
  readonly kind: 'oval';
  readonly yarn: string;
}

export interface BallSettings {
  readonly kind: 'ball';
  readonly yarn: string;
}

export type PieceSettings = SockSettings | PanelSettings | TubeSettings | DiscSettings | OvalSettings | BallSettings;

/** What a piece is made from: its settings, gauge, sizes, measurements, and numbers set by hand. */
export interface PieceRequest {
  readonly settings: PieceSettings;
  readonly gauge: Gauge;
  readonly swatches: readonly Swatch[];
  readonly sizes: readonly string[];
  readonly measures: readonly Measure[];
  readonly pins: Pins;
}
