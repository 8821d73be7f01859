import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { EXAMPLES } from '../../reference/workExample.ts';
import { compactRow } from './compactRow.ts';

/** Instructions of an example with the words of each that are not read. */
function unreadOf(id: string): string[] {
  const example = EXAMPLES.find((one) => one.id === id)!;
  return example.rows.flatMap((row) => readRow(row.instruction, { terms: 'us', sizes: 1 }).findings.map(({ found }) => String(found)));
}

describe('published examples put in standard notation', () => {
  it.each(['we-s01', 'we-s06', 'we-s09', 'we-s10', 'we-s12', 'we-s13', 'we-s08', 'we-s14', 'we-s19', 'we-s21', 'we-s22', 'we-s23', 'we-s24'])('%s reads without a finding, every row', (id) => {
    expect(unreadOf(id), EXAMPLES.find((one) => one.id === id)!.source.title).toEqual([]);
  });

  // What is told in other words than instructions stays unread, and nothing else does.
  it.each([
    ['we-s03', ['widen 1 in the centre of every 8th row', '5 more times']],
    ['we-s04', ['last of 25 ribs', '21 more widening rows worked']],
    ['we-s05', ['over the point']],
    ['we-s07', ['continue 1 sc fewer each row']],
    ['we-s11', ['left at the end of each of the 15 short rows']],
    ['we-s15', ['sc in 3rd ch of next loop', '(sc 2 tog between petals, sc in next st, ch 5) once for each petal']],
    ['we-s17', ['join at centre ch of underarm']],
  ] as const)('%s: only what is no instruction stays unread', (id, unread) => {
    expect(unreadOf(id)).toEqual(unread);
  });

  it('reads a crossed stitch, a spot and a bead as what they are: not in the catalogue', () => {
    for (const id of ['we-s02', 'we-s16', 'we-s18']) {
      for (const words of unreadOf(id)) expect(words).toMatch(/cross|spot|bead|plain|skipped|sts|increasing|extra|over|along/);
    }
  });

  it('keeps the order of the words in every row that is read', () => {
    const row = EXAMPLES.find((one) => one.id === 'we-s17')!.rows.find(({ instruction }) => instruction.includes('puff'))!;
    expect(compactRow(readRow(row.instruction, { terms: 'us', sizes: 1 }).body)).toBe("ch1 turn (<sc@same puff'3@same>@next1 skip2)x39 sc@last");
  });
});
