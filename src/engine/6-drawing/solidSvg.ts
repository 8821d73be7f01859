import type { Yarn } from '../1-pattern/pattern.ts';
import type { Solid } from '../5-layout/solid/solid.ts';
import { solidPaths } from './solidPaths.ts';
import type { SolidDetail } from './solidPaths.ts';
import { turnPoints } from './solidView.ts';
import type { SolidView } from './solidView.ts';
import { svgHead } from './svgHead.ts';
import type { SvgWords } from './svgHead.ts';

/** Said wherever the picture is shown. */
export const SOLID_CAPTION = 'Worked out from the stitches and the gauge: a likeness, not a measurement.';
const MARGIN_MM = 4;

/** Half the width and height in mm that a solid never outgrows however it is turned, so that it doesn't jump while it turns. */
export function solidReachMm({ halfMm: [x, y, z] }: Solid): number {
  return Math.hypot(x, y, z) + MARGIN_MM;
}

/**
 * The picture of a solid as an SVG file, one user unit a millimetre, cut to what is seen. `yarnOf` is the yarn index of each
 * stitch number. The description says that it is a likeness.
 */
export function solidSvg(solid: Solid, yarnOf: Uint8Array, yarns: readonly Yarn[], view: SolidView, words: SvgWords, detail: SolidDetail = { strands: true }): string {
  const paths = solidPaths(solid, yarnOf, yarns, view, detail);
  const box = boxOf(solid, view);
  const body = paths.map(({ d, fill }) => `<path d="${d}" fill="${fill}" stroke="${fill}"/>`).join('\n');
  return `${svgHead(box, { ...words, desc: `${words.desc} ${SOLID_CAPTION}`.trim() })}
<g stroke-width="0.3" stroke-linejoin="round">
${body}
</g>
</svg>
`;
}

function boxOf(solid: Solid, view: SolidView): { x: number; y: number; width: number; height: number } {
  const seen = turnPoints(solid.corners, view);
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const corner of new Set(solid.outline)) {
    x0 = Math.min(x0, seen[corner * 3]!);
    x1 = Math.max(x1, seen[corner * 3]!);
    y0 = Math.min(y0, seen[corner * 3 + 1]!);
    y1 = Math.max(y1, seen[corner * 3 + 1]!);
  }
  if (x0 > x1) return { x: 0, y: 0, width: 2 * MARGIN_MM, height: 2 * MARGIN_MM };
  return { x: x0 - MARGIN_MM, y: y0 - MARGIN_MM, width: x1 - x0 + 2 * MARGIN_MM, height: y1 - y0 + 2 * MARGIN_MM };
}
