import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { blockLayer } from './blockLayer.ts';
import { blockFills, blockSymbols } from './blockPaths.ts';
import { blocksWithin, changedBlocks, cutBlocks, type Blocks } from './blocks.ts';
import { detailFor, FAR, type Detail } from './detail.ts';
import { glyphPen, type GlyphPen } from './glyphPen.ts';
import { printLook } from '../../engine/6-drawing/look.ts';
import type { Yarn } from '../../engine/1-pattern/pattern.ts';
import { blockPrints } from './blockPrints.ts';
import { inksOnYarns, tonedInks, type YarnInks } from './inks.ts';
import { overview } from './overview.ts';
import { UNITS_PER_MM } from './pathUnits.ts';
import { onWholePixels, visibleBox, type Size, type ViewTransform } from './viewTransform.ts';

/** What is shown on the cells. */
export type ChartView = 'colour' | 'symbols' | 'both';

/** What is to be seen. All parts are replaced, never changed in place. */
export interface Picture {
  readonly drawing: Drawing;
  readonly yarnOf: Uint8Array;
  readonly yarns: readonly Yarn[];
  readonly view: ChartView;
  /** Yarns told apart by print marks instead of colours. */
  readonly mono: boolean;
}

/** The elements that the stage draws on and moves. */
export interface StageParts {
  /** Moved by a CSS transform while a gesture runs: the chart, and what lies over it. */
  readonly layers: readonly SVGSVGElement[];
  /** The one group of each layer, scaled to the view when it rests. */
  readonly worlds: readonly SVGGElement[];
  readonly fills: SVGGElement;
  readonly prints: SVGGElement;
  readonly symbols: SVGGElement;
  readonly overview: HTMLCanvasElement;
}

/** The stage as it lies still: what labels and line widths are worked out from. */
export interface Rest {
  readonly view: ViewTransform;
  readonly size: Size;
  readonly detail: Detail;
}

/** The picture of the stitches and its movement; no framework, no pointer. */
export interface Stage {
  /** A new drawing, colouring, yarns or view; only what differs is drawn again. */
  show(picture: Picture): void;
  /** The frame's size; the next rest draws for it. */
  resize(size: Size): void;
  /** Moves the picture; blocks that come into sight are added a few a frame. */
  move(view: ViewTransform): void;
  /** The gesture is over: draws at the scale it ended with. */
  rest(): void;
  /** Where the picture stands now. */
  readonly view: ViewTransform;
  readonly size: Size;
  destroy(): void;
}

/** Blocks this near to the frame are kept in the document. */
const MARGIN_PX = 200;
/** Time for building blocks: in the frame that asks for them, in each frame after, and in each frame of a gesture. */
const FIRST_SLICE_MS = 16;
const SLICE_MS = 10;
const MOVING_SLICE_MS = 4;
/** The same for new yarns: each frame that draws a part of them costs more than building it, so that one long frame is over sooner than several. */
const YARNS_SLICE_MS = 60;
/** What has changed out of sight waits so long. */
const UNSEEN_AFTER_MS = 80;
/** Blocks added a frame while the chart moves. */
const MOVING_BLOCKS = 3;
/** Below this part of the scale at rest so much comes into sight that only the overview can keep up. */
const TOO_FAR = 0.6;

/** What a stage tells. */
export interface StagePort {
  /** The picture has been drawn at a new rest. */
  rest(rest: Rest): void;
  /** The picture moves: where it is, and where it last rested. Once a frame. */
  move(view: ViewTransform, from: ViewTransform): void;
  /** Whether changed yarns in sight wait to be drawn. */
  busy(busy: boolean): void;
}

/** Makes a stage on its elements. */
export function stage(parts: StageParts, port: StagePort): Stage {
  const shown = blockLayer(parts.fills, parts.prints, parts.symbols);
  const under = overview(parts.overview);
  let drawing: Drawing | null = null;
  /** The blocks of the detail in sight. */
  let blocks: Blocks | null = null;
  /** The drawing's blocks by their side. */
  const cuts = new Map<number, Blocks>();
  let yarnOf: Uint8Array = new Uint8Array(0);
  let yarns: readonly Yarn[] = [];
  let mono = false;
  let chartView: ChartView = 'both';
  let painted: 'cells' | 'tones' | null = null;
  let inks: YarnInks = inksOnYarns(printLook([]));
  let size: Size = { width: 0, height: 0 };
  let view: ViewTransform = { x: 0, y: 0, k: 1 };
  let restView = view;
  let bakedK = 0;
  let detail = FAR;
  let pen: GlyphPen | null = null;
  let moving = false;
  let frame = 0;
  let later = 0;
  let busy = false;
  /** Blocks to be built: those in sight, and those of the margin that have changed, which can wait. */
  const waiting = new Set<number>();
  const unseen = new Set<number>();

  function cut(of: Drawing, side: number): Blocks {
    const known = cuts.get(side) ?? cutBlocks(of, side);
    cuts.set(side, known);
    return known;
  }
  function note(): string {
    return `${detail.level} ${chartView}`;
  }
  function build(block: number): void {
    waiting.delete(block);
    unseen.delete(block);
    if (!drawing || !blocks) return;
    const fills = chartView === 'symbols' ? [] : blockFills(drawing, blocks, block, yarnOf, detail);
    const symbols = chartView === 'colour' || !pen ? [] : blockSymbols(drawing, blocks, block, yarnOf, pen, chartView === 'both' ? inks : null);
    const prints = mono && chartView !== 'symbols' && detail.level !== 'far' ? blockPrints(drawing, blocks, block, yarnOf, yarns, chartView === 'both' && detail.symbols) : null;
    shown.put(block, fills, symbols, prints, note());
  }
  /** Builds blocks for about so long, those in sight before the others; the rest follows in later frames. */
  function work(budgetMs: number): void {
    const most = moving ? MOVING_BLOCKS : Infinity;
    const end = performance.now() + budgetMs;
    let built = 0;
    for (const block of waiting.size > 0 ? waiting : unseen) {
      build(block);
      if (++built >= most || performance.now() >= end) break;
    }
    if (waiting.size > 0) return wake();
    if (unseen.size > 0) wakeLater();
    if (!moving) under.place(null);
    if (busy) port.busy((busy = false));
  }
  function wake(): void {
    if (frame === 0) frame = requestAnimationFrame(tick);
  }
  /** What is out of sight is drawn when nothing else is, unless it comes into sight now. */
  function wakeLater(): void {
    clearTimeout(later);
    if (moving) wake();
    else later = window.setTimeout(wake, UNSEEN_AFTER_MS);
  }
  function tick(): void {
    frame = 0;
    place();
    if (moving) {
      addMissing();
      port.move(view, restView);
    }
    work(moving ? MOVING_SLICE_MS : busy ? YARNS_SLICE_MS : SLICE_MS);
  }
  function place(): void {
    if (bakedK === 0) return;
    const scale = view.k / bakedK;
    const transform = scale === 1 ? `translate(${view.x}px,${view.y}px)` : `translate(${view.x}px,${view.y}px) scale(${scale})`;
    for (const layer of parts.layers) layer.style.transform = transform;
  }
  function addMissing(): void {
    if (!blocks) return;
    let missing = false;
    if (view.k / bakedK >= TOO_FAR) {
      for (const block of blocksWithin(blocks, visibleBox(view, size, MARGIN_PX / 2))) {
        if (shown.blocks.has(block)) continue;
        waiting.add(block);
        missing = true;
      }
    } else missing = true;
    under.place(missing && chartView !== 'symbols' ? view : null);
  }
  /** Draws at the scale of the view: blocks that are missing or too coarse, or all of them. */
  function bake(all: boolean): void {
    if (!drawing || size.width === 0) return;
    moving = false;
    view = onWholePixels(view, window.devicePixelRatio || 1);
    const first = bakedK === 0;
    if (bakedK !== view.k) {
      bakedK = view.k;
      for (const world of parts.worlds) world.setAttribute('transform', `scale(${bakedK / UNITS_PER_MM})`);
    }
    const next = detailFor(Math.min(drawing.cellWidthMm, drawing.cellHeightMm) * bakedK, chartView !== 'symbols');
    const isRecut = next.side !== detail.side;
    if (isRecut) for (const block of [...shown.blocks.keys()]) shown.drop(block);
    const now = (blocks = cut(drawing, next.side));
    if (next !== detail || (next.symbols && !pen)) {
      detail = next;
      pen = detail.symbols ? glyphPen(drawing, detail) : null;
    }
    parts.symbols.style.display = detail.symbols ? '' : 'none';
    parts.prints.style.display = detail.level === 'far' ? 'none' : '';
    const ground = mono && detail.level === 'far' ? 'tones' : 'cells';
    if (painted !== ground) shown.paint(ground === 'tones' ? tonedInks(inks, yarns) : inks);
    painted = ground;
    place();
    const needed = blocksWithin(now, visibleBox(view, size, MARGIN_PX));
    const keep = new Set(needed);
    for (const block of [...shown.blocks.keys()]) if (!keep.has(block)) shown.drop(block);
    waiting.clear();
    unseen.clear();
    const [midX, midY] = [(size.width / 2 - view.x) / view.k, (size.height / 2 - view.y) / view.k];
    const stale = all ? needed : needed.filter((block) => shown.blocks.get(block) !== note());
    const distance = (b: number): number => Math.hypot((now.boxes[b * 4]! + now.boxes[b * 4 + 2]!) / 2 - midX, (now.boxes[b * 4 + 1]! + now.boxes[b * 4 + 3]!) / 2 - midY);
    const atOnce = first || all || (isRecut && !under.isDrawn);
    // From the middle outward, where not all is drawn at once.
    if (!atOnce) stale.sort((a, b) => distance(a) - distance(b));
    for (const block of stale) waiting.add(block);
    under.place(!atOnce && chartView !== 'symbols' && needed.some((block) => !shown.blocks.has(block)) ? view : null);
    restView = view;
    port.rest({ view, size, detail });
    work(atOnce ? Infinity : FIRST_SLICE_MS);
  }

  return {
    show(picture) {
      const newDrawing = picture.drawing !== drawing;
      const newView = picture.view !== chartView;
      const newColours = picture.yarns !== yarns || picture.mono !== mono;
      const yarnsBefore = yarnOf;
      yarnOf = picture.yarnOf;
      chartView = picture.view;
      if (newColours) {
        yarns = picture.yarns;
        mono = picture.mono;
        inks = inksOnYarns(printLook(yarns, { mono }));
        painted = null;
      }
      if (newDrawing) {
        drawing = picture.drawing;
        cuts.clear();
        [blocks, pen] = [null, null];
      }
      if (!drawing) return;
      const of = drawing;
      if (newDrawing || newColours) under.reset(of, () => cut(of, FAR.side), yarnOf, mono ? tonedInks(inks, yarns).cells : inks.cells);
      else under.redraw(yarnOf);
      if (newDrawing || newView || newColours) return bake(true);
      if (!blocks) return;
      const changed = changedBlocks(blocks, of.stitches.stitch, yarnsBefore, yarnOf);
      const inSight = new Set(blocksWithin(blocks, visibleBox(view, size, 0)));
      for (const block of changed) if (shown.blocks.has(block)) (inSight.has(block) ? waiting : unseen).add(block);
      work(YARNS_SLICE_MS);
      if (!busy && waiting.size > 0) port.busy((busy = true));
    },
    resize(next) {
      size = next;
    },
    move(next) {
      view = onWholePixels(next, window.devicePixelRatio || 1);
      moving = true;
      wake();
    },
    rest: () => bake(false),
    get view() {
      return view;
    },
    get size() {
      return size;
    },
    destroy() {
      if (frame !== 0) cancelAnimationFrame(frame);
      clearTimeout(later);
      under.destroy();
      shown.clear();
    },
  };
}
