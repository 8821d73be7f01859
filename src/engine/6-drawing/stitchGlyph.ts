import type { Fabric } from '../3-fabric/fabric.ts';
import { addGlyph } from './glyph.ts';
import type { GlyphTable } from './glyph.ts';
import { CROSS_AT } from './symbols/singleCrochet.ts';
import { drawSymbol } from './symbols/drawSymbol.ts';
import type { SymbolFrame } from './symbols/frame.ts';
import { slashes, symbolCall } from './symbols/symbolCall.ts';
import { symbolName } from './symbols/symbolName.ts';

/** A glyph and where it is put: origin, turn clockwise. */
export interface PlacedGlyph {
  readonly glyph: number;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
}

/** Head, feet and neighbourhood of one stitch to draw. */
export interface StitchPose {
  readonly stitch: number;
  readonly head: readonly [x: number, y: number];
  readonly foot: readonly [x: number, y: number];
  /** Heads of the bases, when there are several. */
  readonly feet: readonly (readonly [x: number, y: number])[];
  readonly angle: number;
  readonly shared: boolean;
  readonly inSpace: boolean;
}

/** A cross turned all the way looks like another stitch; half the lean still shows where it stands. */
const CROSS_TURN = 0.5;
/** Glyph geometry is rounded to this part of a cell, so that a waving row needs few glyphs. */
const STEP = 1 / 20;

/** Finds or makes the glyph of a stitch and places it. `w`, `h`: a single crochet's cell, mm. */
export function stitchGlyph(table: GlyphTable, fabric: Fabric, pose: StitchPose, w: number, h: number): PlacedGlyph {
  const call = symbolCall(fabric, pose.stitch);
  const { head, foot } = pose;
  const straight = Math.hypot(head[0] - foot[0], head[1] - foot[1]);
  const cross = call.kind === 'sc' && pose.feet.length < 2;
  const turn = cross ? pose.angle * CROSS_TURN : pose.angle;
  const length = round(straight, h);
  // A half-turned cross keeps its middle on the line from foot to head; its origin moves a little instead.
  const along = cross ? CROSS_AT * length : 0;
  const part = straight > 0 ? CROSS_AT : 0;
  const middle: readonly [number, number] = cross ? [head[0] + (foot[0] - head[0]) * part, head[1] + (foot[1] - head[1]) * part] : head;
  const x = middle[0] + along * Math.sin(turn);
  const y = middle[1] - along * Math.cos(turn);
  const local = ([px, py]: readonly [number, number]): readonly [number, number] => {
    const [dx, dy] = [px - x, py - y];
    return [round(dx * Math.cos(turn) + dy * Math.sin(turn), w), round(-dx * Math.sin(turn) + dy * Math.cos(turn), h)];
  };
  const feet = pose.feet.length > 1 ? pose.feet.map(local).sort((a, b) => a[0] - b[0]) : [local(foot)];
  const frame: SymbolFrame = {
    w, h, length, feet, legs: call.legs, slashes: slashes(call.kind), shared: pose.shared, inSpace: pose.inSpace, standing: call.turning,
  };
  return { glyph: addGlyph(table, symbolName(call, 'us'), drawSymbol(call, frame)), x, y, turnRad: turn };
}

function round(value: number, unit: number): number {
  return Math.round(value / (unit * STEP)) * unit * STEP;
}
