import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from '@playwright/test';
import { PNG } from 'pngjs';
import { NODE_RESOURCES } from '../../src/cli/nodeResources.ts';
import { openFontBook } from '../../src/publish/fonts/fontBook.ts';
import { pixels } from '../../src/publish/pngSize.ts';
import { openPngWriter } from '../../src/publish/writePng.ts';
import { BROWSER_FLAGS, findBrowser } from '../setup/findBrowser.mjs';
import type { PrintedSheet } from '../../src/engine/publish/printedSheet.ts';

/** Draws sheets with a program for SVG; null where the program is not on this machine. */
export type Renderer = (sheets: readonly PrintedSheet[], folder: string) => Promise<Picture[] | null>;

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly data: Buffer;
}

/** Five pixels a millimetre, exactly. */
export const DPI = 127;
const FONTS = resolve(import.meta.dirname, '../../src/publish/fonts/files');

export const RENDERERS = { resvg, librsvg, inkscape, chromium: inChromium, firefox: inFirefox, 'our PDF, drawn by poppler': ourPdf } satisfies Record<string, Renderer>;

/** fontconfig told to know our fonts only, and letters not to be fitted to a screen's pixels, so that every program sets the same as on paper. */
function environment(folder: string): NodeJS.ProcessEnv {
  const file = join(folder, 'fonts.conf');
  writeFileSync(file, `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${FONTS}</dir><cachedir>${join(folder, 'fontcache')}</cachedir>
<config><rescan><int>0</int></rescan></config>
${['font', 'pattern'].map((target) => `<match target="${target}"><edit name="hinting" mode="assign"><bool>false</bool></edit><edit name="hintstyle" mode="assign"><const>hintnone</const></edit></match>`).join('')}</fontconfig>`);
  return { ...process.env, FONTCONFIG_FILE: file, HOME: folder, XDG_CONFIG_HOME: join(folder, 'config'), XDG_CACHE_HOME: join(folder, 'cache'), XDG_RUNTIME_DIR: folder };
}

function has(program: string): boolean {
  return spawnSync('which', [program]).status === 0;
}

function written(sheets: readonly PrintedSheet[], folder: string): string[] {
  mkdirSync(folder, { recursive: true });
  return sheets.map((sheet) => {
    const path = join(folder, `${sheet.name}.svg`);
    writeFileSync(path, sheet.svg);
    return path;
  });
}

function readPng(path: string): Picture {
  return PNG.sync.read(readFileSync(path));
}

async function resvg(sheets: readonly PrintedSheet[]): Promise<Picture[]> {
  const draw = await openPngWriter(NODE_RESOURCES, await openFontBook(NODE_RESOURCES));
  return sheets.map((sheet) => PNG.sync.read(Buffer.from(draw(sheet, DPI))));
}

async function librsvg(sheets: readonly PrintedSheet[], folder: string): Promise<Picture[] | null> {
  if (!has('rsvg-convert')) return null;
  const env = environment(folder);
  return written(sheets, folder).map((path, index) => {
    const [width, height] = size(sheets[index]!);
    execFileSync('rsvg-convert', ['-w', `${width}`, '-h', `${height}`, '-b', 'white', path, '-o', `${path}.rsvg.png`], { env });
    return readPng(`${path}.rsvg.png`);
  });
}

async function inkscape(sheets: readonly PrintedSheet[], folder: string): Promise<Picture[] | null> {
  if (!has('inkscape')) return null;
  const paths = written(sheets, join(folder, 'inkscape'));
  const done = spawnSync('inkscape', ['--export-type=png', `--export-dpi=${DPI}`, '--export-background=white', ...paths], { env: environment(folder), encoding: 'utf8' });
  if (done.status !== 0) throw new Error(done.stderr);
  return paths.map((path) => readPng(path.replace(/\.svg$/, '.png')));
}

/** All sheets under one another as pictures of one page. */
function page(sheets: readonly PrintedSheet[]): string {
  const pictures = sheets.map((sheet) => {
    const [width, height] = size(sheet);
    return `<img width="${width}" height="${height}" src="data:image/svg+xml;base64,${Buffer.from(sheet.svg).toString('base64')}">`;
  });
  return `<!doctype html><style>body{margin:0;background:#fff}img{display:block}</style>${pictures.join('')}`;
}

function size(sheet: PrintedSheet): [number, number] {
  return [pixels(sheet.widthMm, DPI), pixels(sheet.heightMm, DPI)];
}

async function inChromium(sheets: readonly PrintedSheet[], folder: string): Promise<Picture[] | null> {
  const found = findBrowser();
  if (!found) return null;
  const browser = await chromium.launch({ ...(found.path === null ? {} : { executablePath: found.path }), args: [...BROWSER_FLAGS, '--font-render-hinting=none'], env: environment(folder) as Record<string, string> });
  try {
    const tab = await browser.newPage({ viewport: whole(sheets) });
    await tab.setContent(page(sheets), { waitUntil: 'load' });
    return cutApart(PNG.sync.read(await tab.screenshot({ fullPage: true })), sheets);
  } finally {
    await browser.close();
  }
}

async function inFirefox(sheets: readonly PrintedSheet[], folder: string): Promise<Picture[] | null> {
  const program = ['firefox', 'firefox-esr'].find(has);
  if (program === undefined) return null;
  const [html, shot, profile] = [join(folder, 'page.html'), join(folder, 'firefox.png'), join(folder, 'profile')];
  writeFileSync(html, page(sheets));
  mkdirSync(profile, { recursive: true });
  const { width, height } = whole(sheets);
  execFileSync(program, ['--headless', '--no-remote', '--profile', profile, '--screenshot', shot, `--window-size=${width},${height}`, pathToFileURL(html).href], { env: { ...environment(folder), MOZ_HEADLESS: '1' }, stdio: 'ignore', timeout: 60_000 });
  return cutApart(readPng(shot), sheets);
}

async function ourPdf(sheets: readonly PrintedSheet[], folder: string): Promise<Picture[] | null> {
  if (!has('pdftoppm')) return null;
  const { pdfOf } = await import('./pdfOf.ts');
  const path = join(folder, 'all.pdf');
  writeFileSync(path, await pdfOf(sheets));
  execFileSync('pdftoppm', ['-r', `${DPI}`, '-png', path, join(folder, 'pdf')]);
  const digits = String(sheets.length).length;
  return sheets.map((_, index) => readPng(join(folder, `pdf-${String(index + 1).padStart(digits, '0')}.png`)));
}

function whole(sheets: readonly PrintedSheet[]): { width: number; height: number } {
  const sizes = sheets.map(size);
  return { width: Math.max(...sizes.map(([width]) => width)), height: sizes.reduce((sum, [, height]) => sum + height, 0) };
}

function cutApart(all: Picture, sheets: readonly PrintedSheet[]): Picture[] {
  let top = 0;
  return sheets.map((sheet) => {
    const [width, height] = size(sheet);
    const one = new PNG({ width, height });
    PNG.bitblt(all as PNG, one, 0, top, width, height, 0, 0);
    top += height;
    return one;
  });
}
