import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { publishAskedFor } from '../../src/cli/publishOptions.ts';
import { defaultChoices } from '../../src/engine/publish/publishChoices.ts';
import { demo } from '../publish/demo.ts';
import { readPdf } from '../publish/readPdf.ts';

const root = resolve(import.meta.dirname, '../..');
let folder = '';
const at = (name: string): string => join(folder, name);

function turnwork(...args: string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/turnwork.ts', ...args], { cwd: root, encoding: 'utf8' });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

const DISC = 'Title: Coaster\nTerms: US\nYarn A: slate #4b5a6b\n\nDISC (in rounds)\nRnd 1: ch 2, 6 sc in 2nd ch from hook. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'turnwork-publish-cli-'));
  writeFileSync(at('coaster.txt'), DISC);
  writeFileSync(at('wrong.txt'), DISC.replace('(12 sc)', '(13 sc)').replace('Coaster', 'Wrong'));
  writeFileSync(at('same.txt'), DISC);
  writeFileSync(at('broken.json'), '{"format": "something else"}');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('turnwork publish', () => {
  it('publishes many, names the ones it can’t at the end, and ends with the worst of all', async () => {
    const { code, out, err } = turnwork('publish', at('coaster.txt'), at('broken.json'), at('wrong.txt'), at('gone.txt'), at('same.txt'), '--out', at('many'), '--paper', 'a4');
    expect(code).toBe(2);
    expect(out.trim().split('\n').map((line) => line.slice(folder.length + 1))).toEqual(['many/coaster.pdf', 'many/wrong.pdf', 'many/coaster-2.pdf']);
    expect(err).toMatch(/^2 of 5 files were not published:\n {2}\S*broken\.json: .{10,}\n {2}\S*gone\.txt: .*can't be opened/);
    const read = await readPdf(new Uint8Array(readFileSync(at('many/coaster.pdf'))));
    expect(read.info['Title']).toBe('Coaster');
    expect(read.pages[0]!.widthPt * 25.4 / 72).toBeCloseTo(210, 3);
    expect(readFileSync(at('many/coaster-2.pdf')).equals(readFileSync(at('many/coaster.pdf')))).toBe(true);
  }, 40_000);

  it.each([['coaster.txt', 0], ['wrong.txt', 1]])('ends with %s in %i', (file, expected) => {
    expect(turnwork('publish', at(file), '--out', at('one'), '--as', 'text').code).toBe(expected);
  });

  it('makes sheets, pictures and texts in one ZIP, with the choices asked for', () => {
    const { code, out } = turnwork('publish', at('coaster.txt'), '--out', at('zip'), '--as', 'pdf,svg,png,text', '--dpi', '60', '--zip', '--parts', 'charts,words', '--charts', 'symbol', '--paper', 'letter', '--mono', '--terms', 'uk', '--lengths', 'cm');
    expect(code).toBe(0);
    expect(out.trim()).toBe(at('zip/coaster.zip'));
    const files = unzipSync(new Uint8Array(readFileSync(at('zip/coaster.zip'))));
    const names = Object.keys(files);
    expect(names).toContain('coaster.pdf');
    expect(names).toContain('coaster.txt');
    expect(Buffer.from(files['coaster.txt']!).toString()).toMatch(/Terms: UK[^]*\b6 dc\b/);
    const svg = names.filter((name) => name.endsWith('.svg'));
    const png = names.filter((name) => name.endsWith('.png'));
    expect(png.length).toBeGreaterThan(0);
    expect(svg.length).toBeGreaterThanOrEqual(png.length);
    const picture = PNG.sync.read(Buffer.from(files[png[0]!]!));
    expect([picture.width, picture.height]).toEqual([510, 660]);
  }, 40_000);

  it('refuses pictures that are too large by name, and writes nothing', () => {
    const { code, err } = turnwork('publish', at('coaster.txt'), '--out', at('large'), '--as', 'png', '--dpi', '1200');
    expect(code).toBe(2);
    expect(err).toMatch(/coaster\.txt: “coaster\S*” would be \d+ × \d+ pixels at 1200 dpi .*choose \d+ dpi or less/);
    expect(existsSync(at('large')) ? readdirSync(at('large')) : []).toEqual([]);
  });

  it('is in the help', () => {
    expect(turnwork('--help').err).toMatch(/publish FILE\.\.\. --out DIR/);
  });
});

describe('what publish is asked', () => {
  const sock = demo();
  const choices = (...args: string[]) => {
    const asked = publishAskedFor(['sock.json', '--out', 'x', ...args]);
    return typeof asked === 'string' ? asked : asked.choicesFor(sock);
  };

  it('is the app’s own choices where nothing is said', () => {
    expect(choices()).toEqual(defaultChoices(sock));
  });

  it.each([
    [['--size', 'm'], { sizes: 1 }], [['--size', 'all'], { sizes: 'all' }], [['--mm', '5'], { mmPerStitch: 5 }], [['--mm', 'fit'], { mmPerStitch: 'fit' }], [['--steps', 'none'], { stepRows: [] }],
    [['--left-handed', '--large-print', '--mono'], { hand: 'left', largePrint: true, mono: true }], [['--style', 'short,dash'], { style: { runs: 'short', count: 'dash' } }], [['--size-charts', 'apart'], { sizeCharts: 'apart' }],
    [['--parts', 'words, errata'], { parts: ['words', 'errata'] }], [['--view', 'grid', '--symbols', 'jis'], { view: 'grid', symbols: 'jis' }],
  ])('%j', (args, made) => {
    expect(choices(...args)).toMatchObject(made);
  });

  it.each([
    [['--size', 'XXL'], /there is no size “XXL”; the pattern has S, M, L/], [['--version', 'bare'], /there is no version “bare”/], [['--as', 'docx'], /--as docx: one or more of pdf, svg, png, text/], [['--as', ''], /--as/],
    [['--dpi', '5000'], /--dpi 5000: 36 to 1200/], [['--dpi', 'x'], /--dpi x/], [['--style', 'loud'], /--style loud/], [['--steps', 'all'], /--steps all: heel or none/], [['--wings'], /wings/],
  ])('%j is refused', (args, says) => {
    expect(choices(...args)).toMatch(says);
  });

  it.each([[['--out', 'x'], /needs a FILE/], [['sock.json'], /needs --out DIR/]])('%j is too little', (args, says) => {
    expect(publishAskedFor(args)).toMatch(says);
  });

  it('leaves words it does not know to the engine, which says what it expected', () => {
    const { err, code } = turnwork('publish', at('coaster.txt'), '--out', at('odd'), '--paper', 'a5', '--mm', 'wide');
    expect(code).toBe(2);
    expect(err).toMatch(/Paper: a4, letter was expected, “a5” was found\. Width of a stitch/);
  });
});
