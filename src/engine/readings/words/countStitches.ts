import { amountFor } from '../../notation/instruction.ts';
import type { Instruction, StitchCall } from '../../notation/instruction.ts';
import { stitchRow } from '../../craft/stitches.ts';

type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;

/** How many places a clause is worked in, in one size; null where only working the row tells (`across`). */
export function countPlaces({ into }: Placed, size: number): number | null {
  if (into.at === 'across') return null;
  return 'count' in into ? amountFor(into.count, size) : 1;
}

/** Stitches of one call: all those of a shell, both of a V-stitch and the chain between; 1 for every other. */
export function stitchesOfCall({ kind, legs }: StitchCall): number {
  return kind === 'vst' ? 3 : kind === 'shell' ? legs || stitchRow(kind).legs : 1;
}

/** Stitches that a clause makes in one size, chains and joins included; null where only working the row tells. */
export function countStitches(node: Instruction, size: number): number | null {
  switch (node.kind) {
    case 'work': {
      const places = countPlaces(node, size);
      return places === null ? null : places * amountFor(node.each, size) * stitchesOfCall(node.stitch);
    }
    case 'group': {
      const places = countPlaces(node, size);
      const inside = countBody(node.body, size);
      return places === null || inside === null ? null : places * inside;
    }
    case 'chain':
      return amountFor(node.count, size);
    case 'evenly':
      return node.count === null ? null : amountFor(node.count, size);
    case 'repeat': {
      const inside = countBody(node.body, size);
      return node.times.kind === 'toEnd' || inside === null ? null : inside * amountFor(node.times.times, size);
    }
    case 'ring':
    case 'join':
    case 'joinRing':
      return 1;
    default:
      return 0;
  }
}

/** Stitches that clauses make together; null where only working the row tells. */
export function countBody(body: readonly Instruction[], size: number): number | null {
  let sum = 0;
  for (const node of body) {
    const count = countStitches(node, size);
    if (count === null) return null;
    sum += count;
  }
  return sum;
}
