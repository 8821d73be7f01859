import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { blockFills, GHOST_FILL } from './blockPaths.ts';
import type { Blocks } from './blocks.ts';
import { FAR } from './detail.ts';
import { UNITS_PER_MM } from './pathUnits.ts';
import type { ViewTransform } from './viewTransform.ts';

/** A small picture of all fills under the chart, seen only while blocks are still missing. The SVG is the chart. */
export interface Overview {
  /** Whether it shows all of the drawing. */
  readonly isDrawn: boolean;
  /** Starts afresh; blocks, those of the far detail, are drawn when the browser is idle. */
  reset(drawing: Drawing, blocks: Blocks, yarnOf: Uint8Array, palette: readonly string[]): void;
  /** Draws some blocks again with new yarns. */
  redraw(blocks: Iterable<number>, yarnOf: Uint8Array): void;
  /** Puts the picture where the view is, or hides it. */
  place(view: ViewTransform | null): void;
  destroy(): void;
}

const MOST_PX = 2048;
/** The chart itself comes first. */
const AFTER_MS = 400;

/** Idle time, or soon in a browser that doesn't tell when it is idle. */
const tells = typeof requestIdleCallback === 'function';
function whenIdle(work: (deadline: Pick<IdleDeadline, 'timeRemaining' | 'didTimeout'>) => void): number {
  if (tells) return requestIdleCallback(work, { timeout: 4000 });
  const end = performance.now() + 70;
  return window.setTimeout(() => work({ timeRemaining: () => end - performance.now(), didTimeout: false }), 60);
}
function forget(handle: number): void {
  if (tells) cancelIdleCallback(handle);
  else clearTimeout(handle);
}

/** Draws on a canvas that lies under the SVG. */
export function overview(canvas: HTMLCanvasElement): Overview {
  const context = canvas.getContext('2d', { alpha: true });
  const waiting = new Set<number>();
  let source: { drawing: Drawing; blocks: Blocks; yarnOf: Uint8Array; palette: readonly string[] } | null = null;
  let pxPerMm = 1;
  let handle = 0;
  let later = 0;
  let visible = false;
  /** Nothing of this drawing is on the canvas yet. */
  let isFresh = true;

  /** The canvas takes its size when it is drawn on: a large one is not made while the chart itself waits. */
  function size(): void {
    if (!source) return;
    const { bounds } = source.drawing;
    const [width, height] = [Math.max(1, Math.round((bounds.x1 - bounds.x0) * pxPerMm)), Math.max(1, Math.round((bounds.y1 - bounds.y0) * pxPerMm))];
    isFresh = false;
    if (canvas.width === width && canvas.height === height) context?.clearRect(0, 0, width, height);
    else [canvas.width, canvas.height] = [width, height];
  }
  function work(deadline: Pick<IdleDeadline, 'timeRemaining' | 'didTimeout'>): void {
    handle = 0;
    if (!source || !context) return;
    const { drawing, blocks, yarnOf, palette } = source;
    if (isFresh) {
      context.resetTransform();
      size();
    }
    const scale = pxPerMm / UNITS_PER_MM;
    context.setTransform(scale, 0, 0, scale, -drawing.bounds.x0 * pxPerMm, -drawing.bounds.y0 * pxPerMm);
    for (const block of waiting) {
      if (deadline.timeRemaining() < 2 && !deadline.didTimeout) break;
      waiting.delete(block);
      for (const { key, d } of blockFills(drawing, blocks, block, yarnOf, FAR)) {
        context.fillStyle = key === GHOST_FILL ? '#8884' : (palette[key] ?? '#808080');
        context.fill(new Path2D(d));
      }
    }
    wake();
  }
  function wake(): void {
    if (waiting.size > 0 && handle === 0) handle = whenIdle(work);
  }

  return {
    get isDrawn() {
      return source !== null && !isFresh && waiting.size === 0;
    },
    reset(drawing, blocks, yarnOf, palette) {
      source = { drawing, blocks, yarnOf, palette };
      const width = drawing.bounds.x1 - drawing.bounds.x0, height = drawing.bounds.y1 - drawing.bounds.y0;
      pxPerMm = Math.min(MOST_PX / Math.max(width, height, 1e-6), 8);
      isFresh = true;
      waiting.clear();
      for (let b = 0; b < blocks.count; b++) waiting.add(b);
      clearTimeout(later);
      later = window.setTimeout(wake, AFTER_MS);
    },
    redraw(changed, yarnOf) {
      if (!source) return;
      source.yarnOf = yarnOf;
      for (const block of changed) waiting.add(block);
      wake();
    },
    place(view) {
      // What was drawn before is of another drawing.
      if (view && source && !isFresh) {
        const { bounds } = source.drawing;
        const scale = view.k / pxPerMm;
        canvas.style.transform = `translate(${view.x + bounds.x0 * view.k}px,${view.y + bounds.y0 * view.k}px) scale(${scale})`;
      }
      const isShown = view !== null && !isFresh;
      if (isShown !== visible) {
        visible = isShown;
        canvas.style.visibility = visible ? 'visible' : 'hidden';
      }
    },
    destroy() {
      clearTimeout(later);
      if (handle !== 0) forget(handle);
      waiting.clear();
      source = null;
    },
  };
}
