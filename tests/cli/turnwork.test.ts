import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'turnwork-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function turnwork(...args: string[]) {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/turnwork.ts', ...args], { cwd: root, encoding: 'utf8' });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const HEEL = `Small heel
Terms: US
Gauge: 16 sts and 18 rows = 10 cm in sc
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Sizes: S (M, L)

LEG (worked flat, then seamed)
Foundation: with A, ch 41 (45, 49).
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (40 (44, 48) sc)
Rows 2-6: ch 1, turn, sc in each st across. (40 (44, 48) sc)
Seam the side edges.

HEEL
Join B with a sl st in the 12th st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 11 sts, skip the seam, sc in next 12 sts. Leave the rest unworked. (24 sc)
Row 2: ch 1, turn, sc in next 16 sts. Leave 8 unworked. (16 sc)
Row 3: ch 1, turn, sc in next 8 sts. Leave 8 unworked. (8 sc)
Rows 4-19: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with 24 sc)
`;

describe('turnwork read', () => {
  it('prints every row as JSON, with what heel rows left open', () => {
    const { code, out } = turnwork('read', fileOf('heel.txt', HEEL), '--size', 'M', '--json');
    const report = JSON.parse(out);
    expect(code).toBe(0);
    expect(report).toMatchObject({ title: 'Small heel', sizes: ['S', 'M', 'L'], size: 'M' });
    expect(report.sections.map((section: { name: string }) => section.name.toUpperCase())).toEqual(['LEG', 'HEEL']);
    const [leg, heel] = report.sections;
    expect(leg.rows).toHaveLength(7);
    expect(leg.rows[1]).toEqual({ label: 'Row 1', number: 1, side: 'RS', made: 44, used: 44, left: { ahead: 0, behind: 0 }, stated: 44, yarns: { A: 44 } });
    expect(heel.rows[1]).toEqual({ label: 'Row 2', number: 2, side: 'WS', made: 16, used: 16, left: { ahead: 8, behind: 0 }, stated: 16, yarns: { B: 16 } });
    expect(heel.rows[2].left).toEqual({ ahead: 8, behind: 8 });
    expect(heel.rows.at(-1)).toMatchObject({ label: 'Row 19', made: 24, left: { ahead: 0, behind: 0 } });
    expect(report.findings.filter((found: { degree: string }) => found.degree === 'wrong')).toEqual([]);
  });

  it('exits 1 with findings that name section, row and the very words', () => {
    const text = HEEL.replace('(16 sc)', '(17 sc)');
    const { code, out } = turnwork('read', fileOf('wrong.txt', text), '--json');
    expect(code).toBe(1);
    const found = JSON.parse(out).findings.find((one: { degree: string }) => one.degree === 'wrong');
    expect(found).toMatchObject({ rule: 'statedCount', row: 2, found: 17, expected: 16, message: 'Says 17, makes 16.' });
    expect(found.section.toUpperCase()).toBe('HEEL');
    expect(text.slice(...(found.text as [number, number]))).toContain('17 sc');
  });

  it.each([
    ['an empty file', '', 'There is no text here'],
    ['a damaged pattern file', '{"format":"turnwork-pattern","version":1,"pattern":{"title":3}}', 'damaged'],
    ['a file from a newer version', '{"format":"turnwork-pattern","version":999,"pattern":{}}', 'newer'],
    ['JSON of something else', '{"a":1}', 'no pattern file'],
  ])('exits 2 for %s and says why', (name, text, words) => {
    const { code, err } = turnwork('read', fileOf(`${name.replaceAll(' ', '-')}.txt`, text));
    expect(code).toBe(2);
    expect(err).toContain(words);
  });

  it('exits 2 for a missing file, an unknown size, an unknown command', () => {
    expect(turnwork('read', join(folder, 'nowhere.txt'))).toMatchObject({ code: 2 });
    const size = turnwork('read', fileOf('heel.txt', HEEL), '--size', 'XXL');
    expect([size.code, size.err]).toEqual([2, 'There is no size “XXL”; the pattern has S, M, L.\n']);
    expect(turnwork('knit', 'x').err).toContain('There is no command “knit”');
  });

  it('answers a text of 5 MB in seconds', () => {
    const { code, err, out } = turnwork('read', fileOf('long.txt', `${HEEL}${'Row 9: ch 1, turn, sc in each st across.\n'.repeat(125_000)}`));
    expect(code).toBe(2);
    expect(`${err}${out}`).toMatch(/characters|too long/);
  });
});

describe('turnwork words and chart', () => {
  it('writes the pattern in UK terms, and reading that gives the same rows', () => {
    const us = fileOf('heel.txt', HEEL);
    const { code, out } = turnwork('words', us, '--terms', 'uk', '--size', 'all');
    expect(code).toBe(0);
    expect(out).toMatch(/\bdc in\b/);
    expect(out).not.toMatch(/\bsc\b/);
    const uk = fileOf('heel-uk.txt', out);
    const rows = (path: string) => JSON.parse(turnwork('read', path, '--size', 'L', '--json').out).sections.map((section: { rows: { made: number; used: number }[] }) => section.rows.map((row) => [row.made, row.used]));
    expect(rows(uk)).toEqual(rows(us));
  });

  it('draws one SVG a section, in mm, the same bytes twice', () => {
    const path = fileOf('heel.txt', HEEL);
    const out = join(folder, 'charts');
    expect(turnwork('chart', path, '--out', out, '--size', 'S', '--mm', '5').code).toBe(0);
    const names = readdirSync(out).sort();
    expect(names).toEqual(['small-heel-heel-s.svg', 'small-heel-leg-s.svg']);
    const texts = names.map((name) => readFileSync(join(out, name), 'utf8'));
    expect(texts[1]).toMatch(/<svg [^>]*width="[\d.]+mm" height="[\d.]+mm"/);
    turnwork('chart', path, '--out', join(folder, 'again'), '--size', 'S', '--mm', '5');
    expect(names.map((name) => readFileSync(join(folder, 'again', name), 'utf8'))).toEqual(texts);
  });

  it('draws in either family of symbols, and short rows in three views', () => {
    const path = fileOf('heel.txt', HEEL);
    const drawn = (name: string, ...more: string[]): string => {
      const out = join(folder, name);
      expect(turnwork('chart', path, '--out', out, '--section', 'heel', ...more).code).toBe(0);
      return readFileSync(join(out, 'small-heel-heel-s.svg'), 'utf8');
    };
    const files = [drawn('us', '--symbols', 'us'), drawn('jis', '--symbols', 'jis'), drawn('grid', '--view', 'grid'), drawn('fan', '--view', 'fan')];
    expect(new Set(files).size).toBe(4);
    expect(files[0]).toBe(drawn('plain'));
    expect(turnwork('chart', path, '--out', folder, '--symbols', 'other').err).toMatch(/--symbols other: us or jis was expected/);
    expect(turnwork('chart', path, '--out', folder, '--view', 'other').code).toBe(2);
  });

  it('cuts sheets, and names a section that is not there', () => {
    const path = fileOf('heel.txt', HEEL);
    expect(turnwork('chart', path, '--out', join(folder, 'sheets'), '--section', 'leg', '--paper', 'a4', '--mm', '12').out.split('\n').filter((line) => line.endsWith('.svg')).length).toBeGreaterThan(2);
    expect(turnwork('chart', path, '--out', folder, '--section', 'sleeve').err).toMatch(/There is no section “sleeve”/);
  });
});
