import { stitchOfCode, stitchRow } from '../../craft/stitches.ts';
import type { StitchKind } from '../../craft/stitches.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';

/** What a symbol stands for, as seen on the right side of the fabric. */
export interface SymbolCall {
  readonly kind: StitchKind;
  /** Bases drawn together. */
  readonly together: number;
  readonly legs: number;
  readonly loop: 'both' | 'front' | 'back';
  readonly post: 'none' | 'front' | 'back';
  readonly spike: boolean;
  readonly turning: boolean;
}

/**
 * The symbol of one stitch of the fabric. Loops and posts of wrong-side rows change front for back, since a symbol shows the
 * stitch as it looks from the right side (a published guide to stitch charts; JIS L 0201 has the same rule).
 */
export function symbolCall(fabric: Fabric, stitch: number): SymbolCall {
  const flags = fabric.flags[stitch]!;
  const row = stitchOfCode(fabric.kind[stitch]!);
  const wrongSide = fabric.rows[fabric.row[stitch]!]?.side === 'WS';
  const seen = (front: boolean, back: boolean): 'front' | 'back' | null => (front || back ? (front === wrongSide ? 'back' : 'front') : null);
  const bases = fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!;
  return {
    kind: row.kind,
    together: flags & FLAG.inSpace ? 1 : Math.max(1, bases),
    legs: fabric.legs[stitch] || row.legs,
    loop: seen((flags & FLAG.frontLoop) !== 0, (flags & FLAG.backLoop) !== 0) ?? 'both',
    post: seen((flags & FLAG.frontPost) !== 0, (flags & FLAG.backPost) !== 0) ?? 'none',
    spike: (flags & FLAG.spike) !== 0,
    turning: (flags & FLAG.turning) !== 0,
  };
}

/** Slashes of a symbol or of its legs. A half double crochet has none: its one yarn over is the T. */
export function slashes(kind: StitchKind): number {
  const { legKind, yarnOvers } = stitchRow(kind);
  if (legKind !== null) return slashes(legKind);
  return kind === 'hdc' ? 0 : yarnOvers;
}
