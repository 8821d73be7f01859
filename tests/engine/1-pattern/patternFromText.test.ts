import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGauge, readHook, readYarn, readYarnList } from '../../../src/engine/1-pattern/headerValues.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';

const sample = readFileSync(join(import.meta.dirname, '../../samples/written/sock-heel.txt'), 'utf8');

describe('documents from written text', () => {
  it('holds the header in its fields and keeps the rest as notes', () => {
    const { pattern, findings, gaugeSaid } = patternFromText(sample);
    const { sections, ...head } = pattern!;
    expect(head).toEqual({
      id: 'puffin-quay-small-example', title: 'Puffin Quay, small example', designer: '', terms: 'us',
      gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, hookMm: 4.5,
      yarns: [
        { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
        { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' },
      ],
      sizes: ['S', 'M', 'L'], hdcTurningChainCounts: true,
      notes: [{ word: 'Hook (more)', value: '(US 7)' }, { word: 'Finished length', value: '30 cm' }, { word: '', value: 'A free line without a colon.' }],
      motifs: [], placements: [], cells: [],
    });
    expect(gaugeSaid).toBe(true);
    expect(sections.map(({ id, name, remark, recipe, lines }) => [id, name, remark, recipe, lines.length])).toEqual([
      ['s1', 'LEG', 'worked flat, then seamed', null, 4], ['s2', 'HEEL', '', null, 7], ['s3', 'Foot', '', null, 6],
    ]);
    expect(findings.map(({ rule, where }) => [rule, where.section, where.line])).toEqual([['labelOrder', 's2', 'l9']]);
  });

  it('gives the same ids to the same text, and a place to each line', () => {
    const { pattern, lines } = patternFromText(sample);
    expect(patternFromText(sample)).toEqual(patternFromText(sample));
    const all = pattern!.sections.flatMap((section) => section.lines);
    expect(all.map(({ id }) => id)).toEqual(all.map((_, index) => `l${index + 1}`));
    for (const line of all) {
      const place = lines.get(line.id)!;
      expect(sample.slice(...place.range).replace(/[\r\n\t]/g, ' ')).toBe(line.text);
    }
  });

  it('keeps lines in the terms of the text', () => {
    const { pattern } = patternFromText('T\nTerms: UK\n\nLEG\nRow 1: dc in each st across.\n');
    expect([pattern!.terms, pattern!.sections[0]!.lines[0]!.text]).toEqual(['uk', 'dc in each st across.']);
  });

  it('adds yarns that only rows name: without a finding when the header names none', () => {
    const rows = '\nLEG\nRow 1: with C, sc in next 3 sts, (A sc 1, B sc 1) 2 times.\nJoin D with a sl st in the first st.\n';
    const free = patternFromText(`T\n${rows}`);
    expect(free.pattern!.yarns.map(({ letter }) => letter)).toEqual(['C', 'A', 'B', 'D']);
    expect(free.findings).toEqual([]);
    const bound = patternFromText(`T\nYarn A: slate\nYarn C: chalk\n${rows}`);
    expect(bound.pattern!.yarns.map(({ letter, mark }) => [letter, mark])).toEqual([['A', 'none'], ['C', 'dot'], ['B', 'slash'], ['D', 'cross']]);
    expect(bound.findings.map(({ rule, found, where }) => [rule, found, where.line])).toEqual([['unknownYarn', 'B', 'l1'], ['unknownYarn', 'D', 'l2']]);
  });

  it('has one yarn and one size at least', () => {
    const { pattern, gaugeSaid } = patternFromText('T\n\nLEG\nRow 1: sc\n');
    expect([pattern!.yarns.map(({ letter }) => letter), pattern!.sizes, gaugeSaid]).toEqual([['A'], [''], false]);
  });

  it.each([
    ['Turning chains: the ch 2 before hdc does not count as a st', false],
    ['Turning chains: ch 2 of hdc counts', true],
    ['Designer: A friend', true],
  ])('%s', (line, counts) => {
    expect(patternFromText(`T\n${line}\n\nLEG\nRow 1: hdc\n`).pattern!.hdcTurningChainCounts).toBe(counts);
  });

  it('says what it can not read in the header, and keeps it', () => {
    const { pattern, findings } = patternFromText('T\nTerms: Finnish\nGauge: quite tight\nHook: G\n\nLEG\nRow 1: sc\n');
    expect(pattern!.notes).toEqual([{ word: 'Gauge', value: 'quite tight' }, { word: 'Hook', value: 'G' }]);
    expect(findings.map(({ degree, rule, found, params }) => [degree, rule, found, params.line])).toEqual([
      ['doubtful', 'badHeader', 'Finnish', 2], ['doubtful', 'badHeader', 'quite tight', 3], ['doubtful', 'badHeader', 'G', 4],
    ]);
  });

  it('is no pattern for empty and for endless texts', () => {
    expect(patternFromText(' \n').pattern).toBeNull();
    expect(patternFromText('x'.repeat(2_000_001)).pattern).toBeNull();
  });

  it('never throws', () => {
    const piece = fc.constantFrom('LEG', 'Row 1: sc in next 3 sts', 'Rows 2-4 (6, 8): with D, ch 1, turn', 'Terms: UK', 'Sizes: S (M, L)', 'Gauge: 4 sts and 5 rows = 1 inch', 'Yarn: A slate, B', 'Yarn A:', 'ch 9', '', 'Hook: 400 mm', 'Fasten off.', 'Designer:', ':', 'Turning chains: hdc');
    fc.assert(
      fc.property(fc.oneof(fc.array(piece, { maxLength: 25 }).map((lines) => lines.join('\n')), fc.string({ unit: 'binary', maxLength: 200 })), (text) => {
        const { pattern } = patternFromText(text);
        if (!pattern) return;
        expect(new Set(pattern.yarns.map(({ letter }) => letter)).size).toBe(pattern.yarns.length);
        for (const section of pattern.sections) {
          for (const line of section.lines) if (line.kind === 'row' && typeof line.label.rows !== 'number') expect(line.label.rows).toHaveLength(pattern.sizes.length);
        }
      }),
      { numRuns: 600, seed: 22 },
    );
  });
});

describe('header values', () => {
  it.each([
    ['16 sts and 18 rows = 10 cm in sc', 'us', { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, ''],
    ['16 sts x 18 rows = 10 cm', 'us', { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, ''],
    ['14 tr and 8 rows to 10cm', 'uk', { stitches: 14, rows: 8, overCm: 10, stitch: 'dc' }, ''],
    ['20 stitches and 22.5 rows over 10 cm in half treble crochet', 'uk', { stitches: 20, rows: 22.5, overCm: 10, stitch: 'hdc' }, ''],
    ['4½ sts and 5 rows = 1 inch in sc', 'us', { stitches: 4.5, rows: 5, overCm: 2.54, stitch: 'sc' }, ''],
    ['16 sc and 18 rows = 4 inches (10 cm)', 'us', { stitches: 16, rows: 18, overCm: 10.16, stitch: 'sc' }, ''],
    ['16 sts and 18 rows = 4" in hdc, after blocking', 'us', { stitches: 16, rows: 18, overCm: 10.16, stitch: 'hdc' }, 'after blocking'],
    ['26 sts, 30 rnds = 100 mm in sc', 'us', { stitches: 26, rows: 30, overCm: 10, stitch: 'sc' }, ''],
    ['16 sts and 18 rows = 10 cm in shells', 'us', { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, 'in shells'],
  ] as const)('gauge: %s', (text, terms, value, rest) => {
    expect(readGauge(text, terms)).toEqual({ value, rest });
  });

  it.each(['16 sts to 10 cm', '0 sts and 3 rows = 10 cm', 'tight', '16 sts and 18 rows'])('no gauge: %s', (text) => {
    expect(readGauge(text, 'us')).toBeNull();
  });

  it.each([
    ['4.5 mm', 4.5, ''],
    ['4,5mm', 4.5, ''],
    ['US 7 (4.5 mm) or size to give gauge', 4.5, 'US 7 or size to give gauge'],
  ] as const)('hook: %s', (text, value, rest) => {
    expect(readHook(text)).toEqual({ value, rest });
  });

  it.each(['G-6', '400 mm', ''])('no hook: %s', (text) => {
    expect(readHook(text)).toBeNull();
  });

  it('yarns with and without colour', () => {
    expect(readYarn('A', 'slate #4B5A6B', 0)).toEqual({ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' });
    expect(readYarn('B', '#abc chalk,', 1)).toEqual({ letter: 'B', name: 'chalk', colour: '#aabbcc', mark: 'dot' });
    expect(readYarn('C', '', 2).name).toBe('yarn C');
    expect(readYarn('C', '', 2).colour).toMatch(/^#[0-9a-f]{6}$/);
    expect(readYarnList('A slate #4b5a6b, B: chalk')).toEqual([{ letter: 'A', text: 'slate #4b5a6b' }, { letter: 'B', text: 'chalk' }]);
    expect(readYarnList('100 g of sock yarn')).toBeNull();
  });
});
