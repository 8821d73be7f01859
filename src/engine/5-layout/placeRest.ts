import { boxCorners, setStitch } from './ground.ts';
import type { Ground } from './ground.ts';

/**
 * Gives stitches that no row has a place for (chains that nothing followed, stitches of rows that can't be worked) a small place
 * beside the stitch made before them, so that nothing that was worked is missing from a chart. Linear cost.
 */
export function placeRest(ground: Ground): void {
  const { placed, first, headX, headY, w, h } = ground;
  for (let i = 0; i < placed.length; i++) {
    if (placed[i]) continue;
    const [x, y] = i > 0 ? [headX[i - 1]! + 0.5 * w, headY[i - 1]!] : [0, 0];
    setStitch(ground, first + i, [x, y], [x, y + 0.4 * h], boxCorners(x, y + 0.2 * h, 0.25 * w, 0.2 * h));
  }
}
