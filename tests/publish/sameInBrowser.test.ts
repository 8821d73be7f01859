import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium } from '@playwright/test';
import { build, preview, type PreviewServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NODE_RESOURCES } from '../../src/cli/nodeResources.ts';
import { openPatternFile } from '../../src/engine/1-pattern/file.ts';
import { defaultChoices } from '../../src/engine/publish/publishChoices.ts';
import { publishSteps } from '../../src/engine/publish/publishPattern.ts';
import type { MadeFile } from '../../src/publish/archive.ts';
import { publishJob } from '../../src/publish/publishJob.ts';
import type { PublishOrder } from '../../src/publish/publishOrder.ts';
import type { FromPublishWorker } from '../../src/publish/publishWorkerProtocol.ts';
import { BROWSER_FLAGS, findBrowser } from '../setup/findBrowser.mjs';

const root = resolve(import.meta.dirname, '../..');
const found = findBrowser();

/** The demo with everything that differs from machine to machine if anything does: PDF, pictures, texts, all in a ZIP. */
function order(): PublishOrder {
  const opened = openPatternFile(readFileSync(join(root, 'static/puffin-quay.json'), 'utf8'));
  if (opened.kind !== 'ok') throw new RangeError('the demo does not open');
  const { pattern } = opened;
  return { pattern, choices: { ...defaultChoices(pattern), parts: ['booklet', 'words', 'charts', 'legend'], sizes: 0 }, outputs: ['pdf', 'png', 'text'], pngDpi: 36, zip: true };
}

if (!found) console.warn('The same bytes in a browser: no browser was found, so this was not looked at.');

/** The page starts the app's own worker and hands back what it says, bytes as base64. */
const PAGE = `
import start from '${root}/src/editor/publish/publishWorker.ts?worker';
import { APP_RESOURCES } from '${root}/src/editor/publish/appResources.ts';
const plain = (message) => message.kind === 'made' ? { ...message, files: message.files.map(({ name, bytes }) => ({ name, text: btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')) })) } : message;
globalThis.publish = (orders) => new Promise((resolve, reject) => {
  const [worker, heard] = [new start(), []];
  worker.onerror = (event) => reject(new Error(event.message));
  worker.onmessage = ({ data }) => {
    heard.push(plain(data));
    if (data.kind === 'progress' && orders.cancelAt === heard.length) worker.postMessage({ kind: 'cancel', job: 1 });
    if (data.kind !== 'progress') resolve(heard);
  };
  worker.postMessage({ kind: 'publish', job: 1, order: orders.order, resources: APP_RESOURCES });
});
document.title = 'ready';
`;

describe.runIf(found)('the worker in a browser', () => {
  let folder = '';
  let server: PreviewServer | null = null;
  const heard: { whole: Said[]; cancelled: Said[]; refused: Said[] } = { whole: [], cancelled: [], refused: [] };
  type Said = Exclude<FromPublishWorker, { kind: 'made' }> | { kind: 'made'; job: number; files: { name: string; text: string }[] };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'turnwork-publish-'));
    writeFileSync(join(folder, 'index.html'), '<!doctype html><title>waiting</title><script type="module" src="./page.js"></script>');
    writeFileSync(join(folder, 'page.js'), PAGE);
    const alias = { $engine: join(root, 'src/engine'), $publish: join(root, 'src/publish'), $editor: join(root, 'src/editor') };
    const config = { root: folder, configFile: false as const, logLevel: 'error' as const, resolve: { alias }, worker: { format: 'es' as const }, build: { outDir: join(folder, 'built'), target: 'es2022', minify: false } };
    await build(config);
    server = await preview({ ...config, preview: { port: 0, host: 'localhost' } });
    const browser = await chromium.launch({ ...(found!.path === null ? {} : { executablePath: found!.path }), args: [...BROWSER_FLAGS] });
    try {
      const page = await browser.newPage();
      await page.goto(server.resolvedUrls!.local[0]!);
      await page.waitForFunction(() => document.title === 'ready');
      const publish = (orders: { order: PublishOrder; cancelAt?: number }) => page.evaluate((given) => (globalThis as unknown as { publish: (one: unknown) => Promise<Said[]> }).publish(given), orders);
      heard.whole = await publish({ order: order() });
      heard.cancelled = await publish({ order: order(), cancelAt: 4 });
      heard.refused = await publish({ order: { ...order(), pngDpi: 1200 } });
    } finally {
      await browser.close();
    }
  }, 60_000);

  afterAll(async () => {
    await server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('makes the same bytes as the command line', async () => {
    const here = await made(order());
    const last = heard.whole.at(-1)!;
    expect(last.kind).toBe('made');
    const files = last.kind === 'made' ? last.files : [];
    expect(files.map(({ name }) => name)).toEqual(['puffin-quay.zip']);
    expect(Buffer.from(files[0]!.text, 'base64').equals(Buffer.from(here[0]!.bytes))).toBe(true);
  });

  it('says how far it is, from nothing to all, and never back', () => {
    const parts = heard.whole.flatMap((one) => (one.kind === 'progress' ? [one.progress.done / one.progress.of] : []));
    expect(parts.length).toBeGreaterThan(10);
    expect(parts[0]).toBe(0);
    expect([...parts].sort((a, b) => a - b)).toEqual(parts);
  });

  it('stops when it is told to', () => {
    expect(heard.cancelled.at(-1)).toEqual({ kind: 'cancelled', job: 1 });
    expect(heard.cancelled.length).toBeLessThan(8);
  });

  it('says why it can’t, here that pictures would be too large', () => {
    expect(heard.refused.at(-1)).toMatchObject({ kind: 'refused', job: 1 });
    expect(JSON.stringify(heard.refused.at(-1))).toMatch(/megapixels are drawn: choose \d+ dpi or less/);
  });
});

async function made(one: PublishOrder): Promise<MadeFile[]> {
  const steps = publishJob(one, NODE_RESOURCES, publishSteps);
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
  }
}
