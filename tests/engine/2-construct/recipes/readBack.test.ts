import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../../src/engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { resize } from '../../../../src/engine/1-pattern/resize.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { readLine } from '../../../../src/engine/2-construct/readLine.ts';
import { DISC, PANEL, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import { sectionText } from '../../../../src/engine/2-construct/recipes/sectionText.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { wordsToText } from '../../../../src/engine/readings/words/wordsToText.ts';
import { writeWords } from '../../../../src/engine/readings/words/writeWords.ts';
import { measure, pieceOf, requestOf } from './pieceOf.ts';

const LONG = { every: 2, strands: 3, cm: 12, yarn: 'C' };
const PIECES: readonly (readonly [string, PieceSettings])[] = [
  ['a boot sock', { ...SOCK, loop: { cm: 8, yarn: 'B' }, fringe: LONG }],
  ['a sock in rounds with a shaped leg and a flap', { ...SOCK, cuff: { edge: 'posts', heightCm: 4, yarn: 'B' }, leg: { ...SOCK.leg, way: 'rounds', calf: true }, heel: { ...SOCK.heel, kind: 'flap', yarn: 'C' }, toe: { ...SOCK.toe, inStep: false, pace: 'graduated', yarn: 'C' } }],
  ['a sock with a heel set in', { ...SOCK, cuff: { edge: 'picot', heightCm: 2, yarn: 'B' }, heel: { ...SOCK.heel, kind: 'afterthought', yarn: 'C' }, toe: { ...SOCK.toe, close: 'seam' } }],
  ['a sock with a stepped heel tied at the corners', { ...SOCK, heel: { ...SOCK.heel, turn: 'stepped', step: 2, corners: true, share: 0.6, yarn: 'C' } }],
  ['a panel with bobbles', { ...PANEL, stitch: 'hdc', bobbles: { every: 5, at: 0.5 }, fringe: LONG }],
  ['a shaped tube', { ...TUBE, start: { edge: 'folded', heightCm: 3, yarn: 'B' }, end: { edge: 'posts', heightCm: 3, yarn: 'C' } }],
  ['a cap', { ...DISC, changes: 'staggered', more: 'byGauge', brim: { edge: 'backLoops', heightCm: 3, yarn: 'B' } }],
  ['a disc in double crochet', { ...DISC, stitch: 'dc' }],
  ['an oval', { kind: 'oval', yarn: 'A' }],
  ['a ball', { kind: 'ball', yarn: 'B' }],
];

const MEASURES = (['footGirth', 'footLength', 'legLength', 'calf', 'width', 'topWidth', 'length', 'height', 'endGirth'] as const).map((name, i) => measure(name, 24 + i, 26 + i, 29.5 + i));

function measuresFor(name: string) {
  return [...MEASURES, measure('across', 8, 9, 11), ...(name === 'a cap' || name === 'a shaped tube' ? [measure('girth', 50, 53, 57)] : [])];
}

/** The pattern of one size alone, without the lines that it has no rows of. */
function inOneSize(pattern: Pattern, size: number): Pattern {
  const done = applyTransaction(pattern, { label: '', at: 0, edits: [...resize(pattern, [{ name: '', from: size }])] });
  if (!done.ok) throw new Error(done.reason);
  return { ...done.pattern, sections: done.pattern.sections.map((section) => ({ ...section, lines: section.lines.filter((line) => line.kind !== 'row' || line.label.rows !== 0) })) };
}

/** Counts of every row, by section. */
function counts(pattern: Pattern, size: number) {
  const fabric = work(construct(pattern, size));
  expect(fabric.findings).toEqual([]);
  return fabric.rows.filter((row) => row.end > row.first).map((row) => [row.number, row.made]);
}

describe('rows that recipes write', () => {
  it.each(PIECES)('read as they stand, in both sets of terms: %s', (name, settings) => {
    for (const terms of ['us', 'uk'] as const) {
      const { pattern, findings } = pieceOf(requestOf(settings, measuresFor(name)), terms);
      expect(findings).toEqual([]);
      for (const section of pattern.sections) {
        for (const line of section.lines) {
          if (line.kind !== 'note') expect(readLine(line, pattern).findings).toEqual([]);
        }
      }
      // UK dc is US sc: no US word is left in a UK row.
      if (terms === 'uk') expect(pattern.sections.flatMap(({ lines }) => lines.map(({ text }) => text)).join(' ')).not.toMatch(/\bsc\b|\bhdc\b/);
    }
  });

  it.each(PIECES)('printed for one size and read again are the same rows: %s', (name, settings) => {
    const { pattern } = pieceOf(requestOf(settings, measuresFor(name)));
    pattern.sizes.forEach((_, size) => {
      const alone = inOneSize(pattern, size);
      const fabric = work(construct(alone, 0));
      expect(counts(alone, 0)).toEqual(counts(pattern, size));
      for (const terms of ['us', 'uk'] as const) {
        const text = wordsToText(writeWords({ pattern: alone, sizes: [{ size: 0, fabric, colours: colour(alone, fabric, 0) }], terms }));
        const read = patternFromText(text);
        expect(read.findings.filter(({ degree }) => degree !== 'note'), text).toEqual([]);
        expect(counts(read.pattern!, 0), text).toEqual(counts(pattern, size));
      }
    });
  });

  it.each(PIECES)('written with vectors and read again are the same rows in every size: %s', (name, settings) => {
    const { pattern } = pieceOf(requestOf(settings, measuresFor(name)));
    const header = `Piece\nTerms: US\nSizes: ${pattern.sizes[0]} (${pattern.sizes.slice(1).join(', ')})\nYarn A: a\nYarn B: b\nYarn C: c`;
    const { pattern: read, findings } = patternFromText([header, ...pattern.sections.map(sectionText)].join('\n\n'));
    expect(findings).toEqual([]);
    pattern.sizes.forEach((_, size) => expect(counts(read!, size)).toEqual(counts(pattern, size)));
  });
});
