import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Gauge } from '../../../../src/engine/1-pattern/pattern.ts';
import type { Fabric } from '../../../../src/engine/3-fabric/fabric.ts';
import { gaugeCell } from '../../../../src/engine/5-layout/gaugeCell.ts';
import { shapeSolid } from '../../../../src/engine/5-layout/solid/shapeSolid.ts';
import type { Solid } from '../../../../src/engine/5-layout/solid/solid.ts';
import type { Web } from '../../../../src/engine/5-layout/solid/web.ts';
import { webOf } from '../../../../src/engine/5-layout/solid/webOf.ts';
import { workText } from '../../workText.ts';

/** A common swatch in single crochet. */
export const GAUGE: Gauge = { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' };

export const PUFFIN_QUAY = readFileSync(join(import.meta.dirname, '../../../samples/puffin-quay/structure.txt'), 'utf8');

/** A written pattern worked in one size and shaped. */
export interface Shaped {
  readonly fabric: Fabric;
  readonly web: Web;
  readonly solid: Solid;
}

export function shaped(text: string, size = 0, gauge: Gauge = GAUGE): Shaped {
  const { fabric } = workText(text, size);
  return { fabric, web: webOf(fabric, gaugeCell(gauge)), solid: shapeSolid(fabric, gauge) };
}

/** Rounds of `k` increases each from a ring. */
export function discText(k: number, rounds: number): string {
  const lines = [`Rnd 1: magic ring, ${k} sc in ring.`, 'Rnd 2: 2 sc in each st around.'];
  for (let r = 3; r <= rounds; r++) lines.push(`Rnd ${r}: (2 sc in next st, sc in next ${r - 2} sts) ${k} times.`);
  return lines.join('\n');
}
