import { stitchOfCode, stitchRow } from '../../craft/stitches.ts';
import type { StitchKind } from '../../craft/stitches.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { SEEN_FROM_RIGHT } from './rightSide.ts';
import type { Facing } from './rightSide.ts';

/** What a symbol stands for, as seen on the right side of the fabric. */
export interface SymbolCall {
  readonly kind: StitchKind;
  /** Bases drawn together. */
  readonly together: number;
  readonly legs: number;
  /** Of which stitch the legs are, where that is not the catalogue's. */
  readonly legKind?: StitchKind;
  readonly loop: 'both' | Facing;
  readonly post: 'none' | Facing;
  readonly spike: boolean;
  readonly turning: boolean;
}

/** The symbol of one stitch of the fabric. Loops and posts are told as they look from the right side (`SEEN_FROM_RIGHT`). */
export function symbolCall(fabric: Fabric, stitch: number): SymbolCall {
  const flags = fabric.flags[stitch]!;
  const row = stitchOfCode(fabric.kind[stitch]!);
  const side = fabric.rows[fabric.row[stitch]!]?.side ?? 'RS';
  const seen = (front: number, back: number): Facing | null => (flags & front ? SEEN_FROM_RIGHT[side].front : flags & back ? SEEN_FROM_RIGHT[side].back : null);
  const bases = fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!;
  return {
    kind: row.kind,
    together: flags & FLAG.inSpace ? 1 : Math.max(1, bases),
    legs: fabric.legs[stitch] || row.legs,
    ...(fabric.legKind[stitch] ? { legKind: stitchOfCode(fabric.legKind[stitch]!).kind } : {}),
    loop: seen(FLAG.frontLoop, FLAG.backLoop) ?? 'both',
    post: seen(FLAG.frontPost, FLAG.backPost) ?? 'none',
    spike: (flags & FLAG.spike) !== 0,
    turning: (flags & FLAG.turning) !== 0,
  };
}

/** Slashes of a symbol or of its legs. A half double crochet has none: its one yarn over is the T. */
export function slashes(kind: StitchKind, legKind: StitchKind | null = stitchRow(kind).legKind): number {
  if (legKind !== null) return slashes(legKind);
  const { yarnOvers } = stitchRow(kind);
  return kind === 'hdc' || kind === 'ehdc' ? 0 : yarnOvers;
}
