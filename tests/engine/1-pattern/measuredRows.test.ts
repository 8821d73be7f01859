import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { describeFinding } from '../../../src/engine/readings/checks/prose.ts';

const HEAD = 'Scarf\nTerms: US\nGauge: 16 sts and 20 rows = 10 cm in sc\n\nSCARF\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: ch 1, turn, sc in each st across.\n';

function read(rows: string, head = HEAD) {
  const { pattern, findings } = patternFromText(head + rows);
  const lines = pattern!.sections[0]!.lines.flatMap((line) => (line.kind === 'row' ? [line] : []));
  return { lines, findings, said: findings.filter(({ rule }) => rule === 'rowsAssumed') };
}

describe('rows worked to a length', () => {
  // 20 rows in 10 cm: the arithmetic of the gauge.
  it.each([
    ['of the whole part so far', 'Rep row 2 until piece measures 10 cm.', 18],
    ['in inches, to the nearest row', 'Rep row 2 until it measures 4 ins from beg.', 18],
    ['in inches and a fraction', 'Repeat row 2 until work measures 4½ inches.', 21],
    ['of these rows alone', 'Work even for 5 cm.', 10],
    ['in whole repeats', 'Rep last 2 rows for 5.4 cm.', 10],
    ['broken over two lines', 'Repeat row 2 until\npiece measures 10 cm.', 18],
    ['under a label of its own', 'Row 3: rep row 2 until piece measures 10 cm.', 18],
    ['already reached: one row at least', 'Rep row 2 until piece measures 0.5 cm.', 1],
  ])('%s: %s', (_, rows, count) => {
    const { lines, said } = read(`${rows}\n`);
    expect(lines.at(-1)!.label.rows).toBe(count);
    expect(said.map(({ degree, where, found }) => [degree, where.line, found])).toEqual([['doubtful', 'l4', count]]);
  });

  it('are as many as the number of the row after them says, where it does', () => {
    const { lines, findings } = read('Rep row 2 until piece measures 10 cm.\nRow 25: ch 1, turn, sc in each st across.\nRow 26: ch 1, turn, sc in each st across.\n');
    expect(lines.slice(3).map(({ label }) => [label.rows, label.start])).toEqual([[22, null], [1, null], [1, null]]);
    expect(findings).toEqual([]);
  });

  it('say what was assumed', () => {
    expect(read('Rep row 2 until piece measures 10 cm.\n').said.map(describeFinding)).toEqual(['10 cm of this part in all is taken for 18 more rows, by the gauge of 20 rows in 10 cm. Count your own.']);
    expect(read('Work even for 5 cm.\n', HEAD.replace(/Gauge.*\n/, '')).said.map(describeFinding)).toEqual(['5 cm is taken for 9 rows, by a middle gauge, as the pattern gives none. Count your own.']);
  });

  it('are one number a size', () => {
    const { lines } = read('Rep row 2 until piece measures 10 (15) cm.\n', HEAD.replace('Terms: US', 'Terms: US\nSizes: S (M)'));
    expect(lines.at(-1)!.label.rows).toEqual([18, 28]);
  });

  it.each([['Next 3 rows: rep row 2 (until piece measures 30 cm).', 3], ['Rows 3-6: rep row 2 until piece measures 30 cm.', 4], ['Row 3: ch 1, turn, sc in each st for 2 in a row.', 1]])('are not reckoned where the label has their number: %s', (rows, count) => {
    const { lines, said } = read(`${rows}\n`);
    expect(lines.at(-1)!.label.rows).toBe(count);
    expect(said).toEqual([]);
  });
});
