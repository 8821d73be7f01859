import { gridIndex } from '../../src/editor/chart/gridIndex.ts';
import { fitView, scaledAbout, toMm, type ViewTransform } from '../../src/editor/chart/viewTransform.ts';
import { syntheticDrawing, syntheticYarns, YARNS } from '../editor/chart/syntheticDrawing.ts';
import type { BenchChart, Variant } from './variant.ts';
import { bareCanvas } from './variants/bareCanvas.ts';
import { d3Join } from './variants/d3Join.ts';
import { layered } from './variants/layered.ts';
import { matchedCanvas } from './variants/matchedCanvas.ts';
import { nodePerStitch } from './variants/nodePerStitch.ts';

/** What one page load measures, ms. */
export interface Sample {
  first: number;
  elements: number;
  zooms: Record<string, { edit: number[]; editGaps: number[]; brush: number[]; brushEnd: number; recolour: number[]; pan: number[]; zoom: number[]; settle: number }>;
}

const VARIANTS: Readonly<Record<string, Variant>> = { layered, nodePerStitch, d3Join, bareCanvas, matchedCanvas };
const EDITS = 40;
const FRAMES = 120;
const RECOLOURS = 6;
/** A slow design is cut off: its frames are all alike. */
const MOST_MS = 2500;
const WORK_CELL_PX = 16;

const frame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done));
const rest = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** From a change until the frame after next: script, style, layout and paint of it are done then. */
async function untilPainted(change: () => void): Promise<number> {
  await frame();
  const start = performance.now();
  change();
  await frame();
  await frame();
  return performance.now() - start;
}

/** From a change until the frame after the one in which the last of it was drawn. */
async function untilSettled(chart: BenchChart, change: () => void): Promise<number> {
  await frame();
  const start = performance.now();
  change();
  do await frame();
  while (!chart.isSettled());
  await frame();
  return performance.now() - start;
}

/** Gaps between frames while something changes in each. */
async function gaps(count: number, change: (n: number) => void): Promise<number[]> {
  const found: number[] = [];
  const end = performance.now() + MOST_MS;
  let last = await frame();
  for (let n = 0; n < count && performance.now() < end; n++) {
    change(n);
    const now = await frame();
    found.push(now - last);
    last = now;
  }
  return found;
}

async function measure(): Promise<Sample> {
  const query = new URLSearchParams(location.search);
  const shape = { columns: Number(query.get('columns') ?? 200), rows: Number(query.get('rows') ?? 300), tilted: query.get('shape') !== 'flat' };
  const drawing = syntheticDrawing(shape);
  const yarnOf = syntheticYarns(shape, YARNS.length);
  const root = document.getElementById('root')!;
  const size = { width: root.clientWidth, height: root.clientHeight };
  const whole = fitView(drawing.bounds, size, 'whole', 20);
  const find = gridIndex(drawing);
  await rest(300);

  let chart: BenchChart | null = null;
  const first = await untilPainted(() => {
    chart = VARIANTS[query.get('variant') ?? 'layered']!(root, { drawing, yarnOf, yarns: YARNS, whole });
  });
  const mounted = chart as unknown as BenchChart;
  const sample: Sample = { first, elements: document.querySelectorAll('#root *').length, zooms: {} };
  if (query.has('first')) return sample;
  await rest(1500);

  // A quarter of all stitches, two columns in eight, as a motif repeated across would have it.
  const quarter = Array.from({ length: drawing.stitches.count }, (_, item) => item).filter((item) => (item % shape.columns) % 8 < 2).map((item) => drawing.stitches.stitch[item]!);
  let view: ViewTransform = whole;
  for (const zoom of ['whole', 'work']) {
    if (zoom === 'work') {
      const factor = WORK_CELL_PX / (Math.min(drawing.cellWidthMm, drawing.cellHeightMm) * view.k);
      const from = view;
      for (let n = 1; n <= 10; n++) {
        view = scaledAbout(from, factor ** (n / 10), size.width / 2, size.height / 2, [0, Infinity]);
        mounted.view(view);
        await frame();
      }
      mounted.rest();
      await rest(1200);
    }
    const at = (x: number, y: number): number => drawing.stitches.stitch[Math.max(0, find(...toMm(view, x, y)))]!;
    const edit: number[] = [];
    for (let n = 0; n < EDITS; n++) {
      const stitch = at(size.width * (0.35 + 0.3 * ((n * 0.618) % 1)), size.height * (0.4 + 0.3 * ((n * 0.382) % 1)));
      edit.push(await untilPainted(() => mounted.edit(stitch, n % YARNS.length)));
      if (edit.reduce((sum, ms) => sum + ms, 0) > MOST_MS) break;
    }
    const editGaps = await gaps(EDITS, (n) => mounted.edit(at(size.width * (0.4 + 0.004 * n), size.height * 0.5), (n + 1) % YARNS.length));
    await rest(200);
    const stroke: number[] = [];
    const brush = await gaps(EDITS, (n) => {
      stroke.push(at(size.width * 0.4 + n * 8, size.height * 0.45 + n * 2));
      mounted.brush(stroke, 2);
    });
    const brushEnd = await untilPainted(() => mounted.endBrush(stroke, 2));
    await rest(300);
    const recolour: number[] = [];
    for (let n = 0; n < RECOLOURS; n++) {
      recolour.push(await untilSettled(mounted, () => mounted.recolour(quarter, n % YARNS.length)));
      await rest(300);
      if (recolour.reduce((sum, ms) => sum + ms, 0) > MOST_MS) break;
    }
    const from = view;
    const pan = await gaps(FRAMES, (n) => {
      view = { k: from.k, x: from.x + Math.round(300 * Math.sin(n / 19)), y: from.y + Math.round(200 * Math.sin(n / 13)) };
      mounted.view(view);
    });
    const settle = await untilPainted(() => mounted.rest());
    await rest(600);
    const start = view;
    const zoomed = await gaps(FRAMES, (n) => {
      view = scaledAbout(start, 2 ** (0.8 * Math.sin(n / 12)), size.width / 2, size.height / 2, [0, Infinity]);
      mounted.view(view);
    });
    mounted.rest();
    await rest(600);
    sample.zooms[zoom] = { edit, editGaps, brush, brushEnd, recolour, pan, zoom: zoomed, settle };
    if (zoom === 'whole') {
      view = scaledAbout(view, whole.k / view.k, size.width / 2, size.height / 2, [0, Infinity]);
      mounted.view(view);
      mounted.rest();
      await rest(600);
    }
  }
  return sample;
}

Object.assign(window, { measure });
