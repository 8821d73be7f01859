import { readFileSync } from 'node:fs';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openPatternFile, packPatternFile } from '../../src/engine/1-pattern/file.ts';
import { NO_HISTORY } from '../../src/engine/1-pattern/history.ts';
import { textOf, writeBackup, type Backup } from '../../src/keep/backup.ts';
import { earlierOf } from '../../src/keep/earlier.ts';
import { ownMotifsOf } from '../../src/keep/ownMotifs.ts';
import { readBackup } from '../../src/keep/readBackup.ts';
import { restoreBackup, restoredWords } from '../../src/keep/restoreBackup.ts';
import { NEVER_KEPT, shelfOf } from '../../src/keep/shelf.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore, type MemoryStore } from './memoryStore.ts';
import { START, titled } from './titles.ts';

const NOW = 1_750_000_000_000;
const version = (at: number, name: string | null, title: string) => ({ at, name, text: packPatternFile({ ...SMALL, id: 'quay', title }) });
const worked = titled(titled(START, 'one'), 'two');
const BACKUP: Backup = {
  patterns: [
    { ...worked, createdAt: 10, keptAt: 20, putAwayAt: null, earlier: [version(18, null, 'zero and a half'), version(15, 'Before the heel', 'zero')] },
    { pattern: { ...SMALL, id: 'cap', title: 'Cap' }, history: NO_HISTORY, createdAt: 30, keptAt: 40, putAwayAt: 50, earlier: [] },
  ],
  motifs: [{ motif: { id: 'own', name: 'Gull', cells: ['AB', 'BA'] }, colours: { A: '#111111', B: '#eeeeee' }, keptAt: 5 }],
};

function parts(store: MemoryStore) {
  let ids = 0;
  return { shelf: shelfOf(store, 'one'), earlier: earlierOf(store), own: ownMotifsOf(store), newId: () => `new-${ids++}`, picture: () => '<svg/>' };
}

function read(bytes: Uint8Array) {
  const found = readBackup(bytes);
  if (found.kind !== 'ok') throw new Error(JSON.stringify(found));
  return found;
}

describe('a backup of the shelf', () => {
  it('gives back what was put into it, and each pattern is a pattern file of its own', () => {
    const bytes = writeBackup(BACKUP, NOW).bytes;
    expect(read(bytes)).toEqual({ kind: 'ok', faults: [], patterns: [BACKUP.patterns[0], { ...BACKUP.patterns[1], history: null }], motifs: BACKUP.motifs });
    const files = unzipSync(bytes);
    expect(Object.keys(files).sort()).toEqual(['earlier/001/15.json', 'earlier/001/18.json', 'history/001.json', 'motifs.json', 'patterns/001-two.turnwork.json', 'patterns/002-cap.turnwork.json', 'shelf.json']);
    expect(openPatternFile(textOf(files['patterns/002-cap.turnwork.json']!))).toMatchObject({ kind: 'ok', pattern: { id: 'cap' } });
    expect(writeBackup(BACKUP, NOW).bytes).toEqual(bytes);
  });

  it('puts patterns and motifs on an empty shelf as they were, with steps, times and what was put away', async () => {
    const store = memoryStore();
    const here = parts(store);
    expect(await restoreBackup(read(writeBackup(BACKUP, NOW).bytes), here)).toEqual({ back: 2, copies: 0, there: 0, earlier: 2, motifs: 1 });
    const { cards, putAway } = await here.shelf.list();
    expect(cards).toMatchObject([{ id: 'quay', title: 'two', createdAt: 10, keptAt: 20, pictureSvg: '<svg/>' }]);
    expect(putAway).toMatchObject([{ id: 'cap', putAwayAt: 50 }]);
    const taken = await here.shelf.take('quay');
    expect(taken.kind === 'ok' && taken.history).toStrictEqual(worked.history);
    expect(await here.own.list()).toEqual(BACKUP.motifs);
    expect(await here.earlier.list('quay')).toMatchObject([{ at: 18, name: null, pattern: { title: 'zero and a half' } }, { at: 15, name: 'Before the heel', pattern: { title: 'zero' } }]);
    expect(await here.earlier.texts('quay')).toEqual(BACKUP.patterns[0]!.earlier);
  });

  it('gives a pattern that is there just the same the earlier versions that it has not, and changes none that it has', async () => {
    const here = parts(memoryStore());
    await restoreBackup(read(writeBackup(BACKUP, NOW).bytes), here);
    await here.earlier.remove('quay', 18);
    await here.earlier.remove('quay', 15);
    await here.earlier.putBack('quay', [version(15, 'My own name for it', 'zero')]);
    expect(await restoreBackup(read(writeBackup(BACKUP, NOW).bytes), here)).toEqual({ back: 0, copies: 0, there: 2, earlier: 1, motifs: 0 });
    expect((await here.earlier.list('quay')).map(({ at, name }) => [at, name])).toEqual([[18, null], [15, 'My own name for it']]);
  });

  it('is read as it was written before earlier versions were in it', () => {
    const old = readFileSync(new URL('./shelfWithoutEarlier.zip', import.meta.url));
    expect(read(old)).toEqual({ kind: 'ok', faults: [], patterns: BACKUP.patterns.map((each, i) => ({ ...each, history: i === 0 ? each.history : null, earlier: [] })), motifs: BACKUP.motifs });
  });

  it('takes in the versions with a name, then the newest, as far as there is room, and says how many it left out', () => {
    const text = 'x'.repeat(10_000);
    const versions = [9, 8, 7, 6, 5].map((at) => ({ at, name: at === 5 ? 'kept for good' : null, text }));
    const full: Backup = { patterns: [{ ...BACKUP.patterns[1]!, earlier: versions }], motifs: [] };
    const { bytes, leftOut } = writeBackup(full, NOW, { files: 100, fileBytes: 10_000, unpackedBytes: 60_000 });
    expect(leftOut).toBe(2);
    expect(read(bytes).patterns[0]!.earlier.map(({ at }) => at)).toEqual([9, 8, 5]);
    expect(writeBackup(full, NOW, { files: 4, fileBytes: 10_000, unpackedBytes: 60_000 }).leftOut).toBe(3);
    expect(writeBackup(full, NOW, { files: 100, fileBytes: 9_999, unpackedBytes: 60_000 }).leftOut).toBe(5);
  });

  it('changes nothing that is there: the same is left, another state comes as a copy', async () => {
    const store = memoryStore();
    const here = parts(store);
    await here.shelf.put({ ...titled(START, 'grown since'), pictureSvg: '', at: 99 }, NEVER_KEPT);
    await here.shelf.put({ pattern: BACKUP.patterns[1]!.pattern, history: NO_HISTORY, pictureSvg: '', at: 99 }, NEVER_KEPT);
    await here.own.putBack({ ...BACKUP.motifs[0]!, motif: { ...BACKUP.motifs[0]!.motif, name: 'Tern' } });
    const before = structuredClone(store.values);
    const restored = await restoreBackup(read(writeBackup(BACKUP, NOW).bytes), here);
    expect(restored).toEqual({ back: 0, copies: 1, there: 1, earlier: 2, motifs: 1 });
    for (const [key, value] of before) expect(store.values.get(key)).toEqual(value);
    const copy = await here.shelf.take('new-0');
    expect(copy).toMatchObject({ kind: 'ok', pattern: { id: 'new-0', title: 'two, restored' } });
    expect(copy.kind === 'ok' && copy.history).toStrictEqual(worked.history);
    expect((await here.own.list()).map(({ motif }) => motif.name).sort()).toEqual(['Gull', 'Tern']);
  });

  it('names what in it is damaged or missing, and brings back the rest', () => {
    const files = unzipSync(writeBackup(BACKUP, NOW).bytes);
    const changed = { ...files, 'patterns/001-two.turnwork.json': new TextEncoder().encode(textOf(files['patterns/001-two.turnwork.json']!).replace('"two"', '"six"')) };
    expect(read(zipSync(changed))).toMatchObject({ patterns: [{ pattern: { id: 'cap' } }], faults: ['patterns/001-two.turnwork.json is damaged: it is not what its checksum says.'] });
    expect(read(zipSync({ ...files, 'earlier/001/15.json': new Uint8Array() }))).toMatchObject({ patterns: [{ earlier: [{ at: 18 }] }, {}], faults: ['earlier/001/15.json is damaged: it is not what its checksum says.'] });
    const { 'history/001.json': _, ...without } = files;
    expect(read(zipSync(without))).toMatchObject({ patterns: [{ history: null }, { pattern: { id: 'cap' } }], faults: ['history/001.json is not in the archive.'] });
  });

  it.each<[string, (contents: Record<string, unknown>) => void, string]>([
    ['a newer one', (contents) => (contents['version'] = 9), 'it was written by a newer Turnwork (version 9 of backups; this one knows up to 1). Update, then open it again.'],
    ['something else', (contents) => (contents['format'] = 'album'), 'it is an archive of something else (shelf.json has another format).'],
    ['a list that is none', (contents) => (contents['patterns'] = 7), 'shelf.json is damaged at patterns: found 7, expected a list.'],
    ['a time that is none', (contents) => ((contents['patterns'] as Record<string, unknown>[])[1]!['keptAt'] = 'noon'), 'shelf.json is damaged at patterns.1.keptAt: found "noon", expected a number.'],
  ])('is refused with the place of the fault: %s', (_, change, reason) => {
    const files = unzipSync(writeBackup(BACKUP, NOW).bytes);
    const contents = JSON.parse(textOf(files['shelf.json']!)) as Record<string, unknown>;
    change(contents);
    expect(readBackup(zipSync({ ...files, 'shelf.json': new TextEncoder().encode(JSON.stringify(contents)) }))).toEqual({ kind: 'refused', reason });
  });

  it.each([
    [{ back: 2, copies: 0, there: 0, earlier: 0, motifs: 0 }, '2 patterns brought back. Nothing that was here is changed.'],
    [{ back: 0, copies: 1, there: 3, earlier: 1, motifs: 2 }, '1 pattern brought back as a copy, because the shelf has it in another state; 3 patterns on the shelf already, just the same; 1 earlier version brought back; 2 of your own motifs brought back. Nothing that was here is changed.'],
    [{ back: 0, copies: 0, there: 0, earlier: 0, motifs: 0 }, 'There was nothing in it to bring back.'],
  ])('says what came of it: %j', (restored, words) => {
    expect(restoredWords(restored)).toBe(words);
  });
});
