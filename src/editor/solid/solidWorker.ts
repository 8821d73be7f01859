import type { Gauge } from '../../engine/1-pattern/pattern.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { shapeSolid } from '../../engine/5-layout/solid/shapeSolid.ts';
import type { Solid } from '../../engine/5-layout/solid/solid.ts';

/** What the worker is asked. */
export interface ShapeRequest {
  readonly fabric: Fabric;
  readonly gauge: Gauge;
}

/** What it answers: shares of the work done, then the solid or why there is none. */
export type ShapeAnswer =
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'shaped'; readonly solid: Solid }
  | { readonly kind: 'failed'; readonly why: string };

/** Shares nearer than this aren't told. */
const STEP = 0.03;

const answer = (message: ShapeAnswer, transfer: Transferable[] = []): void => self.postMessage(message, { transfer });

self.onmessage = ({ data }: MessageEvent<ShapeRequest>): void => {
  let told = 0;
  try {
    const solid = shapeSolid(data.fabric, data.gauge, (share) => {
      if (share - told < STEP) return;
      told = share;
      answer({ kind: 'share', share });
    });
    const arrays = Object.values(solid).filter((value): value is Float32Array<ArrayBuffer> | Int32Array<ArrayBuffer> => ArrayBuffer.isView(value));
    answer({ kind: 'shaped', solid }, arrays.map((array) => array.buffer));
  } catch (error) {
    answer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
};
