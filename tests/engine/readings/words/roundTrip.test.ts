import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openPatternFile } from '../../../../src/engine/1-pattern/file.ts';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { fabricFacts, patternOf, wordsOf, workedSize } from './workedSizes.ts';

function demo(): Pattern {
  const opened = openPatternFile(readFileSync(join(import.meta.dirname, '../../../../static/puffin-quay.json'), 'utf8'));
  if (!('pattern' in opened)) throw new Error('the demo does not open');
  return opened.pattern;
}

/** The words of each size alone, read and worked again. */
function expectSameFabric(pattern: Pattern, size: number, terms: 'us' | 'uk'): void {
  const text = wordsOf(pattern, terms, [size]);
  const { pattern: again, findings } = patternFromText(text);
  expect(findings.filter(({ degree }) => degree !== 'note'), text).toEqual([]);
  expect(fabricFacts(again!, workedSize(again!, 0)), text).toEqual(fabricFacts(pattern, workedSize(pattern, size)));
}

describe('words read back', () => {
  it.each([
    [0, 'us'], [1, 'us'], [2, 'us'], [1, 'uk'],
  ] as const)('the demo, size %i in %s terms, gives the same fabric in the same yarns', (size, terms) => {
    expectSameFabric(demo(), size, terms);
  });

  it('the demo in all sizes at once gives the same header', () => {
    const pattern = demo();
    const again = patternFromText(wordsOf(pattern)).pattern!;
    const { title, designer, terms, gauge, hookMm, sizes, hdcTurningChainCounts } = pattern;
    expect(again).toMatchObject({ title, designer, terms, gauge, hookMm, sizes, hdcTurningChainCounts });
    expect(again.yarns.map(({ letter, name, colour }) => [letter, name, colour])).toEqual(pattern.yarns.map(({ letter, name, colour }) => [letter, name, colour]));
    expect(again.notes.filter(({ word }) => word !== 'Abbreviations' && word !== 'Finished measurements')).toEqual(pattern.notes);
    expect(again.sections.map(({ name, remark }) => [name, remark])).toEqual(pattern.sections.map(({ name, remark }) => [name, remark]));
  });

  it('writing what was read gives the same words again', () => {
    const text = wordsOf(demo(), 'us', [1]);
    expect(wordsOf(patternFromText(text).pattern!)).toBe(text);
  });

  it('all sizes at once, where only numbers differ, give each size the same fabric', () => {
    const text = `Sample\nYarn A: slate\nYarn B: chalk\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc2tog, sc in next 8 (10, 12) sts.\nRows 3-6 (8, 10): ch 1, turn, 2 sc in next st, sc in each st across.\nSeam the side edges.\nJoin B with a sl st in the 2nd (3rd, 4th) st before the seam.\nRnd 7 (9, 11): ch 1, sc in same st, sc in each st around, join with sl st in first st.\nFasten off.\n`;
    const pattern = patternOf(text, [['l2', 0, 0, 'BBB', 0], ['l2', 0, 0, 'BBBB', 1], ['l2', 0, 0, 'BBBBB', 2]]);
    const again = patternFromText(wordsOf(pattern)).pattern!;
    expect(again.sizes).toEqual(['S', 'M', 'L']);
    for (const size of [0, 1, 2]) expect(fabricFacts(again, workedSize(again, size)), wordsOf(pattern)).toEqual(fabricFacts(pattern, workedSize(pattern, size)));
  });

  const clause = fc.constantFrom('sc in next st', 'sc in next 3 sts', 'hdc in next st', '2 sc in next st', '3 dc in next st', 'sk 1 st', 'ch 1, sk 1 st', '(sc, ch 1, sc) in next st', '(2 dc, hdc) in next st', '5-dc bobble in next st', 'FLO sc in next 2 sts', 'FPdc around next st', 'sc2tog', '(sc in next st, dc in next st) 2 times', 'sc in same st');
  const end = fc.constantFrom('sc in each st across', '*sc in next st; rep from * to end', 'dc in each st to last 2 sts, sc in next st, 2 sc in last st', 'sc in next 2 sts, leave the rest unworked');
  const row = fc.record({ start: fc.constantFrom('ch 1, turn, sc in next st', 'ch 3, turn, dc in next st', 'turn, ch 1, hdc in next st'), clauses: fc.array(clause, { maxLength: 5 }), end });
  const cells = fc.array(fc.record({ row: fc.nat(7), from: fc.nat(20), letters: fc.array(fc.constantFrom('A', 'B', 'C', '.'), { minLength: 1, maxLength: 24 }).map((list) => list.join('')) }), { maxLength: 6 });

  it('random rows in random colours give the same fabric in the same yarns', () => {
    let coloured = 0;
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), cells, fc.constantFrom('us' as const, 'uk' as const), (rows, laid, terms) => {
        const lines = rows.map(({ start, clauses, end: last }, index) => `Row ${index + 2}: ${[start, ...clauses, last].join(', ')}`);
        const text = `T\nYarn A: slate\nYarn B: chalk\nYarn C: orange\n\nPIECE\nFoundation: ch 19.\nRow 1: sc in 2nd ch from hook and in each ch across.\n${lines.join('\n')}\n`;
        const pattern = patternOf(text, laid.map((run) => [`l${Math.min(run.row + 2, rows.length + 2)}`, 0, run.from, run.letters] as const));
        const worked = workedSize(pattern, 0);
        // Rows that can't be worked as they are written are no rows to compare.
        fc.pre(worked.fabric.findings.every(({ degree }) => degree !== 'wrong'));
        if (new Set(worked.colours.yarn).size > 1) coloured++;
        expectSameFabric(pattern, 0, terms);
      }),
      { numRuns: 400, seed: 30 },
    );
    expect(coloured).toBeGreaterThan(100);
  });
});
