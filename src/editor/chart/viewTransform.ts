import type { Box } from '../../engine/5-layout/layout.ts';

/** Where the drawing stands on the screen: px = mm × k + (x, y). An immutable value. */
export interface ViewTransform {
  readonly x: number;
  readonly y: number;
  /** CSS pixels a millimetre. */
  readonly k: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How a chart is put into its frame. */
export type Fit = 'whole' | 'width' | 'actual';

/** CSS pixels a millimetre at true size: 96 px an inch (CSS Values and Units 4, absolute lengths). */
export const TRUE_SCALE = 96 / 25.4;

/** The view that shows `bounds` as asked for, centred; `pad` px stay free on each side. `width` and `actual` begin at the bottom, where rows begin. */
export function fitView(bounds: Box, size: Size, fit: Fit, pad: number): ViewTransform {
  const width = Math.max(bounds.x1 - bounds.x0, 1e-6);
  const height = Math.max(bounds.y1 - bounds.y0, 1e-6);
  const kWidth = Math.max(size.width - 2 * pad, 1) / width;
  const kHeight = Math.max(size.height - 2 * pad, 1) / height;
  const k = fit === 'actual' ? TRUE_SCALE : fit === 'width' ? kWidth : Math.min(kWidth, kHeight);
  const x = (size.width - (bounds.x0 + bounds.x1) * k) / 2;
  const tall = height * k > size.height - 2 * pad + 0.5;
  const y = tall ? size.height - pad - bounds.y1 * k : (size.height - (bounds.y0 + bounds.y1) * k) / 2;
  return { x, y, k };
}

/** Least and greatest scale: half the whole chart, or true size if that is less; and one cell 96 px wide. */
export function scaleRange(bounds: Box, size: Size, cellWidthMm: number): readonly [number, number] {
  const whole = fitView(bounds, size, 'whole', 0).k;
  return [Math.min(whole / 2, TRUE_SCALE / 2), Math.max(96 / cellWidthMm, whole)];
}

/** The point in mm under a point in px. */
export function toMm(view: ViewTransform, xPx: number, yPx: number): readonly [number, number] {
  return [(xPx - view.x) / view.k, (yPx - view.y) / view.k];
}

/** The part of the drawing that a frame of this size shows, widened by `marginPx` on each side, mm. */
export function visibleBox(view: ViewTransform, size: Size, marginPx: number): Box {
  const [x0, y0] = toMm(view, -marginPx, -marginPx);
  const [x1, y1] = toMm(view, size.width + marginPx, size.height + marginPx);
  return { x0, y0, x1, y1 };
}

/** The same view, moved as little as keeps part of the chart in sight: at least a third of the frame, or all of a smaller chart. */
export function heldInSight(view: ViewTransform, bounds: Box, size: Size): ViewTransform {
  return {
    k: view.k,
    x: held(view.x, bounds.x0 * view.k, bounds.x1 * view.k, size.width),
    y: held(view.y, bounds.y0 * view.k, bounds.y1 * view.k, size.height),
  };
}

function held(offset: number, start: number, end: number, extent: number): number {
  const keep = Math.min(extent / 3, end - start);
  return Math.min(Math.max(offset, keep - end), extent - keep - start);
}

/** The same scale, with the point (mm) in the middle of the frame. */
export function centredOn(view: ViewTransform, xMm: number, yMm: number, size: Size): ViewTransform {
  return { k: view.k, x: size.width / 2 - xMm * view.k, y: size.height / 2 - yMm * view.k };
}

/** The same scale, moved as little as brings `box` (mm) into the frame with `pad` px around it. */
export function withBoxInSight(view: ViewTransform, box: Box, size: Size, pad: number): ViewTransform {
  return {
    k: view.k,
    x: view.x + shift(box.x0 * view.k + view.x, box.x1 * view.k + view.x, size.width, pad),
    y: view.y + shift(box.y0 * view.k + view.y, box.y1 * view.k + view.y, size.height, pad),
  };
}

function shift(start: number, end: number, extent: number, pad: number): number {
  if (end - start > extent - 2 * pad) return (extent - start - end) / 2;
  if (start < pad) return pad - start;
  return end > extent - pad ? extent - pad - end : 0;
}

/** Scaled by `factor` about a point of the frame (px), within the range of scales. */
export function scaledAbout(view: ViewTransform, factor: number, xPx: number, yPx: number, range: readonly [number, number]): ViewTransform {
  const k = Math.min(Math.max(view.k * factor, range[0]), range[1]);
  const [xMm, yMm] = toMm(view, xPx, yPx);
  return { k, x: xPx - xMm * k, y: yPx - yMm * k };
}

/** Part `t` (0 to 1) of the way from one view to another: scale in equal ratios, the fixed point of the zoom stays put. */
export function between(from: ViewTransform, to: ViewTransform, t: number): ViewTransform {
  if (t >= 1) return to;
  const k = from.k * (to.k / from.k) ** t;
  const part = Math.abs(to.k - from.k) < 1e-9 * from.k ? t : (k - from.k) / (to.k - from.k);
  return { k, x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
}

/** Moved to whole device pixels, so that a raster that is only shifted stays sharp. */
export function onWholePixels(view: ViewTransform, pixelRatio: number): ViewTransform {
  return { k: view.k, x: Math.round(view.x * pixelRatio) / pixelRatio, y: Math.round(view.y * pixelRatio) / pixelRatio };
}
