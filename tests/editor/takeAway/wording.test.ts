import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { setWording } from '../../../src/editor/takeAway/setWording.ts';
import { rowInWords, tellingRow } from '../../../src/editor/takeAway/tellingRow.ts';
import { FORMS, writtenPattern } from '../../../src/editor/takeAway/writtenPattern.ts';
import { after, benchOf, LEG } from '../bench/benchOf.ts';

const TOE: Pattern = patternFromText(`Toe
Terms: US

TOE (worked in rounds)
Foundation: ch 5.
Row 1: sc in 2nd ch from hook and in each ch across. (4 sc)
Row 2: ch 1, turn, *sc in next st, 2 sc in next st; rep from * to end. (6 sc)
Row 3: ch 1, turn, sc in next 6 sts.
`).pattern!;

const words = (pattern: Pattern, form: keyof typeof FORMS) => FORMS[form].write(writtenPattern(pattern, benchOf(pattern).grids, pattern.wording?.terms ?? pattern.terms, pattern.wording ?? {}));

describe('the wording of a pattern', () => {
  it('is chosen one thing at a time, each a step that can be taken back', () => {
    const short = after(LEG, setWording({ runs: 'short' })(benchOf(LEG)));
    expect(short.wording).toEqual({ runs: 'short' });
    expect(after(short, setWording({ count: 'dash' })(benchOf(short))).wording).toEqual({ runs: 'short', count: 'dash' });
  });

  it('leaves nothing in the document where all is as usual', () => {
    const short = after(LEG, setWording({ runs: 'short' })(benchOf(LEG)));
    expect('wording' in after(short, setWording({ runs: 'long' })(benchOf(short)))).toBe(false);
    expect(setWording({ runs: 'long', terms: 'us' })(benchOf(LEG))).toBeNull();
  });

  it('is that of everything that is taken away', () => {
    const worded: Pattern = { ...TOE, wording: { runs: 'short', repeats: 'bracket', count: 'dash', terms: 'uk' } };
    expect(words(TOE, 'text')).toContain('Row 2: ch 1, turn, *sc in next st, 2 sc in next st; rep from * to end. (6 sc)');
    expect(words(worded, 'text')).toContain('Row 2: ch 1, turn, [1 dc, 2 dc in next st] to end — 6 dc.');
    expect(words(worded, 'markdown')).toContain('**Row 2:**');
    expect(words(worded, 'html')).toContain('<p><b>Row 2:</b> ch 1, turn, [1 dc, 2 dc in next st] to end');
  });

  it('reads back the same in every wording', () => {
    for (const runs of ['long', 'short'] as const) for (const repeats of ['star', 'bracket'] as const) for (const count of ['paren', 'dash'] as const) {
      const back = patternFromText(words({ ...TOE, wording: { runs, repeats, count } }, 'text')).pattern!;
      const made = (pattern: Pattern) => benchOf(pattern).fabric.rows.map((row) => [row.number, row.made, row.stated]);
      expect(made(back)).toEqual(made(TOE).map(([number, rowMade, stated], index) => [number, rowMade, index === 0 ? stated : rowMade]));
    }
  });
});

describe('the row that a wording is shown on', () => {
  it('is the one on which most of it can be seen', () => {
    const { grids } = benchOf(TOE);
    const row = tellingRow(TOE, grids.map((grid) => grid.fabric), 0)!;
    expect([row.section, row.label]).toEqual(['Toe', 'Row 2']);
    expect(rowInWords(TOE, row, 'uk', { repeats: 'bracket', count: 'dash' })).toBe('ch 1, turn, [dc in next st, 2 dc in next st] to end — 6 dc.');
  });

  it('has its count, though its line states none, and its numbers in all sizes', () => {
    const plain: Pattern = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.slice(0, 2).map((line) => ({ ...line, text: line.text.replace(/ \(10.*$/, '') })) }] };
    const { grids } = benchOf(plain);
    const row = tellingRow(plain, grids.map((grid) => grid.fabric), 0)!;
    expect(rowInWords(plain, row, 'us', {})).toMatch(/\(10 \(12\) sc\)$/);
  });

  it('is none in a pattern without rows', () => {
    const bare: Pattern = { ...LEG, sections: [] };
    expect(tellingRow(bare, benchOf(bare).grids.map((grid) => grid.fabric), 0)).toBeNull();
  });
});
