// Compares the chart with other ways of drawing it: `npm run bench -- [--repeats 7] [--only layered,bareCanvas] [--shape flat] [--capped] [--first]`.
// A new browser for each sample, the order shuffled (seeded), medians over the samples; × is the ratio to the bare canvas.
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { chromium } from '@playwright/test';
import { build, preview } from 'vite';
import { BROWSER_FLAGS, findBrowser } from '../setup/findBrowser.mjs';
import config from './vite.config.ts';
import type { Sample } from './page.ts';

const NAMES = ['layered', 'bareCanvas', 'matchedCanvas', 'd3Join', 'nodePerStitch'];
const { values } = parseArgs({
  options: {
    repeats: { type: 'string', default: '7' }, only: { type: 'string', default: NAMES.join(',') }, shape: { type: 'string', default: 'tilted' },
    columns: { type: 'string', default: '200' }, rows: { type: 'string', default: '300' }, capped: { type: 'boolean', default: false }, first: { type: 'boolean', default: false },
  },
});
const names = values.only.split(',');
const unknown = names.filter((name) => !NAMES.includes(name));
if (unknown.length > 0) throw new RangeError(`no design called ${unknown.join(', ')}; there are ${NAMES.join(', ')}`);

/** Uncapped, each frame waits for all its stages, so that gaps are the cost of a frame; capped, 60 a second as a person sees them. */
const flags = values.capped ? [] : ['--disable-frame-rate-limit', '--disable-gpu-vsync', '--run-all-compositor-stages-before-draw'];
const browser = findBrowser();
const outDir = mkdtempSync(join(tmpdir(), 'turnwork-bench-'));
await build({ ...config, configFile: false, build: { ...config.build, outDir, emptyOutDir: true } });
const server = await preview({ ...config, configFile: false, build: { outDir }, preview: { port: 0, host: 'localhost' } });
const url = server.resolvedUrls?.local[0];
if (!url) throw new Error('the bench page could not be served');

let seed = 20;
const random = (): number => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647;
const order = Array.from({ length: Number(values.repeats) }, () => names.map((name) => ({ name, at: random() })).sort((a, b) => a.at - b.at)).flat();
const samples = new Map<string, (Sample & { heapMb: number })[]>();
for (const [n, { name }] of order.entries()) {
  const page = await open(name);
  process.stderr.write(`${n + 1} of ${order.length}: ${name}\n`);
  samples.set(name, [...(samples.get(name) ?? []), page]);
}
await server.close();
rmSync(outDir, { recursive: true, force: true });
print();

async function open(name: string): Promise<Sample & { heapMb: number }> {
  const chromiumRun = await chromium.launch({ args: [...BROWSER_FLAGS.filter((flag) => flag !== '--headless'), ...flags], ...(browser?.path ? { executablePath: browser.path } : {}) });
  try {
    const page = await chromiumRun.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(`${url}?variant=${name}&shape=${values.shape}&columns=${values.columns}&rows=${values.rows}${values.first ? '&first' : ''}`);
    const sample = (await page.evaluate('measure()')) as Sample;
    const session = await page.context().newCDPSession(page);
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    return { ...sample, heapMb: usedSize / 1e6 };
  } finally {
    await chromiumRun.close();
  }
}

function quantile(numbers: readonly number[], part: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? NaN;
}

function print(): void {
  const measures: [string, (sample: Sample & { heapMb: number }) => number][] = [
    ['first picture', (sample) => sample.first],
    ['DOM elements', (sample) => sample.elements],
    ['heap, MB', (sample) => sample.heapMb],
  ];
  for (const zoom of values.first ? [] : ['whole', 'work']) {
    for (const kind of ['edit', 'editGaps', 'brush', 'recolour', 'pan', 'zoom'] as const) {
      for (const part of [0.5, 0.95]) measures.push([`${zoom}: ${kind} p${part * 100}`, (sample) => quantile(sample.zooms[zoom]![kind], part)]);
    }
    measures.push([`${zoom}: stroke's end`, (sample) => sample.zooms[zoom]!.brushEnd], [`${zoom}: settle after pan`, (sample) => sample.zooms[zoom]!.settle]);
  }
  console.log(`${Number(values.columns) * Number(values.rows)} stitches (${values.shape}), ${values.repeats} repeats, ${values.capped ? '60 Hz' : 'uncapped'}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)}, node ${process.version}; ms, median (× bare canvas)`);
  console.log(`| | ${names.join(' | ')} |\n| --- | ${names.map(() => '---').join(' | ')} |`);
  for (const [label, value] of measures) {
    const base = samples.has('bareCanvas') ? quantile(samples.get('bareCanvas')!.map(value), 0.5) : NaN;
    const cells = names.map((name) => {
      const median = quantile(samples.get(name)!.map(value), 0.5);
      const shown = median >= 100 ? median.toFixed(0) : median.toFixed(1);
      return Number.isFinite(base) && base > 0 && name !== 'bareCanvas' && !/DOM|heap/.test(label) ? `${shown} (${(median / base).toFixed(2)} ×)` : shown;
    });
    console.log(`| ${label} | ${cells.join(' | ')} |`);
  }
}
