import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { blockFills, GHOST_FILL } from './blockPaths.ts';
import { changedBlocks, type Blocks } from './blocks.ts';
import { FAR } from './detail.ts';
import { UNITS_PER_MM } from './pathUnits.ts';
import type { ViewTransform } from './viewTransform.ts';

/** A small picture of all fills under the chart, seen only while blocks are still missing. The SVG is the chart. */
export interface Overview {
  /** Whether it shows all of the drawing. */
  readonly isDrawn: boolean;
  /** Starts afresh; blocks, those of the far detail, are asked for and drawn a little at a time when nothing has changed for a moment. */
  reset(drawing: Drawing, blocks: () => Blocks, yarnOf: Uint8Array, palette: readonly string[]): void;
  /** Draws what has another yarn again. */
  redraw(yarnOf: Uint8Array): void;
  /** Puts the picture where the view is, or hides it. */
  place(view: ViewTransform | null): void;
  destroy(): void;
}

const MOST_PX = 2048;
/** The chart itself comes first: a canvas that has been drawn on holds up the next frame, seen or not. */
const AFTER_MS = 400;
/** Then it is drawn a little at a time. */
const SLICE_MS = 5;
const PAUSE_MS = 40;

/** Draws on a canvas that lies under the SVG. */
export function overview(canvas: HTMLCanvasElement): Overview {
  const context = canvas.getContext('2d', { alpha: true });
  const waiting = new Set<number>();
  let source: { readonly drawing: Drawing; readonly blocks: () => Blocks; yarnOf: Uint8Array; readonly palette: readonly string[] } | null = null;
  /** The yarns that blocks have been drawn in, or wait to be; null before the first. */
  let gathered: Uint8Array | null = null;
  let pxPerMm = 1;
  let timer = 0;
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
  function work(): void {
    if (!source || !context) return;
    const { drawing, yarnOf, palette } = source;
    const blocks = source.blocks();
    for (const block of gathered ? changedBlocks(blocks, drawing.stitches.stitch, gathered, yarnOf) : Array(blocks.count).keys()) waiting.add(block);
    gathered = yarnOf;
    if (isFresh) {
      context.resetTransform();
      size();
    }
    const scale = pxPerMm / UNITS_PER_MM;
    context.setTransform(scale, 0, 0, scale, -drawing.bounds.x0 * pxPerMm, -drawing.bounds.y0 * pxPerMm);
    const end = performance.now() + SLICE_MS;
    for (const block of waiting) {
      waiting.delete(block);
      for (const { key, d } of blockFills(drawing, blocks, block, yarnOf, FAR)) {
        context.fillStyle = key === GHOST_FILL ? '#8884' : (palette[key] ?? '#808080');
        context.fill(new Path2D(d));
      }
      if (performance.now() >= end) break;
    }
    workAfter(PAUSE_MS);
  }
  function workAfter(ms: number): void {
    clearTimeout(timer);
    if (isBehind()) timer = window.setTimeout(work, ms);
  }
  function isBehind(): boolean {
    return source !== null && (waiting.size > 0 || gathered !== source.yarnOf);
  }

  return {
    get isDrawn() {
      return !isFresh && !isBehind();
    },
    reset(drawing, blocks, yarnOf, palette) {
      source = { drawing, blocks, yarnOf, palette };
      const width = drawing.bounds.x1 - drawing.bounds.x0, height = drawing.bounds.y1 - drawing.bounds.y0;
      pxPerMm = Math.min(MOST_PX / Math.max(width, height, 1e-6), 8);
      isFresh = true;
      waiting.clear();
      gathered = null;
      workAfter(AFTER_MS);
    },
    redraw(yarnOf) {
      if (!source) return;
      source.yarnOf = yarnOf;
      workAfter(AFTER_MS);
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
        if (visible) workAfter(0);
      } else if (view && isFresh) workAfter(0);
    },
    destroy() {
      clearTimeout(timer);
      waiting.clear();
      source = null;
    },
  };
}
