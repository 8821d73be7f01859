import type { Guide, Layout } from './layout.ts';

/** The layout for a left-handed maker: mirrored left to right. Corners keep their order (bottom left first) as drawn. */
export function mirror(layout: Layout): Layout {
  const { x0, x1 } = layout.bounds;
  const turn = x0 + x1;
  const flip = (values: Float32Array): Float32Array => values.map((x) => turn - x);
  const corners = new Float32Array(layout.corners.length);
  for (let i = 0; i < corners.length; i += 8) {
    for (const [to, from] of [[0, 2], [2, 0], [4, 6], [6, 4]] as const) {
      corners[i + to] = turn - layout.corners[i + from]!;
      corners[i + to + 1] = layout.corners[i + from + 1]!;
    }
  }
  return {
    ...layout,
    headX: flip(layout.headX), footX: flip(layout.footX), angle: layout.angle.map((a) => (a === 0 ? 0 : -a)), corners,
    ghosts: layout.ghosts.map((ghost) => ({ ...ghost, headX: turn - ghost.headX, angle: -ghost.angle })),
    rows: layout.rows.map((row) => ({ ...row, startsAt: row.startsAt === 'left' ? 'right' : 'left', labelX: turn - row.labelX, startX: turn - row.startX, band: row.band && flipX(row.band, turn) })),
    guides: layout.guides.map((guide) => mirrorGuide(guide, turn)),
  };
}

function mirrorGuide(guide: Guide, turn: number): Guide {
  switch (guide.kind) {
    case 'start': return { ...guide, x: turn - guide.x, turnRad: -guide.turnRad };
    case 'open': return { ...guide, points: flipX(guide.points, turn), textX: turn - guide.textX, turnRad: -guide.turnRad };
    case 'from': return { ...guide, points: flipX(guide.points, turn), textX: turn - guide.textX };
    case 'seam': case 'centre': case 'way': return { ...guide, points: flipX(guide.points, turn) };
  }
}

function flipX(points: readonly number[], turn: number): number[] {
  return points.map((value, i) => (i % 2 === 0 ? turn - value : value));
}
