import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWritten } from '../../../src/engine/notation/readWritten.ts';
import type { RowLabel, WrittenPattern } from '../../../src/engine/notation/written.ts';

function sample(name: string): string {
  return readFileSync(join(import.meta.dirname, '../../samples/written', `${name}.txt`), 'utf8');
}

function label({ word, rows, start, side }: RowLabel): string {
  const number = (value: RowLabel['rows']) => (typeof value === 'number' ? String(value) : value.join('/'));
  return `${word} ×${number(rows)}${start === null ? '' : ` from ${number(start)}`}${side ? ` ${side}` : ''}`;
}

/** Sections with their lines in short. */
function outline({ sections }: WrittenPattern): string[] {
  return sections.flatMap(({ name, remark, lines }) => [
    `## ${name}${remark === '' ? '' : ` (${remark})`}`,
    ...lines.map((line) => `${line.kind === 'row' ? label(line.label) : line.kind}: ${line.text.replace(/\s+/g, ' ')}`),
  ]);
}

const one = (line: string, header = '') => readWritten(`Title\n${header}\nPIECE\nFoundation: ch 9.\n${line}\n`);

describe('written patterns taken apart', () => {
  it('the heel of a sock', () => {
    const written = readWritten(sample('sock-heel'));
    expect(written.title).toBe('Puffin Quay, small example');
    expect(written.terms).toBe('us');
    expect(written.sizes).toEqual(['S', 'M', 'L']);
    expect(written.header.map(({ word, value }) => `${word}: ${value}`)).toEqual([
      'Terms: US', 'Gauge: 16 sts and 18 rows = 10 cm in sc', 'Hook: 4.5 mm (US 7)', 'Yarn A: slate #4b5a6b', 'Yarn B: chalk #f2efe6', 'Sizes: S (M, L)',
      'Finished length: 30 cm', ': A free line without a colon.',
    ]);
    expect(outline(written)).toEqual([
      '## LEG (worked flat, then seamed)',
      'foundation ×1: with A, ch 41 (45, 49).',
      'row ×1 RS: sc in 2nd ch from hook and in each ch across. (40 (44, 48) sc)',
      'row ×5: ch 1, turn, sc in each st across. (40 (44, 48) sc)',
      'step: Seam the side edges.',
      '## HEEL',
      'note: Read all of it first.',
      'step: Join B with a sl st in the 12th st before the seam.',
      'row ×1 RS: ch 1, sc in same st, sc in next 11 sts, skip the seam, sc in next 12 sts. Leave the rest unworked. (24 sc)',
      'row ×1: ch 1, turn, sc in next 16 sts. Leave 8 unworked. (16 sc)',
      'row ×1 from 4: ch 1, turn, sc in next 8 sts, sc in next unworked st. (9 sc)',
      'next ×3: Rep row 4 three more times.',
      'row ×13/15/17: rep rows 2 and 4',
      '## Foot',
      'round ×1: sc in each st around',
      'round ×1: sc',
      'next ×2: sc in each st around',
      'step: Turn.',
      'step: Fasten off. Weave in ends.',
      'note: Ch 1 does not count as a stitch.',
    ]);
    expect(written.findings.map(({ degree, rule, found, expected, params }) => [degree, rule, found, expected, params.line])).toEqual([['doubtful', 'labelOrder', '4', '3', 22]]);
  });

  it('a cushion in UK terms, told by its words', () => {
    const written = readWritten(sample('cushion-uk'));
    expect(written.terms).toBe('uk');
    expect(written.findings).toEqual([]);
    expect(outline(written)).toEqual([
      '## FRONT',
      'foundation ×1: Using A, make 30 ch.',
      'row ×1: 1 tr into 4th ch from hook, 1 tr into each ch to end. 28 sts.',
      'row ×1: 3 ch (counts as 1 tr), turn, miss first st, 1 tr into each st to end. 28 sts',
      'row ×4: As 2nd row.',
      'step: Change to B.',
      'next ×1: 1 ch, turn, 1 dc in each st across.',
      'next ×2: 1 ch, turn, dc in each st to end.',
      'note: Row 12 is the last row of the front.',
      'note: MAKING UP',
      'step: Sew the side edges together.',
      'note: Then fold it, and press lightly.',
    ]);
  });

  it('a ball without sections', () => {
    const written = readWritten(sample('ball'));
    expect(outline(written)).toEqual([
      '## ', 'round ×1: 6sc in mr (6)', 'round ×1: inc x 6 (12)', 'round ×1: (sc, inc) x6 (18)', 'round ×3: sc around (18)', 'round ×1: (sc, dec) x 6 (12)', 'note: Stuff firmly.',
      'round ×1: dec 6 times [6]', 'step: FO, leaving a long tail. Weave in ends.',
    ]);
    expect(written.findings.map(({ degree, rule }) => [degree, rule])).toEqual([['note', 'textOutsideSection']]);
  });

  it('places every line in the whole text', () => {
    for (const name of ['sock-heel', 'cushion-uk', 'ball']) {
      for (const text of [sample(name), sample(name).replaceAll('\n', '\r\n')]) {
        const lines = text.split(/\r?\n/);
        for (const section of readWritten(text).sections) {
          for (const line of section.lines) {
            expect(text.slice(...line.range)).toBe(line.text);
            expect(lines[line.lineNumber - 1]!).toContain(line.text.split(/\r?\n/)[0]!.trim());
          }
        }
      }
    }
  });
});

describe('row labels', () => {
  it.each([
    ['Row 1: sc', 'row ×1'],
    ['Row 1 (RS): sc', 'row ×1 RS'],
    ['Row 1: (WS) sc', 'row ×1 WS'],
    ['Row 1 [WS] - sc', 'row ×1 WS'],
    ['Row 1 (right side): sc', 'row ×1 RS'],
    ['Row 1. sc', 'row ×1'],
    ['Row 1 – sc', 'row ×1'],
    ['ROW 1 sc in each st across', 'row ×1'],
    ['Rows 1-14: sc', 'row ×14'],
    ['Rows 1 – 14: sc', 'row ×14'],
    ['Rows 1 to 4: sc', 'row ×4'],
    ['Rows 1 and 2: sc', 'row ×2'],
    ['Rows 1 & 2: sc', 'row ×2'],
    ['Rnd 1: sc', 'round ×1'],
    ['Round 1: sc', 'round ×1'],
    ['Rnds 1–8: sc', 'round ×8'],
    ['Rounds 1-8 (RS): sc', 'round ×8 RS'],
    ['1st row: sc', 'row ×1'],
    ['1st to 6th rows: sc', 'row ×6'],
    ['First round: sc', 'round ×1'],
    ['Set-up row (WS): sc', 'setup ×1 WS'],
    ['Setup rnd: sc', 'setup ×1'],
    ['Next row: sc', 'next ×1'],
    ['Next rnd (RS): sc', 'next ×1 RS'],
    ['Next 4 rows: sc', 'next ×4'],
    ['Next four rows: sc', 'next ×4'],
    ['Rep row 4', 'next ×1'],
    ['Rep rows 4 and 5.', 'next ×2'],
    ['Rep rows 4 and 5 three more times. (24 sc)', 'next ×6'],
    ['Repeat rows 2-5 twice more', 'next ×8'],
  ])('%s', (line, expected) => {
    const { sections } = one(line);
    const read = sections[0]!.lines[1]!;
    expect(read.kind === 'row' && label(read.label)).toBe(expected);
  });

  it.each([
    ['Rows 1-60 (64, 68): sc', 'row ×60/64/68', []],
    ['Rows 1-60 (64, 68) (WS): sc', 'row ×60/64/68 WS', []],
    ['Next 4 (5, 6) rows: sc', 'next ×4/5/6', []],
    ['Rep rows 1 and 2 5 (6, 7) more times.', 'next ×10/12/14', []],
    ['Rows 1-60 (64): sc', 'row ×60', ['sizesMismatch 2 3']],
  ] as const)('with sizes: %s', (line, expected, findings) => {
    const written = one(line, 'Sizes: S (M, L)');
    const read = written.sections[0]!.lines[1]!;
    expect(read.kind === 'row' && label(read.label)).toBe(expected);
    expect(written.findings.map(({ rule, found, expected: right }) => `${rule} ${found} ${right}`)).toEqual(findings);
  });

  it.each(['Row 4 is the last one.', 'Rowing is fun.', 'Round the corner it goes.', 'Next to the seam lies the marker.', 'Foundations are chains.', 'Repeat rows until it fits.'])('is none: %s', (line) => {
    expect(one(line).sections[0]!.lines[1]!.kind).not.toBe('row');
  });

  it('says where a number does not follow, and keeps the number', () => {
    const written = one('Row 1: sc\nRow 4: sc\nRow 5: sc\nRows 9-7: sc');
    expect(outline(written).slice(2)).toEqual(['row ×1: sc', 'row ×1 from 4: sc', 'row ×1: sc', 'row ×1 from 9: sc']);
    expect(written.findings.map(({ rule, found, expected, params }) => [rule, found, expected, params.line])).toEqual([
      ['labelOrder', '4', '2', 6], ['labelOrder', '7', '9 or more', 8], ['labelOrder', '9', '6', 8],
    ]);
  });

  it('lets a section count on from the one before without a finding', () => {
    const written = readWritten('T\n\nONE\nRows 1-4: sc\n\nTWO\nRow 5: sc\n\nTHREE\nRow 1: sc\n');
    expect(outline(written)).toEqual(['## ONE', 'row ×4: sc', '## TWO', 'row ×1 from 5: sc', '## THREE', 'row ×1: sc']);
    expect(written.findings).toEqual([]);
  });

  it('finds one label that slipped once, not the one after it too', () => {
    const { findings } = readWritten('T\n\nPIECE\nRow 1: sc 5.\nRow 2: sc 5.\nRow 2: sc 5.\nRow 4: sc 5.\nRow 7: sc 5.\nRow 8: sc 5.');
    expect(findings.filter(({ rule }) => rule === 'labelOrder').map(({ found, expected, params }) => [found, expected, params.line])).toEqual([['2', '3', 6], ['7', '5', 8]]);
  });

  it('limits a line to 20,000 rows and says so', () => {
    const written = one('Rows 1-999999999: sc');
    const read = written.sections[0]!.lines[1]!;
    expect(read.kind === 'row' && read.label.rows).toBe(20_000);
    expect(written.findings.map(({ rule, found, expected }) => [rule, found, expected])).toEqual([['tooLong', 999_999_999, 20_000]]);
  });
});

describe('lines that belong together', () => {
  it.each([
    ['Row 1: ch 1, turn,\nsc in next 3 sts.', 1],
    ['Row 1: ch 1, turn.\n(26 sts)', 1],
    ['Row 1: ch 1, turn\nand sc in next st.', 1],
    ['Row 1:\nSc in next 3 sts.', 1],
    ['Row 1: sc.\n\nFasten off.', 2],
    ['Row 1: sc.\nFasten off.', 2],
    ['Row 1: sc.\n\nsome words apart', 2],
  ])('%j', (text, lines) => {
    expect(one(text).sections[0]!.lines).toHaveLength(1 + lines);
  });

  it.each([
    ['ch 9', 'foundation'],
    ['With A, ch 41.', 'foundation'],
    ['Magic ring.', 'foundation'],
    ['Ch 4, join to form a ring.', 'foundation'],
    ['Ch 3 counts as a dc.', 'note'],
    ['Join B with a sl st in the 3rd st after the seam.', 'step'],
    ['Turn the page over.', 'note'],
    ['Work loosely.', 'note'],
  ])('as the first line of a section: %s', (line, expected) => {
    const read = readWritten(`T\n\nLEG\n${line}\nRow 1: sc in each st across.\n`).sections[0]!.lines[0]!;
    expect(read.kind === 'row' ? read.label.word : read.kind).toBe(expected);
  });

  it.each([
    ['LEG', 'LEG', ''],
    ['Leg', 'Leg', ''],
    ['Leg:', 'Leg', ''],
    ['HEEL (turned in short rows)', 'HEEL', 'turned in short rows'],
    ['Left sock [make 2]:', 'Left sock', 'make 2'],
  ])('%s names a section', (line, name, remark) => {
    const [section] = readWritten(`T\n\n${line}\nRow 1: sc in each st across.\n`).sections;
    expect([section!.name, section!.remark]).toEqual([name, remark]);
  });
});

describe('texts with nothing in them, or too much', () => {
  it.each(['', '   \n\n\t \r\n'])('empty: %j', (text) => {
    const { findings, sections } = readWritten(text);
    expect(sections).toEqual([]);
    expect(findings.map(({ degree, rule }) => [degree, rule])).toEqual([['wrong', 'emptyText']]);
  });

  it('five million characters are refused at once', () => {
    const { findings } = readWritten('x'.repeat(5_000_000));
    expect(findings.map(({ rule, found, expected }) => [rule, found, expected])).toEqual([['tooLong', 5_000_000, 2_000_000]]);
  });

  it('prose only is a title and notes, and has no rows', () => {
    const { title, header, findings } = readWritten('A poem\n\nRoses are red.\nViolets: blue\n');
    expect([title, header.map(({ word, value }) => [word, value])]).toEqual(['A poem', [['', 'Roses are red.'], ['Violets', 'blue']]]);
    expect(findings.map(({ rule }) => rule)).toEqual(['noRows']);
  });

  it('never throws and loses no word of any text', () => {
    const piece = fc.constantFrom('LEG', 'Row 1: sc', 'Rows 2-4 (6, 8): ch 1, turn', 'Terms: UK', 'Sizes: S (M, L)', 'foo bar', 'ch 9', '', 'Next row', 'Rep row 1', '(26 sts)', 'Fasten off.', 'Row', 'Rnds 3', ':', 'Yarn A: x', '1st row: dc', 'Foundation', '*', '\t');
    const text = fc.oneof(fc.array(piece, { maxLength: 30 }).map((lines) => lines.join('\n')), fc.string({ unit: 'binary', maxLength: 300 }));
    fc.assert(
      fc.property(text, (whole) => {
        const written = readWritten(whole);
        const kept = new Array<boolean>(whole.length).fill(false);
        const keep = ([from, to]: readonly [number, number]) => kept.fill(true, from, to);
        for (const { range } of written.header) keep(range);
        for (const section of written.sections) {
          for (const line of section.lines) {
            expect(whole.slice(...line.range)).toBe(line.text);
            keep(line.range);
          }
        }
        // What no line holds are the title, names of sections and labels.
        const rest = whole.split('').filter((_, index) => !kept[index]).join('');
        for (const word of rest.split(/\s+/).filter((part) => /\p{L}{3}/u.test(part))) {
          const names = [written.title, ...written.sections.flatMap(({ name, remark }) => [name, remark])].join(' ');
          expect(names.includes(word.replace(/^[([]|[:)\].]+$/g, '')) || /^(row|rnd|next|rep|foundation|title)/i.test(word), word).toBe(true);
        }
      }),
      { numRuns: 600, seed: 21 },
    );
  });
});
