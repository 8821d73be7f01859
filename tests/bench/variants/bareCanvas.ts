import { coloursOf } from '../cells.ts';
import { cellPainter } from '../paintCells.ts';
import type { Variant } from '../variant.ts';

/** A canvas of the frame's size; everything in sight is painted again for every change. */
export const bareCanvas: Variant = (root, data) => {
  const paint = cellPainter(data, coloursOf(data));
  const yarnOf = data.yarnOf.slice();
  const canvas = root.appendChild(document.createElement('canvas'));
  const ratio = window.devicePixelRatio || 1;
  const [width, height] = [root.clientWidth, root.clientHeight];
  canvas.width = width * ratio;
  canvas.height = height * ratio;
  canvas.style.cssText = 'width:100%;height:100%;display:block';
  const context = canvas.getContext('2d')!;
  let view = data.whole;
  const redraw = (): void => {
    context.resetTransform();
    context.clearRect(0, 0, canvas.width, canvas.height);
    paint(context, yarnOf, view, width, height, null);
  };
  const lay = (stitch: number, yarn: number): void => {
    yarnOf[stitch] = yarn;
    redraw();
  };
  redraw();
  return {
    edit: lay,
    brush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    endBrush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    recolour(stitches, yarn) {
      for (const stitch of stitches) yarnOf[stitch] = yarn;
      redraw();
    },
    isSettled: () => true,
    view(next) {
      view = next;
      redraw();
    },
    rest: redraw,
  };
};
