import { select } from 'd3-selection';
import { zoom, zoomIdentity, type D3ZoomEvent } from 'd3-zoom';
import type { Box } from '../../engine/5-layout/layout.ts';
import { between, heldInSight, scaleRange, type Size, type ViewTransform } from './viewTransform.ts';

/** Zooming and panning of a frame: by wheel, pinch, two fingers, middle button or space and drag; and by program. */
export interface Moves {
  /** The bounds and cells that the limits are worked out from. */
  limit(bounds: Box, cellWidthMm: number, size: Size): void;
  /** Goes to a view, at once or gliding there. */
  to(view: ViewTransform, glide: boolean): void;
  readonly range: readonly [number, number];
  /** While true, a drag with the left button moves the chart. */
  grab: boolean;
  destroy(): void;
}

const GLIDE_MS = 220;

/** Wraps d3-zoom once; everything else sees plain `{x, y, k}`. */
export function moves(frame: HTMLElement, onmove: (view: ViewTransform, byHand: boolean) => void, onrest: () => void): Moves {
  let bounds: Box = { x0: 0, y0: 0, x1: 1, y1: 1 };
  let size: Size = { width: 1, height: 1 };
  let range: readonly [number, number] = [0.01, 100];
  let grab = false;
  let gliding = 0;

  const behaviour = zoom<HTMLElement, unknown>()
    .filter((event: Event) => {
      if (event.type === 'dblclick') return false;
      if (event instanceof WheelEvent) return !event.shiftKey;
      if (window.TouchEvent && event instanceof TouchEvent) return event.touches.length > 1;
      return event instanceof MouseEvent && (event.button === 1 || (event.button === 0 && grab));
    })
    .extent(() => [[0, 0], [size.width, size.height]])
    .constrain((transform) => {
      const held = heldInSight(transform, bounds, size);
      return held.x === transform.x && held.y === transform.y ? transform : zoomIdentity.translate(held.x, held.y).scale(held.k);
    })
    .on('zoom', (event: D3ZoomEvent<HTMLElement, unknown>) => {
      const { x, y, k } = event.transform;
      if (event.sourceEvent) stopGliding();
      onmove({ x, y, k }, Boolean(event.sourceEvent));
    })
    .on('end', () => {
      if (gliding === 0) onrest();
    });
  const selection = select(frame).call(behaviour);

  function set(view: ViewTransform): void {
    behaviour.transform(selection, zoomIdentity.translate(view.x, view.y).scale(view.k));
  }
  function stopGliding(): void {
    if (gliding !== 0) cancelAnimationFrame(gliding);
    gliding = 0;
  }
  function glide(from: ViewTransform, to: ViewTransform): void {
    let start: number | null = null;
    const step = (now: number): void => {
      start ??= now;
      const t = Math.min((now - start) / GLIDE_MS, 1);
      if (t >= 1) gliding = 0;
      else gliding = requestAnimationFrame(step);
      set(between(from, to, 1 - (1 - t) ** 3));
    };
    gliding = requestAnimationFrame(step);
  }
  function pan(event: WheelEvent): void {
    if (!event.shiftKey) return;
    event.preventDefault();
    const unit = event.deltaMode === 1 ? 24 : 1;
    behaviour.translateBy(selection, (-(event.deltaX || event.deltaY) * unit) / current().k, 0);
  }
  function current(): ViewTransform {
    return (frame as HTMLElement & { __zoom: ViewTransform }).__zoom;
  }
  /** The middle button would scroll the page by itself. */
  function noAutoscroll(event: MouseEvent): void {
    if (event.button === 1) event.preventDefault();
  }
  frame.addEventListener('wheel', pan, { passive: false });
  frame.addEventListener('mousedown', noAutoscroll);

  return {
    limit(nextBounds, cellWidthMm, nextSize) {
      bounds = nextBounds;
      size = nextSize;
      range = scaleRange(bounds, size, cellWidthMm);
      behaviour.scaleExtent([range[0], range[1]]);
    },
    to(view, gently) {
      stopGliding();
      const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
      if (gently && !still) glide(current(), view);
      else set(view);
    },
    get range() {
      return range;
    },
    get grab() {
      return grab;
    },
    set grab(next) {
      grab = next;
    },
    destroy() {
      stopGliding();
      selection.on('.zoom', null);
      frame.removeEventListener('wheel', pan);
      frame.removeEventListener('mousedown', noAutoscroll);
    },
  };
}
