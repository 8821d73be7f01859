import { stitchCode } from '../craft/stitches.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import type { LayoutKind } from '../5-layout/layout.ts';
import { addGlyph } from './glyph.ts';
import type { GlyphTable } from './glyph.ts';
import { crossDepth } from './symbols/singleCrochet.ts';
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
  /** Room across, for chains. */
  readonly across: number;
}

/** Stitches whose symbol is a cross, which is turned by a part of its lean only. */
const CROSSES = new Set((['sc', 'rsc', 'tsc'] as const).map(stitchCode));

/** Part of its lean that a cross is turned by: one turned all the way looks like another stitch. Less on discs, where all lean. */
export const CROSS_TURN = { flat: 0.5, tube: 0.5, turned: 0.5, disc: 0.15, oval: 0.15 } as const satisfies Record<LayoutKind, number>;
/** Most that a cross is turned, radians: at an eighth of a turn the slanted and the upright one are the same. */
const MOST_CROSS_TURN = 0.3;
/** Glyph geometry is rounded to this part of a cell, so that a waving row needs few glyphs. */
const STEP = 1 / 20;
/** Steps across a stitch's whole width. */
const WHOLE = 20;

/**
 * The glyph of a stitch that stands upright on one foot, if it is known from an earlier one: most stitches of most charts, found without
 * making anything. -1: not known. It stands with its origin at the stitch's head (a cross: as `stitchGlyph` says, the same here).
 */
export function uprightGlyph(table: GlyphTable, fabric: Fabric, stitch: number, lengthMm: number, isShared: boolean, isInSpace: boolean, h: number): number {
  const steps = lengthSteps(lengthMm, h);
  return steps < 1024 ? (table.upright.get(kindKey(fabric, stitch, isShared, isInSpace) * 1024 + steps) ?? -1) : -1;
}

/** A stitch's length in the steps that glyphs are rounded to; `h`: a single crochet's height, mm. */
export function lengthSteps(lengthMm: number, h: number): number {
  return Math.round(round(lengthMm, h) / (h * STEP));
}

/** Where the origin of an upright stitch's glyph lies below its head, mm: 0 but for the rounding of a cross's length. */
export function uprightDown(fabric: Fabric, stitch: number, lengthMm: number, h: number): number {
  return CROSSES.has(fabric.kind[stitch]!) ? crossDepth(lengthMm, h) - crossDepth(round(lengthMm, h), h) : 0;
}

/** Finds or makes the glyph of a stitch and places it. `w`, `h`: a single crochet's cell, mm; `crossTurn`: see `CROSS_TURN`. */
export function stitchGlyph(table: GlyphTable, fabric: Fabric, pose: StitchPose, w: number, h: number, crossTurn: number): PlacedGlyph {
  const { stitch, head, foot } = pose;
  const cross = CROSSES.has(fabric.kind[stitch]!) && pose.feet.length < 2;
  const turn = cross ? Math.max(-MOST_CROSS_TURN, Math.min(MOST_CROSS_TURN, pose.angle * crossTurn)) : pose.angle;
  const straight = Math.hypot(head[0] - foot[0], head[1] - foot[1]);
  const length = round(straight, h);
  // A half-turned cross keeps its middle on the line from foot to head; its origin moves a little instead.
  const down = cross ? crossDepth(length, h) : 0;
  const part = cross && straight > 0 ? crossDepth(straight, h) / straight : 0;
  const x = head[0] + (foot[0] - head[0]) * part + down * Math.sin(turn);
  // Exactly as `uprightDown` says for one that stands upright.
  const y = cross && turn === 0 && head[0] === foot[0] ? head[1] + (crossDepth(straight, h) - down) : head[1] + (foot[1] - head[1]) * part - down * Math.cos(turn);
  const steps = Math.round(length / (h * STEP));
  const single = pose.feet.length < 2;
  const upright = single && pose.angle === 0 && head[0] === foot[0] && steps < 1024 && Math.round(pose.across / (w * STEP)) === WHOLE;
  const kind = single ? kindKey(fabric, stitch, pose.shared, pose.inSpace) : 0;
  const plain = upright ? table.upright.get(kind * 1024 + steps) : undefined;
  if (plain !== undefined) return { glyph: plain, x, y, turnRad: turn };
  const [sin, cos] = turn === 0 ? [0, 1] : [Math.sin(turn), Math.cos(turn)];
  const local = ([px, py]: readonly [number, number]): readonly [number, number] => [round((px - x) * cos + (py - y) * sin, w), round((py - y) * cos - (px - x) * sin, h)];
  const own = local(foot);
  // What a symbol with one foot is drawn from: most stitches of most charts share a few.
  const known = single ? knownGlyphs(table, kind) : null;
  const key = known ? poseKey(length / h, own[0] / w, own[1] / h, pose.across / w) : 0;
  const keep = (glyph: number): PlacedGlyph => {
    known?.set(key, glyph);
    if (upright) table.upright.set(kind * 1024 + steps, glyph);
    return { glyph, x, y, turnRad: turn };
  };
  const found = known?.get(key);
  if (found !== undefined) return keep(found);
  const call = symbolCall(fabric, stitch);
  const frame: SymbolFrame = {
    w, h, length, feet: pose.feet.length > 1 ? pose.feet.map(local).sort((one, other) => one[0] - other[0]) : [own], legs: call.legs, slashes: slashes(call.kind, call.legKind),
    shared: pose.shared, inSpace: pose.inSpace, standing: call.turning, across: round(pose.across, w), set: table.set,
  };
  return keep(addGlyph(table, symbolName(call, 'us'), drawSymbol(call, frame)));
}

function knownGlyphs(table: GlyphTable, kind: number): Map<number, number> {
  let known = table.posed.get(kind);
  if (!known) table.posed.set(kind, (known = new Map()));
  return known;
}

/** Length, foot and room across, in whole steps of a cell: 12 bits each. */
function poseKey(length: number, footX: number, footY: number, across: number): number {
  const steps = (part: number): number => Math.max(-2048, Math.min(2047, Math.round(part / STEP))) + 2048;
  return ((steps(length) * 4096 + steps(footX)) * 4096 + steps(footY)) * 4096 + steps(across);
}

/** Tells stitches apart that are drawn in different ways: 2 bits of neighbourhood, side, 16 of flags, 8 of legs, 5 of kind, of legs' kind and of bases drawn together. */
function kindKey(fabric: Fabric, stitch: number, shared: boolean, inSpace: boolean): number {
  const side = fabric.rows[fabric.row[stitch]!]?.side === 'WS' ? 1 : 0;
  const bases = fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!;
  const together = inSpace || bases < 2 ? 0 : Math.min(bases, 31);
  const made = (((together * 32 + fabric.legKind[stitch]!) * 32 + fabric.kind[stitch]!) * 256 + fabric.legs[stitch]!) * 131072 + fabric.flags[stitch]! * 2 + side;
  return made * 4 + (shared ? 2 : 0) + (inSpace ? 1 : 0);
}

function round(value: number, unit: number): number {
  return Math.round(value / (unit * STEP)) * unit * STEP;
}
