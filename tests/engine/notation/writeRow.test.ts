import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { lastRow, writeLabel } from '../../../src/engine/notation/writeLabel.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import type { RowLabel } from '../../../src/engine/notation/written.ts';

function written(text: string, options: Parameters<typeof writeRow>[2] = { terms: 'us' }, sizes = 1): string {
  const { body, stated } = readRow(text, { terms: 'us', sizes });
  return writeRow(body, stated, options);
}

describe('rows in print', () => {
  it.each([
    ['ch 1,turn;sc in each st across(26 sts)', 'ch 1, turn, sc in each st across. (26 sts)'],
    ['sc in 2nd ch from hook, sc in each ch across', 'sc in 2nd ch from hook and in each ch across.'],
    ['sc in 2nd ch from hook, dc in each ch across', 'sc in 2nd ch from hook, dc in each ch across.'],
    ['sc 6, inc, inc 3, dec', 'sc in next 6 sts, 2 sc in next st, 2 sc in each of next 3 sts, sc2tog.'],
    ['sc 12, leave 8 unworked (12 sc)', 'sc in next 12 sts. Leave 8 sts unworked. (12 sc)'],
    ['*sc 3, inc; rep from * 5 more times', '*sc in next 3 sts, 2 sc in next st; rep from * 5 more times.'],
    ['*sc 3, inc; rep from * to last 3 sts, sc 3', '*sc in next 3 sts, 2 sc in next st; rep from * to last 3 sts, sc in next 3 sts.'],
    ['(sc 3, inc) x6', '(sc in next 3 sts, 2 sc in next st) 6 times.'],
    ['((sc, ch 2, sc) in next st, sk 1) 4 times', '([sc, ch 2, sc] in next st, skip next st) 4 times.'],
    ['(2 dc, ch 2, 2 dc) in next ch-2 sp', '(2 dc, ch 2, 2 dc) in next ch-2 sp.'],
    ['ch 3 (counts as dc), turn, dc 3', 'ch 3 (counts as a st), turn, dc in next 3 sts.'],
    ['Join B with sl st in 12th st before seam, sc in same st', 'join B with a sl st in the 12th st before the seam, sc in same st.'],
    ['with a, ch 41', 'with A, ch 41.'],
    ['A sc 3, B sc 2', 'with A sc in next 3 sts, with B sc in next 2 sts.'],
    ['5-dc bobble, puff, V-st, ch-4 picot', '5-dc bobble in next st, puff st in next st, V-st in next st, ch-4 picot.'],
    ['BLO sc 3, FPdc around next dc, spike sc 2 rows below', 'BLO sc in next 3 sts, FPdc around next dc, spike sc in next st 2 rows below.'],
    ['sc in each st around, join', 'sc in each st around, join with sl st in first st.'],
    ['ch 4, join', 'ch 4, join to form a ring.'],
    ['sc in each st across (1 st more in each row, ending with 24 sts)', 'sc in each st across. (1 st more in each row, ending with 24 sts)'],
    ['sc in each st across (2 sts fewer in each row, ending with 8 sc)', 'sc in each st across. (2 sts fewer in each row, ending with 8 sc)'],
    ['rep rows 4 and 5', 'rep rows 4 and 5.'],
    ['rep rows 4-7', 'rep rows 4-7.'],
    ['', ''],
  ])('%s', (text, expected) => {
    expect(written(text)).toBe(expected);
  });

  it.each([
    ['sc in next 3 sts, hdc, dc 2, tr, dtr, skip 2 (8 sts)', 'dc in next 3 sts, htr in next st, tr in next 2 sts, dtr in next st, ttr in next st, miss next 2 sts. (8 sts)'],
    ['5-dc bobble in next st, FPdc around next dc (10 dc)', '5-tr bobble in next st, FPtr around next tr. (10 tr)'],
  ])('in UK terms: %s', (text, expected) => {
    expect(written(text, { terms: 'uk' })).toBe(expected);
  });

  it.each([
    [undefined, 'sc in next 20 (24, 28) sts, (sc in next 2 sts, sc2tog) 1 (2, 3) times, skip next 1 (2, 2) sts. (22 (28, 34) sc)'],
    [0, 'sc in next 20 sts, (sc in next 2 sts, sc2tog) 1 times, skip next st. (22 sc)'],
    [2, 'sc in next 28 sts, (sc in next 2 sts, sc2tog) 3 times, skip next 2 sts. (34 sc)'],
  ] as const)('in size %s', (size, expected) => {
    const options = size === undefined ? { terms: 'us' as const } : { terms: 'us' as const, size };
    expect(written('sc 20 (24, 28), (sc 2, sc2tog) 1 (2, 3) times, sk 1 (2, 2) sts (22 (28, 34) sc)', options, 3)).toBe(expected);
  });

  it('in yarn runs', () => {
    const runs = { terms: 'us', runs: true } as const;
    expect(written('ch 1, turn, with A sc in next 3 sts, with B sc in next 2 sts, with A 2 sc in next st', runs)).toBe('ch 1, turn, with A sc 3, B sc 2, A 2 sc in next st.');
    expect(written('*with A sc in next 3 sts, with B sc in next st; rep from * to last st, with A sc in next st', runs)).toBe('*A sc 3, B sc 1; rep from * to last st, A sc 1.');
  });
});

describe('labels in print', () => {
  const label = (word: RowLabel['word'], rows: RowLabel['rows'], side: RowLabel['side'] = null): RowLabel => ({ word, rows, start: null, side });

  it.each([
    [label('row', 1), 4, undefined, 'Row 4'],
    [label('row', 1, 'WS'), 4, undefined, 'Row 4 (WS)'],
    [label('row', 11), 4, undefined, 'Rows 4-14'],
    [label('round', 6, 'RS'), 3, undefined, 'Rnds 3-8 (RS)'],
    [label('row', [59, 63, 67]), 2, undefined, 'Rows 2-60 (64, 68)'],
    [label('row', [59, 63, 67]), 2, 1, 'Rows 2-64'],
    [label('row', 2), [61, 65, 69], undefined, 'Rows 61 (65, 69)-62 (66, 70)'],
    [label('row', 1), [61, 65, 69], 2, 'Row 69'],
    [label('foundation', 1), 0, undefined, 'Foundation'],
    [label('setup', 1, 'RS'), 0, undefined, 'Set-up row (RS)'],
    [label('next', 1), 7, undefined, 'Next row'],
    [label('next', [2, 3, 4]), 7, undefined, 'Next 2 (3, 4) rows'],
  ] as const)('%j from %j in size %s is %s', (given, first, size, expected) => {
    expect(writeLabel(given, first, size)).toBe(expected);
  });

  it('counts the last row in every size', () => {
    expect(lastRow([2, 3], [5, 6])).toEqual([6, 8]);
    expect(lastRow(2, [5, 6])).toEqual([6, 7]);
    expect(() => lastRow([2, 3, 4], [5, 6])).toThrow(RangeError);
  });
});
