import { coloursOf } from '../cells.ts';
import { cellPainter } from '../paintCells.ts';
import type { Variant } from '../variant.ts';

const MARGIN_PX = 200;

/** A canvas larger than the frame, moved by CSS while a gesture runs and painted anew at rest; an edit paints its own cell. */
export const matchedCanvas: Variant = (root, data) => {
  const paint = cellPainter(data, coloursOf(data));
  const yarnOf = data.yarnOf.slice();
  const canvas = root.appendChild(document.createElement('canvas'));
  const ratio = window.devicePixelRatio || 1;
  const width = root.clientWidth + 2 * MARGIN_PX;
  const height = root.clientHeight + 2 * MARGIN_PX;
  canvas.width = width * ratio;
  canvas.height = height * ratio;
  canvas.style.cssText = `position:absolute;left:${-MARGIN_PX}px;top:${-MARGIN_PX}px;width:${width}px;height:${height}px;transform-origin:${MARGIN_PX}px ${MARGIN_PX}px;will-change:transform`;
  const context = canvas.getContext('2d')!;
  let view = data.whole;
  let painted = view;
  const shifted = (): { x: number; y: number; k: number } => ({ x: painted.x + MARGIN_PX, y: painted.y + MARGIN_PX, k: painted.k });
  const redraw = (): void => {
    painted = view;
    canvas.style.transform = 'none';
    context.resetTransform();
    context.clearRect(0, 0, canvas.width, canvas.height);
    paint(context, yarnOf, shifted(), width, height, null);
  };
  const lay = (stitch: number, yarn: number): void => {
    yarnOf[stitch] = yarn;
    paint(context, yarnOf, shifted(), width, height, [stitch]);
  };
  redraw();
  return {
    edit: lay,
    brush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    endBrush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    recolour(stitches, yarn) {
      for (const stitch of stitches) yarnOf[stitch] = yarn;
      paint(context, yarnOf, shifted(), width, height, stitches);
    },
    isSettled: () => true,
    view(next) {
      view = next;
      const scale = view.k / painted.k;
      canvas.style.transform = `translate(${view.x - painted.x * scale}px,${view.y - painted.y * scale}px) scale(${scale})`;
    },
    rest: redraw,
  };
};
