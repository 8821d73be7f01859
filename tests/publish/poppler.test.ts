import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demo, published } from './demo.ts';
import { pdfOf } from './pdfOf.ts';

const here = ['pdfinfo', 'pdffonts', 'pdftotext', 'pdftoppm'].every((program) => spawnSync(program, ['-v']).status === 0);
if (!here) console.warn('PDF as poppler reads it: poppler is not on this machine; pdf.js alone was asked (writePdf.test.ts).');

const PAPERS = [['a4', /(595\.27\d* x 841\.89|841\.89 x 595\.27\d*) pts \(A4\)/], ['letter', /(612 x 792|792 x 612) pts \(letter\)/]] as const;

describe.runIf(here)('PDF as poppler reads it', () => {
  const folder = mkdtempSync(join(tmpdir(), 'turnwork-poppler-'));
  const run = (program: string, ...args: string[]): string => execFileSync(program, args, { encoding: 'utf8', cwd: folder });
  const publications = new Map<string, ReturnType<typeof published>>();

  beforeAll(async () => {
    for (const [paper] of PAPERS) {
      const publication = published(demo(), { paper, sizes: 0, parts: ['booklet', 'words', 'charts', 'legend'], charts: ['colour'], mmPerStitch: 6 });
      publications.set(paper, publication);
      writeFileSync(join(folder, `${paper}.pdf`), await pdfOf(publication.sheets));
    }
  }, 30_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(PAPERS)('has pages of the size of %s and nothing to complain of', (paper, size) => {
    const done = spawnSync('pdfinfo', [`${paper}.pdf`, '-f', '1', '-l', '99'], { cwd: folder, encoding: 'utf8' });
    expect(done.stderr).toBe('');
    const sizes = done.stdout.split('\n').filter((line) => /^Page +\d+ size/.test(line));
    expect(sizes).toHaveLength(publications.get(paper)!.sheets.length);
    sizes.forEach((line) => expect(line).toMatch(size));
    expect(done.stdout).toMatch(/Tagged: +yes/);
    expect(done.stdout).not.toMatch(/CreationDate|ModDate/);
  });

  it('is read in the order of its structure: heads with what they head, cells row by row, rows of the pattern one by one', () => {
    const read = run('pdfinfo', '-struct-text', 'a4.pdf').replace(/\s+/g, ' ');
    expect(read).toMatch(/H3 \(block\) "Sizes" Table \(block\) TR TH: \/Scope \/Column "Finished" TH: \/Scope \/Column "S" TR TH: \/Scope \/Row "Foot, around" TD "26\.7 cm \(10½ in\)"/);
    expect(read).toMatch(/TR TH: \/Scope \/Row "sc" TD "single crochet"/);
    expect(read).toMatch(/P \(block\) "Row 6 ch 1, turn, /);
  });

  it('has its fonts embedded, in part, with what their letters mean', () => {
    const rows = run('pdffonts', 'a4.pdf').trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThan(2);
    rows.forEach((row) => expect(row).toMatch(/^[A-Z]{6}\+(Literata|AlegreyaSans|DejaVuSans)\S* +CID TrueType +Identity-H +yes yes yes /));
  });

  it('says the written pattern’s words', () => {
    const { files, name } = publications.get('a4')!;
    const written = files.find((file) => file.name === `${name}.txt`)!.text;
    const bare = (text: string): string => text.replace(/[\s*]+/g, '');
    const printed = bare(run('pdftotext', '-raw', 'a4.pdf', '-'));
    // Lines of rows; page ends may stand within one, so each is looked for in pieces of four words.
    const rows = written.split('\n').filter((line) => /^(Row|Rnd)s? \d/.test(line.trim()));
    expect(rows.length).toBeGreaterThan(20);
    const missing = rows.flatMap((row) => row.replace(/^\s*(Rows?|Rnds?) [\d-]+( \([RW]S\))?: /, '').match(/(\S+ ){4}/g) ?? []).filter((words) => !printed.includes(bare(words)));
    expect(missing).toEqual([]);
  });

  it.each(PAPERS)('has a bar of 100 mm on %s that is 100 mm long in the raster', (paper) => {
    const { sheets } = publications.get(paper)!;
    const index = sheets.findIndex(({ svg }) => svg.includes('100 mm'));
    expect(index).toBeGreaterThanOrEqual(0);
    const dpi = 508;
    const perMm = dpi / 25.4;
    const { heightMm } = sheets[index]!;
    run('pdftoppm', '-r', `${dpi}`, '-f', `${index + 1}`, '-l', `${index + 1}`, '-y', `${Math.round((heightMm - 16) * perMm)}`, '-H', `${Math.round(8 * perMm)}`, '-x', '0', '-W', `${Math.round(130 * perMm)}`, '-singlefile', '-gray', '-png', `${paper}.pdf`, `bar-${paper}`);
    const { width, height, data } = PNG.sync.read(readFileSync(join(folder, `bar-${paper}.png`)));
    // The longest dark stretch in any line of pixels is the bar, with half a line's width (0.25 mm) beyond either end.
    let longest = 0;
    for (let y = 0; y < height; y++) {
      for (let x = 0, run = 0; x < width; x++) {
        run = data[(y * width + x) * 4]! < 128 ? run + 1 : 0;
        longest = Math.max(longest, run);
      }
    }
    expect(Math.abs(longest / perMm - 0.25 - 100)).toBeLessThan(0.3);
  });
});
