import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { readLine } from '../../../src/engine/2-construct/readLine.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { liftYarns } from '../../../src/engine/4-colour/liftYarns.ts';
import { changesYarnInside } from '../../../src/engine/4-colour/withoutYarns.ts';
import { picture } from './picture.ts';

const HEAD = 'Puffin Quay\nYarn A: slate #4b5a6b\nYarn B: chalk #f2efe6\nYarn C: lamp orange #d8702a\nSizes: S (M)\n\nLEG\nFoundation: with A, ch 13 (17).\nRow 1: sc in 2nd ch from hook and in each ch across. (12 (16) sc)\n';

function read(rows: readonly string[], more: Partial<Pattern> = {}): Pattern {
  const { pattern } = patternFromText(HEAD + rows.join('\n'));
  return { ...pattern!, ...more };
}

const fabricsOf = (pattern: Pattern) => pattern.sizes.map((_, size) => work(construct(pattern, size)));

function pictures(pattern: Pattern) {
  return fabricsOf(pattern).map((fabric, size) => picture(pattern, fabric, colour(pattern, fabric, size)));
}

function lifted(pattern: Pattern): Pattern {
  const applied = applyTransaction(pattern, { label: 'Lift the yarns', at: 0, edits: liftYarns(pattern, fabricsOf(pattern)) });
  if (!applied.ok) throw new Error(applied.reason);
  expect(pictures(applied.pattern)).toEqual(pictures(pattern));
  return applied.pattern;
}

const texts = (pattern: Pattern) => pattern.sections[0]!.lines.slice(2).map((line) => line.text);

describe('lifting yarn changes out of rows', () => {
  it('writes the row in its most used yarn and lays the other runs as cells, in every size', () => {
    const now = lifted(read(['Row 2: ch 1, turn, A sc 3, B sc 2, A sc to end. (12 (16) sc)']));
    expect(texts(now)).toEqual(['with A, ch 1, turn, sc in each st to end. (12 (16) sc)']);
    expect(now.cells.map(({ size, from, letters }) => [size, from, letters])).toEqual([[0, 3, 'BB'], [1, 3, 'BB']]);
  });

  it('unrolls repeats of runs, row by row of a range', () => {
    const now = lifted(read(['Rows 2-3: ch 1, turn, *A sc 2, B sc 2; rep from * across.']));
    expect(texts(now)).toEqual(['ch 1, turn, sc in each st across.']);
    expect(now.cells.filter(({ size }) => size === 0).map(({ row, from, letters }) => [row.nth, from, letters])).toEqual([
      // Row 2 is a wrong-side row and runs from left to right, row 3 the other way.
      [0, 2, 'BB'], [0, 6, 'BB'], [0, 10, 'BB'],
      [1, 0, 'BB'], [1, 4, 'BB'], [1, 8, 'BB'],
    ]);
  });

  it('lets the row after it say the yarn that it took from the row before', () => {
    expect(texts(lifted(read(['Row 2: ch 1, turn, A sc 8, B sc to end.', 'Row 3: ch 1, turn, sc in each st across.', 'Row 4: ch 1, turn, sc in each st across.'])))).toEqual([
      'with A, ch 1, turn, sc in each st to end.',
      'with B, ch 1, turn, sc in each st across.',
      'ch 1, turn, sc in each st across.',
    ]);
  });

  it('colours rows that are worked as a lifted row', () => {
    const now = lifted(read(['Row 2: ch 1, turn, A sc 5, C sc 1, A sc to end.', 'Row 3: ch 1, turn, sc in each st across.', 'Row 4: rep row 2.']));
    expect(texts(now)[2]).toBe('rep row 2.');
    expect(now.cells.filter(({ size }) => size === 0)).toHaveLength(2);
  });

  it('keeps placements over the runs and cells over both', () => {
    const rows = ['Row 2: ch 1, turn, A sc 2, B sc 6, A sc to end.'];
    const id = read(rows).sections[0]!.lines[2]!.id;
    const now = lifted(
      read(rows, {
        motifs: [{ id: 'm', name: '', cells: ['CC'] }],
        placements: [{ id: 'p', section: 's1', motif: 'm', row: { line: id, nth: 0 }, align: 'left', offset: 3, across: 1, up: 1, gap: 0, mirror: false }],
        cells: [{ section: 's1', row: { line: id, nth: 0 }, size: 0, from: 6, letters: 'A' }],
      }),
    );
    expect(now.placements).toHaveLength(1);
    expect(now.cells.filter(({ size }) => size === 0).map(({ from, letters }) => [from, letters])).toEqual([[2, 'B'], [5, 'BAB']]);
  });

  it('has nothing to do for rows of one yarn, and nothing more once it is done', () => {
    const plain = read(['Row 2: with B, ch 1, turn, sc in each st across.', 'Row 3: ch 1, turn, sc in each st across. Change to C.']);
    expect(liftYarns(plain, fabricsOf(plain)).filter((edit) => edit.kind === 'setCells')).toEqual([]);
    const now = lifted(read(['Row 2: ch 1, turn, A sc 3, B sc 2, A sc to end.']));
    expect(liftYarns(now, fabricsOf(now))).toEqual([]);
  });

  it('leaves a row as it is that would be worked otherwise without its yarns', () => {
    // The uneven repeat is a slip that stays found.
    const pattern = read(['Row 2: ch 1, turn, *A sc 3, B sc 2; rep from * across.']);
    expect(fabricsOf(pattern)[0]!.findings.map((found) => found.rule)).toContain('repeatUneven');
    lifted(pattern);
  });

  it('asks for a fabric of each size', () => {
    const pattern = read([]);
    expect(() => liftYarns(pattern, fabricsOf(pattern).slice(1))).toThrow('1 fabrics given for 2 sizes');
  });

  it('never changes what is seen or made, whatever the rows say', () => {
    const letter = fc.constantFrom('A', 'B', 'C');
    const clause = fc.oneof(
      fc.tuple(letter, fc.integer({ min: 1, max: 4 })).map(([yarn, count]) => `${yarn} sc ${count}`),
      fc.tuple(letter, letter, fc.integer({ min: 1, max: 2 })).map(([one, other, times]) => `(${one} sc 1, ${other} sc 1) ${times} times`),
      letter.map((yarn) => `change to ${yarn}`),
      fc.constantFrom('sc in next 2 sts', 'sc2tog', '2 sc in next st'),
    );
    const row = fc.oneof(
      fc.array(clause, { minLength: 1, maxLength: 3 }).map((clauses) => `ch 1, turn, ${clauses.join(', ')}, sc in each st across.`),
      letter.map((yarn) => `with ${yarn}, ch 1, turn, sc in each st across.`),
      fc.constant('ch 1, turn, sc in each st across.'),
      fc.tuple(letter, letter).map(([one, other]) => `ch 1, turn, *${one} sc 1, ${other} sc 1; rep from * across.`),
      fc.constant('rep row 2.'),
    );
    let rewritten = 0;
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
        const pattern = read(rows.map((text, i) => `Row ${i + 2}: ${text}`));
        const made = fabricsOf(pattern).map((fabric) => fabric.rows.map((one) => one.made));
        const now = lifted(pattern);
        expect(fabricsOf(now).map((fabric) => fabric.rows.map((one) => one.made))).toEqual(made);
        const inside = now.sections[0]!.lines.filter((line) => line.kind === 'row' && changesYarnInside(readLine(line, now).body)).length;
        const before = pattern.sections[0]!.lines.filter((line) => line.kind === 'row' && changesYarnInside(readLine(line, pattern).body)).length;
        rewritten += before - inside;
      }),
      { numRuns: 400, seed: 90_210 },
    );
    expect(rewritten).toBeGreaterThan(300);
  });
});
