import type { Layout } from '../5-layout/layout.ts';

/** A row whose cells are one rectangle, mm. */
export interface LevelRow {
  readonly x0: number;
  readonly x1: number;
  readonly top: number;
  readonly bottom: number;
}

/** Grid and bands of a drawing ask for the same rows. */
const KNOWN = new WeakMap<Layout, Map<Int32Array, LevelRow | null>>();

/** The rectangle of a row's cells, where they are upright, one beside the other, all of one height, to the last bit; else null. `mirrored`: slots run from right to left. */
export function levelRow(layout: Layout, slots: Int32Array, mirrored: boolean): LevelRow | null {
  if (mirrored || slots.length === 0) return rectangle(layout, slots, mirrored);
  let known = KNOWN.get(layout);
  if (!known) KNOWN.set(layout, (known = new Map()));
  let level = known.get(slots);
  if (level === undefined) known.set(slots, (level = rectangle(layout, slots, false)));
  return level;
}

function rectangle({ corners: c, first }: Layout, slots: Int32Array, mirrored: boolean): LevelRow | null {
  const count = slots.length;
  if (count === 0) return null;
  const start = (slots[mirrored ? count - 1 : 0]! - first) * 8;
  const [x0, bottom, top] = [c[start]!, c[start + 1]!, c[start + 7]!];
  let x = x0;
  for (let k = 0; k < count; k++) {
    const i = (slots[mirrored ? count - 1 - k : k]! - first) * 8;
    const right = c[i + 2]!;
    if (c[i] !== x || c[i + 6] !== x || c[i + 4] !== right || c[i + 1] !== bottom || c[i + 3] !== bottom || c[i + 5] !== top || c[i + 7] !== top) return null;
    x = right;
  }
  return { x0, x1: x, top, bottom };
}
