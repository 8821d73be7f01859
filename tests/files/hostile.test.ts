import { readFileSync } from 'node:fs';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { takeFiles } from '../../src/editor/shelf/takeFiles.ts';
import { describeOpened } from '../../src/engine/1-pattern/describeOpened.ts';
import { openPatternFile, writePatternFile } from '../../src/engine/1-pattern/file.ts';
import { packPatternFile } from '../../src/engine/1-pattern/file.ts';
import { NO_HISTORY } from '../../src/engine/1-pattern/history.ts';
import { BACKUP_LIMITS, writeBackup } from '../../src/keep/backup.ts';
import { ownMotifsOf } from '../../src/keep/ownMotifs.ts';
import { earlierOf } from '../../src/keep/earlier.ts';
import { readBackup } from '../../src/keep/readBackup.ts';
import { restoreBackup } from '../../src/keep/restoreBackup.ts';
import { NEVER_KEPT, shelfOf } from '../../src/keep/shelf.ts';
import { SMALL, rowLine } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore } from '../keep/memoryStore.ts';
import { seededNumbers } from '../setup/seededNumbers.ts';
import { MUTATIONS } from './mutatedFile.ts';

const archived = ['v001/everything.json', 'v002/everything.json', 'v003/everything.json', 'v003/small.json'].map((name) => readFileSync(new URL(name, import.meta.url), 'utf8'));
const TEXTS = [writePatternFile(SMALL), ...archived];
const WAYS = Object.keys(MUTATIONS);
const EACH = 7_200;

describe('a hundred thousand broken pattern files', () => {
  it(`come from ${WAYS.length} ways of breaking them`, () => {
    expect(WAYS.length * EACH).toBeGreaterThan(100_000);
  });

  it.each(WAYS)('are opened as what they are or refused with the place of the fault, never thrown: %s', (way) => {
    const draw = seededNumbers(8_800 + WAYS.indexOf(way));
    const tally = { ok: 0, refused: 0 };
    for (let i = 0; i < EACH; i++) {
      // Small files mostly: what is wrong with a file doesn't hang on its length.
      const text = MUTATIONS[way]!(i % 24 === 0 ? TEXTS[1 + (i % 4)]! : TEXTS[0]!, draw);
      const opened = openPatternFile(text);
      if (opened.kind === 'ok') {
        tally.ok++;
        if (i % 16 === 0 && !openPatternFile(writePatternFile(opened.pattern)).kind.startsWith('ok')) expect.fail(`opens, but not again: ${text}`);
        continue;
      }
      tally.refused++;
      if (!/^This .+\.$/s.test(describeOpened(opened))) expect.fail(`no sentence for ${JSON.stringify(opened)}`);
      if (opened.kind === 'damaged' && opened.path === '' && !/characters|nesting/.test(opened.expected)) expect.fail(`no path for ${JSON.stringify(opened)}`);
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
    // Each way does break files.
    expect(tally.refused).toBeGreaterThan(EACH / 100);
    expect(tally.ok + tally.refused).toBe(EACH);
  });

  it('change nothing on the shelf when they are chosen', async () => {
    const store = memoryStore();
    const shelf = shelfOf(store, 'one');
    await shelf.put({ pattern: SMALL, history: NO_HISTORY, pictureSvg: '', at: 1 }, NEVER_KEPT);
    const before = structuredClone(store.values);
    const draw = seededNumbers(77);
    const restore = (backup: Parameters<typeof restoreBackup>[0]) => restoreBackup(backup, { shelf, earlier: earlierOf(store), own: ownMotifsOf(store), newId: () => 'new', picture: () => '' });
    let refused = 0;
    for (let i = 0; i < 1_500; i++) {
      const text = MUTATIONS[WAYS[i % WAYS.length]!]!(TEXTS[0]!, draw);
      const taken = await takeFiles([new File([text], `broken-${i}.json`)], restore);
      refused += taken.refused.length;
      for (const reason of taken.refused) expect(reason).toMatch(new RegExp(`^broken-${i}\\.json: .+\\.$`, 's'));
    }
    expect(refused).toBeGreaterThan(900);
    expect(store.values).toEqual(before);
  });
});

describe('files that are made to burst', () => {
  const sections = (rows: number, lines: number) => [{ ...SMALL.sections[0]!, recipe: null, lines: Array.from({ length: lines }, (_, i) => rowLine(`l${i}`, 'ch 1, turn, sc in each st across.', rows)) }];
  const bomb = { ...SMALL, placements: [], cells: [], sections: sections(100_000, 50) };

  it.each<[string, () => File, RegExp]>([
    ['a few lines that stand for millions of rows', () => new File([writePatternFile(bomb)], 'a.json'), /^a\.json: it asks for more work than any device does: sections\.0\.lines\.0\.label\.rows has 100000 rows up to here, expected at most 20000 rows in the whole pattern\.$/],
    ['two million brackets', () => new File([`{"format":"turnwork-pattern","version":1,"pattern":${'['.repeat(2_000_000)}`], 'a.json'), /nesting deeper than 24/],
    ['two hundred thousand fields', () => new File([`{"format":"turnwork-pattern","version":3,"pattern":{${Array.from({ length: 200_000 }, (_, i) => `"f${i}":1`).join(',')}}}`], 'a.json'), /damaged at pattern\./],
    ['a file of 80 MB', () => ({ name: 'a.json', size: 80e6, slice: () => new Blob(['{"a"']), arrayBuffer: () => Promise.reject(new Error('must not be read')) }) as unknown as File, /^a\.json: it is too large \(80 MB; 60 MB is the most\)\.$/],
    ['an archive of 300 MB', () => ({ name: 'a.zip', size: 300e6, slice: () => new Blob(['PK\u0003\u0004']), arrayBuffer: () => Promise.reject(new Error('must not be read')) }) as unknown as File, /^a\.zip: it is too large \(300 MB; 200 MB is the most\)\.$/],
    ['a word processor’s archive', () => new File([new Uint8Array(zipSync({ 'word/document.xml': strToU8('<w/>') }))], 'a.docx'), /^a\.docx: it is no text\./],
  ])('are refused: %s', async (_, file, reason) => {
    const taken = await takeFiles([file()], () => Promise.reject(new Error('must not be brought back')));
    expect(taken).toMatchObject({ patterns: [], written: null, restored: [] });
    expect(taken.refused[0]).toMatch(reason);
  });

  it('an archive whose small entries are huge unpacked is refused before it is unpacked', () => {
    const huge = zipSync({ 'shelf.json': strToU8('{}'), 'patterns/001.json': new Uint8Array(BACKUP_LIMITS.fileBytes + 1) });
    expect(huge.length).toBeLessThan(200_000);
    expect(readBackup(huge)).toEqual({ kind: 'refused', reason: 'it is too large unpacked (patterns/001.json: 60 MB; 60 MB is the most).' });
  });

  it('an archive that lies about the size of its entries is not unpacked beyond what it says', () => {
    const bytes = zipSync({ 'shelf.json': strToU8(JSON.stringify({ format: 'turnwork-shelf', version: 1, patterns: [], motifs: null })), 'patterns/001.json': new Uint8Array(5_000_000) });
    const name = 'patterns/001.json';
    // The size unpacked stands 22 bytes before the name in the central directory (APPNOTE 6.3, 4.3.12) and 8 before it in the local header.
    const view = new DataView(bytes.buffer);
    const text = new TextDecoder('latin1').decode(bytes);
    for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) view.setUint32(at - (text.lastIndexOf('PK\u0001\u0002', at) > text.lastIndexOf('PK\u0003\u0004', at) ? 22 : 8), 100, true);
    const read = readBackup(bytes);
    expect(['ok', 'refused']).toContain(read.kind);
    expect(read.kind === 'ok' && read.patterns).toEqual(read.kind === 'ok' ? [] : false);
  });
});

describe('broken backups', () => {
  const whole = writeBackup({ patterns: [{ pattern: SMALL, history: NO_HISTORY, createdAt: 1, keptAt: 2, putAwayAt: null, earlier: [{ at: 1, name: null, text: packPatternFile(SMALL) }] }, { pattern: { ...SMALL, id: 'cap' }, history: null, createdAt: 1, keptAt: 2, putAwayAt: 3, earlier: [] }], motifs: [] }, 1_700_000_000_000).bytes;

  it('three thousand of them are read or refused in words, never thrown, and bring back only what was in them', () => {
    const draw = seededNumbers(31_337);
    const tally = { ok: 0, faults: 0, refused: 0, noBackup: 0 };
    for (let i = 0; i < 3_000; i++) {
      const bytes = i % 3 === 0 ? whole.slice(0, Math.floor(draw() * whole.length)) : whole.slice();
      if (i % 3 !== 0) for (let k = 0; k <= i % 5; k++) bytes[Math.floor(draw() * bytes.length)] = Math.floor(draw() * 256);
      const read = readBackup(bytes);
      tally[read.kind]++;
      if (read.kind === 'refused' && !/^(it |shelf\.json)/.test(read.reason)) expect.fail(read.reason);
      if (read.kind !== 'ok') continue;
      if (read.faults.length > 0) tally.faults++;
      for (const { pattern } of read.patterns) if (writePatternFile({ ...pattern, id: SMALL.id }) !== TEXTS[0]) expect.fail(`another pattern: ${JSON.stringify(pattern)}`);
    }
    expect(tally.refused).toBeGreaterThan(1_000);
    expect(tally.faults).toBeGreaterThan(100);
  });
});
