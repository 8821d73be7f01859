import { stitchCode, stitchRow } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Ground } from './ground.ts';

const CHAIN = stitchCode('ch');
const SHELL = stitchCode('shell');
const VST = stitchCode('vst');

/** Width that a stitch takes in its row, mm. A shell spreads over the places skipped beside it; a hanging chain gives way. */
export function slotWidth(ground: Ground, stitch: number): number {
  const { fabric, w } = ground;
  const kind = fabric.kind[stitch]!;
  if (kind === SHELL) return (w * ((fabric.legs[stitch] || stitchRow('shell').legs) + 1)) / 2;
  if (kind === VST) return 2 * w;
  if (kind === CHAIN && fabric.flags[stitch]! & FLAG.space) return 0.62 * w;
  return w;
}

/** Least width that a stitch may be squeezed to in a row: chains of a space give way and rise to an arch instead. */
export function slotLeast(ground: Ground, stitch: number): number {
  return isSpaceChain(ground, stitch) ? 0.36 * ground.w : slotWidth(ground, stitch);
}

/** Whether a stitch is a chain that hangs between others. */
export function isSpaceChain({ fabric }: Pick<Ground, 'fabric'>, stitch: number): boolean {
  return fabric.kind[stitch] === CHAIN && (fabric.flags[stitch]! & FLAG.space) !== 0;
}
