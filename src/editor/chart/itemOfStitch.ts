import type { Drawing } from '../../engine/6-drawing/drawing.ts';

const KNOWN = new WeakMap<Drawing, Int32Array>();

/** The item that draws each stitch number, -1 where it is not drawn; the stitch itself before its ghosts. Worked out once a drawing. */
export function itemOfStitch(drawing: Drawing): Int32Array {
  const known = KNOWN.get(drawing);
  if (known) return known;
  const { count, stitch, ghost } = drawing.stitches;
  let most = -1;
  for (let i = 0; i < count; i++) if (stitch[i]! > most) most = stitch[i]!;
  const items = new Int32Array(most + 1).fill(-1);
  for (let i = 0; i < count; i++) {
    const before = items[stitch[i]!]!;
    if (before < 0 || ghost[i]! < drawing.stitches.ghost[before]!) items[stitch[i]!] = i;
  }
  KNOWN.set(drawing, items);
  return items;
}
