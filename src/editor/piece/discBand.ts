import { closedPath, type Point } from './closedPath.ts';
import type { Band, Strip } from './silhouette.ts';

const STEP = Math.PI / 36;

/** A disc as it lies: every round a ring of its height, begun at the foot and going round to the right side's right. */
export function discBand(section: number, strips: readonly Strip[]): Band {
  const paths = new Map<number, string>();
  let radius = 0;
  for (const { heightMm, runs } of strips) {
    for (const { from, to, yarn } of runs) {
      const sector = [...arc(radius + heightMm, from, to), ...arc(radius, from, to).reverse()];
      paths.set(yarn, (paths.get(yarn) ?? '') + closedPath(sector));
    }
    radius += heightMm;
  }
  return { section, outline: closedPath(arc(radius, 0, 1)), yarns: [...paths].map(([yarn, d]) => ({ yarn, d })), middle: [0, 0] };
}

/** Points of an arc about the origin between two shares of a turn, from the foot on; columns run against the round's way. */
function arc(radius: number, from: number, to: number): Point[] {
  const [first, last] = [-2 * Math.PI * from, -2 * Math.PI * to];
  const steps = Math.max(1, Math.ceil((first - last) / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = first + ((last - first) * i) / steps;
    return [radius * Math.sin(turn), radius * Math.cos(turn)] as const;
  });
}
