import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternFromText, type Line, type Pattern } from '../../../../src/engine/index.ts';
import { errata } from '../../../../src/engine/readings/errata/errata.ts';
import { errataText } from '../../../../src/engine/readings/errata/errataText.ts';
import { makeDemo } from '../../../setup/demo.ts';

const { pattern: DEMO } = makeDemo(readFileSync(join(import.meta.dirname, '../../../samples/puffin-quay/structure.txt'), 'utf8'));

function read(text: string): Pattern {
  const { pattern } = patternFromText(text);
  if (!pattern) throw new Error('no pattern');
  return pattern;
}

/** The pattern with one line's text changed. */
function withText(pattern: Pattern, section: string, line: string, change: (text: string) => string): Pattern {
  return { ...pattern, sections: pattern.sections.map((one) => (one.id !== section ? one : { ...one, lines: one.lines.map((other): Line => (other.id === line ? { ...other, text: change(other.text) } : other)) })) };
}

const HEEL = DEMO.sections.find(({ name }) => name === 'HEEL')!;
const said = (before: Pattern, after: Pattern): string[] => errataText(errata(before, after)).split('\n').filter((line) => line !== '');

describe('errata', () => {
  it('are none between a pattern and itself, or itself read again', () => {
    expect(errata(DEMO, DEMO)).toEqual([]);
    expect(errata(DEMO, JSON.parse(JSON.stringify(DEMO)) as Pattern)).toEqual([]);
    expect(errataText([])).toBe('');
  });

  it('name the row, the sizes and both numbers where one size has another number', () => {
    const line = HEEL.lines.find(({ text }) => text.includes('17 (20, 23)'))!;
    const wrong = withText(DEMO, HEEL.id, line.id, (text) => text.replaceAll('17 (20, 23)', '17 (19, 23)'));
    const lines = said(wrong, DEMO);
    expect(lines[0]).toBe('Heel, row 2 (size M): ch 1, turn, sc in next 20 sts. Leave 8 sts unworked. 20 sts; was: ch 1, turn, sc in next 19 sts. Leave 8 sts unworked. 19 sts.');
    expect(lines.every((one) => one.includes('(size M)'))).toBe(true);
  });

  it('tell the count alone where the words are the same', () => {
    const before = read('T\nTerms: US\n\nBAND\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: ch 1, turn, sc in each st across. (10 sc)\n');
    const after = read('T\nTerms: US\n\nBAND\nFoundation: ch 12.\nRow 1: sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: ch 1, turn, sc in each st across. (11 sc)\n');
    const rows = said(before, after).filter((line) => line.startsWith('Band, row'));
    expect(rows.join('\n')).toContain('11 sts, was 10 sts.');
    expect(rows.some((line) => /^Band, rows? 1/.test(line))).toBe(true);
  });

  it('tell rows that follow with another count as one, and of their one yarn nothing', () => {
    const rounds = (second: string, sts: number) => read(`T\nTerms: US\nYarn A: slate #4b5a6b\n\nTUBE (worked in the round)\nFoundation: ch 12, join with sl st to form a ring.\nRound 1: sc in each ch around. (12 sc)\nRound 2: ${second} (${sts} sc)\nRounds 3-9: sc in each st around. (${sts} sc)\nFasten off.\n`);
    const lines = said(rounds('sc in each st around.', 12), rounds('(sc in next 2 sts, 2 sc in next st) 4 times.', 16)).filter((line) => line.startsWith('Tube'));
    expect(lines).toEqual([
      'Tube, round 2: (sc in next 2 sts, 2 sc in next st) 4 times. 16 sts; was: sc in each st around. 12 sts.',
      'Tube, rounds 3–9: 16 sts, was 12 sts.',
    ]);
  });

  it('say nothing of rows that are worded otherwise and worked the same', () => {
    const before = read('T\nTerms: US\n\nBAND\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)\nRow 2: ch 1, turn, sc in each st across. (10 sc)\n');
    const after = read('T\nTerms: US\n\nBAND\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch to end. (10 sc)\nRow 2: turn, ch 1, sc in each st to end. (10 sc)\n');
    expect(said(before, after)).toEqual([]);
  });

  it('find rows again whose lines have other ids', () => {
    const renamed: Pattern = { ...DEMO, placements: [], sections: DEMO.sections.map((section) => ({ ...section, lines: section.lines.map((line) => ({ ...line, id: `${line.id}-again` })) })) };
    expect(said({ ...DEMO, placements: [] }, renamed).filter((line) => /(row|round) \d/.test(line))).toEqual([]);
  });

  it.each<[string, (pattern: Pattern) => Pattern, string]>([
    ['the gauge', (p) => ({ ...p, gauge: { ...p.gauge, rows: 21 } }), 'Gauge: 18 sts and 21 rows = 10 cm in sc; was: 18 sts and 20 rows = 10 cm in sc.'],
    ['the hook', (p) => ({ ...p, hookMm: 4.5 }), 'Hook: 4.5 mm, was 4 mm.'],
    ['a yarn', (p) => ({ ...p, yarns: p.yarns.map((yarn) => (yarn.letter === 'C' ? { ...yarn, name: 'buoy red' } : yarn)) }), 'Yarn C: buoy red #e07b39, was lamp orange #e07b39.'],
    ['a size', (p) => ({ ...p, sizes: ['S', 'M', 'XL'] }), 'Sizes: S, M, XL, was S, M, L.'],
    ['a note', (p) => ({ ...p, notes: p.notes.map((note) => (note.word === 'Level' ? { ...note, value: 'Easy' } : note)) }), 'Level: Easy, was Intermediate.'],
    ['how a yarn is sold', (p) => ({ ...p, piece: { ...p.piece, supplies: [{ letter: 'A', weight: 4, ballGrams: 50, ballMetres: 90, price: null }] } }), 'Yarn A, as sold: new: weight 4, 50 g a ball, 90 m a ball.'],
  ])('tell a change of %s', (_, change, line) => {
    expect(said(DEMO, change(DEMO)).join('\n')).toContain(line);
  });

  it('tell what a gauge does to the finished measurements', () => {
    expect(said(DEMO, { ...DEMO, gauge: { ...DEMO.gauge, stitches: 16 } }).some((line) => /^Finished measurements, girth of the foot \(size S\): .*was 26\.7 cm/.test(line))).toBe(true);
  });

  it('tell rows whose colours have changed', () => {
    const moved: Pattern = { ...DEMO, placements: DEMO.placements.map((placed) => (placed.id === 'puffins-1' ? { ...placed, offset: 1 } : placed)) };
    const lines = said(DEMO, moved);
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.every((line) => line.startsWith('Leg, row'))).toBe(true);
  });

  it('tell rows that are new and rows that are left out, as well as sections', () => {
    const short: Pattern = { ...DEMO, sections: DEMO.sections.filter(({ name }) => name !== 'LOOP') };
    expect(said(DEMO, short).some((line) => line.startsWith('Section: left out, was: LOOP'))).toBe(true);
    expect(said(short, DEMO).some((line) => /^Loop, row 1: new: .*16 sts\.$/.test(line))).toBe(true);
  });

  it.each([
    ['the demo', DEMO, 8],
    ['a band in two sizes', read('T\nTerms: US\nSizes: S, M\n\nBAND\nFoundation: ch 11 (13).\nRow 1: sc in 2nd ch from hook and in each ch across. (10 (12) sc)\nRow 2: ch 1, turn, sc in next 7 (8) sts. Leave 3 (4) unworked. (7 (8) sc)\nRows 3-4: ch 1, turn, sc in each st across. (7 (8) sc)\nDraw the yarn through the remaining 7 (8) sts.\n'), 60],
  ] as const)('name any single number of any row that is changed, at its section: %s', (_, pattern, numRuns) => {
    const numbers = pattern.sections.flatMap((section) => section.lines.flatMap((line) => (line.kind === 'note' ? [] : [...line.text.matchAll(/\d+/g)].map((match) => ({ section: section.id, line: line.id, at: match.index, number: match[0] })))));
    fc.assert(
      fc.property(fc.constantFrom(...numbers), fc.integer({ min: 1, max: 3 }), ({ section, line, at, number }, more) => {
        const changed = withText(pattern, section, line, (text) => `${text.slice(0, at)}${Number(number) + more}${text.slice(at + number.length)}`);
        expect(errata(pattern, changed).some((erratum) => erratum.section === section)).toBe(true);
      }),
      { seed: 11, numRuns },
    );
  });
});
