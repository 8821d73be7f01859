import type { Ground } from './ground.ts';
import type { Ghost } from './layout.ts';

/** The stitches of other sections that the first row is worked on, as ghosts below it. */
export function outsideGhosts({ outside }: Ground): Ghost[] {
  return [...outside].map(([stitch, [headX, headY]]) => ({ stitch, headX, headY, angle: 0 }));
}
