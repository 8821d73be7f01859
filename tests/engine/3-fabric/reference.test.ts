import { describe, expect, it } from 'vitest';
import { EXAMPLES, workExample, type Example } from '../../reference/workExample.ts';
import { made, rules, workText } from '../workText.ts';

/** Units that count stitches; others (meshes, patterns, crosses) are no stitch counts. */
const countsStitches = (row: Example['rows'][number]) => row.derived !== undefined && (!row.unit || row.unit.startsWith('dc'));

/** Whole examples in standard notation: every row, worked from the foundation, makes what follows from its words. */
const WHOLE = ['we-s01', 'we-s05', 'we-s06', 'we-s09', 'we-s10', 'we-s12', 'we-s13', 'we-s14', 'we-s15', 'we-s17', 'we-s23'];

/** Examples whose later rows are told in other words: the first rows, as many as are in standard notation. */
const FIRST_ROWS: Record<string, number> = { 'we-s02': 2, 'we-s03': 3, 'we-s04': 7, 'we-s11': 16, 'we-s18': 5, 'we-s19': 13, 'we-s20': 3, 'we-s22': 7 };

describe('published examples, worked from their foundation', () => {
  it.each(WHOLE.map((id) => [id, EXAMPLES.find((one) => one.id === id)!] as const))('%s, every row', (_, example) => {
    const { worked } = workExample(example);
    const rows = example.rows.map((row, i) => [row.label, worked[i]?.made, row.derived] as const).filter((_, i) => countsStitches(example.rows[i]!));
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.filter(([, found, derived]) => found !== derived), `${example.source.title} (${example.source.year ?? 'undated'})`).toEqual([]);
  });

  it.each(Object.entries(FIRST_ROWS))('%s, the first %i rows', (id, count) => {
    const example = EXAMPLES.find((one) => one.id === id)!;
    const { worked } = workExample(example, count);
    const rows = example.rows.slice(0, count).filter(countsStitches);
    expect(rows.map((row) => worked[example.rows.indexOf(row)]?.made), `${example.source.title} (${example.source.year ?? 'undated'})`).toEqual(rows.map((row) => row.derived));
  });

  it.each([
    ['we-s06', 14, 61, 59, "The Ladies' Work-Book: a count carried over from another piece"],
    ['we-s09', 5, 72, 132, "The Ladies' Work-Book: a count that doubling eleven three times can't give"],
  ])('%s: finds the printed count that can not be, in row %i', (id, row, said, makes) => {
    const { findings } = workExample(EXAMPLES.find((one) => one.id === id)!);
    const wrong = findings.filter((found) => found.rule === 'statedCount');
    expect(wrong.map((found) => [found.where.line, found.found, found.expected])).toEqual([[String(row), said, makes]]);
  });
});

describe('turning chains and foundation chains', () => {
  // Turning chains 0, 1, 2, 3, 4, 5 and what counts: a how-to publisher, a pattern designer's page and the Crochet Guild of America's lessons (1997).
  it.each([
    ['sc', 1, 10], ['hdc', 2, 11], ['dc', 3, 11], ['tr', 4, 11], ['dtr', 5, 11],
  ])('a turning chain before %s of %i chains: ten more stitches make %i in all', (stitch, chains, count) => {
    const taken = count - 10;
    const text = `Foundation: ch 12.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch ${chains}, turn, ${stitch} in next ${11 - taken} sts.`;
    expect(made(text).at(-1)).toBe(11);
    expect(workText(text).rows.at(-1)!.used).toBe(11);
  });

  // chains − skipped + (1 if the turning chain counts) = stitches: sc n+1/2nd (two tutorials), hdc n+1/3rd (a knitters' forum), dc n+2/4th (a quilter's page), tr n+3/5th and dtr n+4/6th by the same rule.
  it.each([
    ['sc', 1, 2], ['hdc', 1, 3], ['dc', 2, 4], ['tr', 3, 5], ['dtr', 4, 6],
  ])('%s: n + %i chains, first in chain %i from the hook, give n stitches', (stitch, more, nth) => {
    for (const n of [5, 12, 33]) expect(made(`Foundation: ch ${n + more}.\nRow 1: ${stitch} in ${nth}${nth === 2 ? 'nd' : nth === 3 ? 'rd' : 'th'} ch from hook and in each ch across.`).at(-1)).toBe(n);
  });

  it('flags the published sample that asks for five more after the fifth of nine chains', () => {
    expect(rules(workText('Foundation: ch 9.\nRow 1: dc in 5th ch from hook, dc in next 5 chs.').findings)).toEqual(['wrong notEnoughPlaces']);
  });

  // Flat circle in single crochet: 6, 12, 18 … (two tutorials; 2πh/w). Hyperbolic plane, N = 1 from 6: 6, 12, 24, 48, 96 (a maker's page after Henderson & Taimiņa).
  it('flat circles and the hyperbolic plane have their published counts', () => {
    const flat = Array.from({ length: 6 }, (_, i) => `Rnd ${i + 3}: *sc in next ${i + 1} sts, 2 sc in next st; rep from * around.`).join('\n');
    expect(made(`Rnd 1: magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\n${flat}`)).toEqual([6, 12, 18, 24, 30, 36, 42, 48]);
    expect(made('Rnd 1: magic ring, 6 sc in ring.\nRnds 2-5: 2 sc in each st around.')).toEqual([6, 12, 24, 48, 96]);
    // N = 4 from 20: 25 (a university's page on the same).
    expect(made('Foundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, *sc in next 3 sts, 2 sc in next st; rep from * to end.').at(-1)).toBe(25);
  });

  // "*…; repeat from * n more times" is n + 1 in all: a maker's archive (sc, ch 1, skip, four more times = five).
  it('counts "more times" as one more in all', () => {
    expect(made('Foundation: ch 13.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, *sc in next st, ch 1, sk 1 st; rep from * 4 more times, sc in next 2 sts.').at(-1)).toBe(7);
    expect(made('Foundation: ch 13.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, [sc in next st, ch 1, sk 1 st] 5 times, sc in next 2 sts.').at(-1)).toBe(7);
  });
});
