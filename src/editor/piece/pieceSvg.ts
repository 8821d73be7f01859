import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { pieceOf } from './pieceOf.ts';

/** The piece as a picture for the shelf: SVG text in its own yarns, outlined so that pale yarns show on any ground. */
export function pieceSvg(pattern: Pattern): string {
  const { bands, x0, y0, x1, y1 } = pieceOf(pattern);
  if (bands.length === 0) return '';
  const pad = Math.max(x1 - x0, y1 - y0) / 50;
  const parts = bands.map(({ yarns, outline }) => {
    const fills = yarns.map(({ yarn, d }) => {
      const colour = pattern.yarns[yarn]?.colour ?? '#888888';
      return `<path d="${d}" fill="${colour}" stroke="${colour}" stroke-width="0.35"/>`;
    });
    return `${fills.join('')}<path d="${outline}" fill="none" stroke="#6b6355" stroke-width="${(pad / 4).toFixed(2)}" stroke-linejoin="round"/>`;
  });
  const box = [x0 - pad, y0 - pad, x1 - x0 + 2 * pad, y1 - y0 + 2 * pad].map((n) => n.toFixed(1)).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}">${parts.join('')}</svg>`;
}
