import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writePatternFile } from '../../src/engine/1-pattern/file.ts';
import { SOCK } from '../../src/engine/2-construct/recipes/defaults.ts';
import { measure, pieceOf, requestOf } from '../engine/2-construct/recipes/pieceOf.ts';

const root = resolve(import.meta.dirname, '../..');
const DEMO = 'tests/samples/puffin-quay/structure.txt';
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'turnwork-piece-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function turnwork(...args: string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/turnwork.ts', ...args], { cwd: root, encoding: 'utf8' });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

/** A pattern file of a sock with swatch, measurements and yarn as sold. */
function sockFile(): string {
  const measures = [measure('footGirth', 22, 25), measure('footLength', 23, 26), measure('legLength', 18, 20)];
  const { pattern } = pieceOf(requestOf({ ...SOCK, loop: { cm: 8, yarn: 'B' } }, measures));
  const piece = {
    measures, swatches: [{ id: 'one', stitch: 'sc', technique: 'plain', washed: true, stitches: 36, widthCm: 20, rows: 40, heightCm: 20, hookMm: 4, weight: 2, stretchedCm: 30, yarn: null, grams: 20, metres: 50 }],
    supplies: ['A', 'B', 'C'].map((letter) => ({ letter, weight: 3, ballGrams: 50, ballMetres: 125, price: 6 })), currency: 'EUR', wearer: 'young',
  } as const;
  const path = join(folder, 'sock.json');
  writeFileSync(path, writePatternFile({ ...pattern, sizes: ['S', 'M'], piece }));
  return path;
}

describe('turnwork piece', () => {
  it('says what a size measures and what yarn it needs', () => {
    const { code, out } = turnwork('piece', DEMO, '--size', 'M');
    expect(code).toBe(0);
    expect(out).toMatch(/^Puffin Quay, size M\n/);
    expect(out).toMatch(/round the foot +31\.1 cm \(12¼ in\) +56 sts/);
    expect(out).toMatch(/foot +25\.8 cm \(10¼ in\) +51\.5 rows/);
    expect(out).toMatch(/HEEL +turned +19 rows +28 +15\.6 × 9\.5 cm/);
    expect(out).toMatch(/A slate +\d+ m \(\d+ to \d+\); a guess, no swatch was weighed/);
    expect(out).toMatch(/guidance and not legal advice/);
  });

  it('takes the first size without one, and gives JSON of unrounded numbers', () => {
    const { code, out } = turnwork('piece', sockFile(), '--json');
    const report = JSON.parse(out) as Record<string, never> & { finished: { measure: string; cm: number; wantedCm: number | null; differenceCm: number | null }[]; yarn: { letter: string; balls: number; cost: number; guessed: boolean }[]; cost: number; cautions: { says: string }[]; findings: unknown[] };
    expect(code).toBe(0);
    expect(report['size']).toBe('S');
    const girth = report.finished.find((one) => one.measure === 'footGirth')!;
    // 22 cm are 39.6 stitches: 40 made, 22.2 cm.
    expect(girth.cm).toBeCloseTo(40 / 1.8, 9);
    expect(girth.differenceCm).toBeCloseTo(40 / 1.8 - 22, 9);
    const [a, b, c] = report.yarn;
    expect([a!.guessed, c!.balls]).toEqual([false, 0]);
    expect(report.cost).toBe(6 * (a!.balls + b!.balls));
    expect(report.cautions.map(({ says }) => says).join(' ')).toMatch(/75 mm round/);
    expect(report.findings).toEqual([]);
  });

  it('says where a finished measurement is off what was wanted, in the text', () => {
    const { out } = turnwork('piece', sockFile(), '--size', 'M');
    expect(out).toMatch(/round the foot +25\.6 cm \(10 in\) +46 sts +wanted 25 cm \(9¾ in\), \+0\.6 cm/);
    expect(out).toMatch(/in all \d+\.00 EUR/);
  });

  it('writes the schematics beside it', () => {
    const out = join(folder, 'schematics');
    const { code } = turnwork('piece', DEMO, '--size', 'L', '--out', out);
    expect(code).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['puffin-quay-schematic-flat-l.svg', 'puffin-quay-schematic-l.svg']);
    expect(readFileSync(join(out, 'puffin-quay-schematic-l.svg'), 'utf8')).toMatch(/28\.3 cm \(11 in\)|28\.2 cm \(11 in\)/);
  });

  it.each([
    ['a wrong row', ['piece', 'WRONG'], 1, /wrong: Says 12, makes 10\./],
    ['no file', ['piece', join('nowhere', 'x.txt')], 2, /can't be opened/],
    ['no such size', ['piece', DEMO, '--size', 'XXL'], 2, /There is no size “XXL”; the pattern has S, M, L/],
  ])('gives its exit code for %s', (_, args, expected, words) => {
    const wrong = join(folder, 'wrong.txt');
    writeFileSync(wrong, 'Wrong\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (12 sc)\n');
    const { code, out, err } = turnwork(...args.map((arg) => (arg === 'WRONG' ? wrong : arg)));
    expect(code).toBe(expected);
    expect(out + err).toMatch(words);
  });
});
