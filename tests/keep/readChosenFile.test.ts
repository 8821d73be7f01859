import { describe, expect, it } from 'vitest';
import { writePatternFile } from '../../src/engine/1-pattern/file.ts';
import { FILE_VERSION } from '../../src/engine/1-pattern/migrations/migrateUp.ts';
import { fileName, readChosenFile, WRITTEN_BYTES } from '../../src/keep/readChosenFile.ts';
import { SMALL } from '../engine/1-pattern/smallPattern.ts';

const file = (name: string, ...parts: ConstructorParameters<typeof Blob>[0] & object) => new File(parts, name);
const FILE = writePatternFile(SMALL);

describe('a chosen file', () => {
  it.each(['quay.turnwork.json', 'quay.json', 'quay.txt', ''])('is a pattern if it is one, under the name "%s"', async (name) => {
    expect(await readChosenFile(file(name, FILE))).toEqual({ kind: 'pattern', pattern: SMALL, from: FILE_VERSION });
  });

  it.each<[string, string, BlobPart]>([
    ['plain text', 'Row 1: sc in next 6 sts.', 'Row 1: sc in next 6 sts.'],
    ['text that begins with a bracket', '[Cuff]\nRow 1: sc 6.', '[Cuff]\nRow 1: sc 6.'],
    ['UTF-8 with signs', 'Rnd 1 – “sc” × 6', 'Rnd 1 – “sc” × 6'],
    ['UTF-16 with its mark', 'Row 1: sc 6', Uint8Array.from([0xff, 0xfe, ...[...'Row 1: sc 6'].flatMap((letter) => [letter.charCodeAt(0), 0])])],
    ['Windows-1252', 'Row 1 é', Uint8Array.from([...'Row 1 '].map((letter) => letter.charCodeAt(0)).concat([0xe9]))],
  ])('is a written pattern: %s', async (_, text, part) => {
    expect(await readChosenFile(file('quay.txt', part))).toEqual({ kind: 'written', text });
  });

  it.each<[string, File, string]>([
    ['nothing in it', file('a.txt', ''), 'a.txt: it is empty.'],
    ['only space in it', file('a.txt', ' \n '), 'a.txt: it is empty.'],
    ['a picture', file('a.png', Uint8Array.from([0x89, 0x50, 0, 1])), 'a.png: it is no text. A pattern file ends in .json, a written pattern in .txt; of a PDF or a word processor file, copy the text and paste it.'],
    ['a PDF', file('a.pdf', '%PDF-1.7 abc'), 'a.pdf: it is no text. A pattern file ends in .json, a written pattern in .txt; of a PDF or a word processor file, copy the text and paste it.'],
    ['broken JSON', file('a.json', '{"format": '), 'a.json: This is no pattern file: it is not JSON ('],
    ['other JSON', file('a.json', '{"a": 1}'), 'a.json: This is no pattern file: it is JSON of something else (format nothing).'],
    ['text called JSON', file('a.json', 'Row 1: sc'), 'a.json: it is no pattern file.'],
    ['a newer pattern', file('a.txt', FILE.replace(`"version": ${FILE_VERSION}`, '"version": 900')), `a.txt: This file was written by a newer Turnwork (version 900 of the format; this one knows up to ${FILE_VERSION}). Update, then open it again.`],
    ['a book of text', file('a.txt', 'sc '.repeat(WRITTEN_BYTES / 2)), 'a.txt: it is too large for a written pattern (6 MB; 4 MB is the most).'],
  ])('is refused, saying why: %s', async (_, one, reason) => {
    const chosen = await readChosenFile(one);
    expect(chosen.kind).toBe('refused');
    expect(chosen.kind === 'refused' && chosen.reason.slice(0, reason.length)).toBe(reason);
  });

  it('is refused unread when it is far too large', async () => {
    const huge = { name: 'a.json', size: 1e9, arrayBuffer: () => Promise.reject(new Error('must not be read')) };
    expect(await readChosenFile(huge)).toEqual({ kind: 'refused', reason: 'a.json: it is too large (1000 MB; 60 MB is the most).' });
  });

  it('is refused when the device can’t read it', async () => {
    const gone = { name: 'a.json', size: 10, arrayBuffer: () => Promise.reject(new Error('file moved')) };
    expect(await readChosenFile(gone)).toEqual({ kind: 'refused', reason: 'a.json: it could not be read (file moved).' });
  });
});

describe('the name of a file', () => {
  it.each([
    ['Puffin Quay', 'puffin-quay.svg'],
    ['  Crème brûlée / socks? ', 'creme-brulee-socks.svg'],
    ['Носки', 'носки.svg'],
    ['../..', 'pattern.svg'],
    ['', 'pattern.svg'],
    ['x'.repeat(90), `${'x'.repeat(60)}.svg`],
  ])('"%s" gives %s', (title, name) => {
    expect(fileName(title, '.svg')).toBe(name);
  });
});
