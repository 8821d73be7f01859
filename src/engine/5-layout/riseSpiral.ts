import type { Ground, IndexedRow } from './ground.ts';
import type { PlacedPart } from './layout.ts';

/**
 * Lets the rounds of an unrolled tube rise by one round on the way round, from the edge where they start, so that the end of each
 * lies level with the start of the next; repeated stitches go on along the same line. The slope is that of a mean round. Linear cost.
 */
export function riseSpiral(ground: Ground, rows: readonly IndexedRow[], part: PlacedPart, [left, right]: readonly [number, number]): PlacedPart {
  const { first, headX, headY, footX, footY, corners } = ground;
  const worked = rows.filter((row) => row.round && row.word !== 'foundation');
  const [one, last] = [worked[0], worked.at(-1)];
  if (!one || !last || right <= left) return part;
  const rise = (footOfRow(ground, one) - headOfRow(ground, last)) / worked.length;
  const fromRight = one.direction < 0;
  const up = (x: number): number => (rise * (fromRight ? right - x : x - left)) / (right - left);
  for (const row of rows) {
    for (let i = row.first - first; i < row.end - first; i++) {
      headY[i]! -= up(headX[i]!);
      footY[i]! -= up(footX[i]!);
      for (let c = i * 8; c < i * 8 + 8; c += 2) corners[c + 1]! -= up(corners[c]!);
    }
  }
  const risen = (points: readonly number[]): number[] => points.map((value, i) => (i % 2 === 0 ? value : value - up(points[i - 1]!)));
  return {
    ...part,
    ghosts: part.ghosts.map((ghost) => ({ ...ghost, headY: ghost.headY - up(ghost.headX) })),
    guides: part.guides.map((guide) => {
      if (guide.kind === 'start') return { ...guide, y: guide.y - up(guide.x) };
      return guide.kind === 'from' ? guide : { ...guide, points: risen(guide.points) };
    }),
  };
}

/** Level of the feet of a row's first slot. */
function footOfRow({ footY, first }: Ground, row: IndexedRow): number {
  let low = -Infinity;
  for (let i = row.first - first; i < row.end - first; i++) low = Math.max(low, footY[i]!);
  return low;
}

function headOfRow({ headY, first }: Ground, row: IndexedRow): number {
  let high = Infinity;
  for (let i = row.first - first; i < row.end - first; i++) high = Math.min(high, headY[i]!);
  return high;
}
