import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { gridIndex, type FindItem } from './gridIndex.ts';
import { itemOfStitch } from './itemOfStitch.ts';
import { moves } from './moves.ts';
import { stage, type Picture, type StageParts, type StagePort } from './stage.ts';
import { stitchesBetween } from './stroke.ts';
import { touches, type ChartPointer, type StrokePhase } from './touches.ts';
import { centredOn, fitView, scaledAbout, toMm, withBoxInSight, type Fit, type Size } from './viewTransform.ts';

/** What a chart tells its owner. */
export interface ChartPort extends StagePort {
  point(stitch: number | null, info: ChartPointer): void;
  stroke(phase: StrokePhase, stitches: readonly number[], info: ChartPointer): void;
  tap(stitch: number, info: ChartPointer): void;
  rowMenu(row: number, stitch: number | null, info: ChartPointer): void;
}

/** A chart in its frame: stage, movement and pointers put together. */
export interface ChartFrame {
  show(picture: Picture): void;
  fit(fit: Fit, glide: boolean): void;
  zoomBy(factor: number): void;
  /** Brings a stitch into sight; `centre` puts it in the middle. */
  showStitch(stitch: number, centre: boolean): void;
  showRow(row: number): void;
  /** The place of a stitch on the screen, client px. */
  clientPoint(stitch: number): { readonly clientX: number; readonly clientY: number } | null;
  setGrab(grab: boolean): void;
  destroy(): void;
}

const PAD_PX = 20;

/** Starts a chart in `frame`; the first fit is made as soon as the frame has a size. */
export function chartFrame(frame: HTMLElement, parts: StageParts, firstFit: Fit, port: ChartPort): ChartFrame {
  let drawing: Drawing | null = null;
  let find: FindItem | null = null;
  let fitted: Fit | null = firstFit;
  let size: Size = { width: 0, height: 0 };
  const picture = stage(parts, port);
  const movement = moves(
    frame,
    (view, byHand) => {
      if (byHand) fitted = null;
      picture.move(view);
    },
    () => picture.rest(),
  );

  function itemAt(x: number, y: number): number {
    if (!drawing) return -1;
    find ??= gridIndex(drawing);
    return find(...toMm(picture.view, x, y));
  }
  function limit(): void {
    if (drawing && size.width > 0) movement.limit(drawing.bounds, drawing.cellWidthMm, size);
  }
  function fit(how: Fit, glide: boolean): void {
    fitted = how;
    if (drawing && size.width > 0) movement.to(fitView(drawing.bounds, size, how, PAD_PX), glide);
  }
  function rowAt(at: readonly [number, number], item: number): number | null {
    if (!drawing) return null;
    if (item >= 0) return drawing.stitches.row[item]!;
    const y = toMm(picture.view, at[0], at[1])[1];
    let nearest = drawing.cellHeightMm;
    let row: number | null = null;
    for (const mark of drawing.marks) {
      if (mark.kind !== 'text' || mark.role !== 'rowNumber' || mark.row === null) continue;
      const middle = mark.y - mark.sizeMm * 0.35;
      if (Math.abs(middle - y) >= nearest) continue;
      nearest = Math.abs(middle - y);
      row = mark.row;
    }
    return row;
  }
  function boxOf(item: number): { x0: number; y0: number; x1: number; y1: number } {
    const { corners } = drawing!.stitches;
    const xs = [0, 2, 4, 6].map((c) => corners[item * 8 + c]!);
    const ys = [1, 3, 5, 7].map((c) => corners[item * 8 + c]!);
    return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
  }

  const stopTouches = touches(frame, {
    stitches(from, to) {
      if (!drawing) return [];
      find ??= gridIndex(drawing);
      const step = Math.min(drawing.cellWidthMm, drawing.cellHeightMm) / 3;
      return stitchesBetween(find, drawing.stitches.stitch, toMm(picture.view, ...from), toMm(picture.view, ...to), step);
    },
    grabbing: () => movement.grab,
    point: port.point,
    stroke: port.stroke,
    tap: port.tap,
    menu(at, info) {
      const item = itemAt(...at);
      const row = rowAt(at, item);
      if (row !== null) port.rowMenu(row, item < 0 ? null : drawing!.stitches.stitch[item]!, info);
    },
  });

  function resized(next: Size): void {
    const before = size;
    size = next;
    if (size.width === 0 || size.height === 0) return;
    limit();
    if (!drawing) return;
    picture.resize(size);
    if (fitted) movement.to(fitView(drawing.bounds, size, fitted, PAD_PX), false);
    else {
      const [x, y] = toMm(picture.view, before.width / 2, before.height / 2);
      movement.to(centredOn(picture.view, x, y, size), false);
    }
  }
  const observer = new ResizeObserver(() => {
    if (frame.clientWidth !== size.width || frame.clientHeight !== size.height) resized({ width: frame.clientWidth, height: frame.clientHeight });
  });
  observer.observe(frame);
  let sharpness: MediaQueryList | null = null;
  function watchSharpness(): void {
    sharpness?.removeEventListener('change', sharpen);
    sharpness = matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
    sharpness.addEventListener('change', sharpen);
  }
  function sharpen(): void {
    watchSharpness();
    picture.rest();
  }
  watchSharpness();

  return {
    show(next) {
      const first = drawing === null;
      if (next.drawing !== drawing) {
        drawing = next.drawing;
        find = null;
        limit();
      }
      picture.show(next);
      if (first) resized({ width: frame.clientWidth, height: frame.clientHeight });
    },
    fit,
    zoomBy(factor) {
      fitted = null;
      movement.to(scaledAbout(picture.view, factor, size.width / 2, size.height / 2, movement.range), true);
    },
    showStitch(stitch, centre) {
      const item = drawing ? (itemOfStitch(drawing)[stitch] ?? -1) : -1;
      if (!drawing || item < 0 || size.width === 0) return;
      const view = picture.view;
      const next = centre ? centredOn(view, drawing.stitches.x[item]!, drawing.stitches.y[item]!, size) : withBoxInSight(view, boxOf(item), size, 2.5 * PAD_PX);
      if (next.x === view.x && next.y === view.y) return;
      fitted = null;
      movement.to(next, true);
    },
    showRow(row) {
      if (!drawing || size.width === 0) return;
      const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
      for (let i = 0; i < drawing.stitches.count; i++) {
        if (drawing.stitches.row[i] !== row || drawing.stitches.ghost[i] === 1) continue;
        const cell = boxOf(i);
        box.x0 = Math.min(box.x0, cell.x0);
        box.y0 = Math.min(box.y0, cell.y0);
        box.x1 = Math.max(box.x1, cell.x1);
        box.y1 = Math.max(box.y1, cell.y1);
      }
      if (box.x0 === Infinity) return;
      const view = picture.view;
      const next = withBoxInSight(view, box, size, 2 * PAD_PX);
      if (next.x === view.x && next.y === view.y) return;
      fitted = null;
      movement.to(next, true);
    },
    clientPoint(stitch) {
      const item = drawing ? (itemOfStitch(drawing)[stitch] ?? -1) : -1;
      if (!drawing || item < 0) return null;
      const corner = frame.getBoundingClientRect();
      const { x, y, k } = picture.view;
      return { clientX: corner.left + x + drawing.stitches.x[item]! * k, clientY: corner.top + y + drawing.stitches.y[item]! * k };
    },
    setGrab(grab) {
      movement.grab = grab;
    },
    destroy() {
      observer.disconnect();
      sharpness?.removeEventListener('change', sharpen);
      stopTouches();
      movement.destroy();
      picture.destroy();
    },
  };
}
