import { describe, expect, it } from 'vitest';
import { changedYarn, hexColour, recoloured, swappedYarns, withYarn } from '../../../src/editor/yarns/yarnChanges.ts';
import { yarnWarnings } from '../../../src/editor/yarns/yarnWarnings.ts';
import { removeYarn, yarnUse, yarnUseWords } from '../../../src/editor/bench/commands/removeYarn.ts';
import { setYarns } from '../../../src/editor/bench/commands/setYarns.ts';
import { after, benchOf, LEG, TICK } from '../bench/benchOf.ts';

const { yarns } = LEG;

describe('changing yarns', () => {
  it('adds one with a letter, a mark and a colour that none has', () => {
    const more = withYarn(yarns);
    expect(more.map((yarn) => yarn.letter)).toEqual(['A', 'B', 'C']);
    expect(new Set(more.map((yarn) => yarn.mark)).size).toBe(3);
    expect(new Set(more.map((yarn) => yarn.colour)).size).toBe(3);
  });

  it('takes the first letter that is free', () => {
    expect(withYarn(yarns.slice(1)).at(-1)!.letter).toBe('A');
  });

  it('has no letter for a twenty-seventh', () => {
    let all = yarns;
    for (let i = 0; i < 40; i++) all = withYarn(all);
    expect(all).toHaveLength(26);
  });

  it('swaps two: letters stay, all else changes over; twice is as before', () => {
    const swapped = swappedYarns(yarns, 'A', 'B');
    expect(swapped).toEqual([{ ...yarns[1], letter: 'A' }, { ...yarns[0], letter: 'B' }]);
    expect(swappedYarns(swapped, 'A', 'B')).toEqual(yarns);
  });

  it('changes one and leaves the others', () => {
    expect(changedYarn(yarns, 'B', { mark: 'ring' })).toEqual([yarns[0], { ...yarns[1], mark: 'ring' }]);
  });

  it('puts colours on in order and keeps those that get none', () => {
    expect(recoloured(yarns, ['#000000']).map((yarn) => yarn.colour)).toEqual(['#000000', yarns[1]!.colour]);
  });

  it.each([['#ABCDEF', '#abcdef'], ['abc', '#aabbcc'], [' #123456 ', '#123456'], ['red', null], ['#12345', null], ['', null]])('reads the colour %j as %j', (typed, colour) => {
    expect(hexColour(typed)).toBe(colour);
  });
});

describe('yarns side by side', () => {
  const of = (one: string, other: string) => yarnWarnings([{ ...yarns[0]!, colour: one }, { ...yarns[1]!, colour: other }])[0]!;

  it('warns of two that are alike', () => {
    expect(of('#4b5a6b', '#4c5b6a').warnings).toContain('hard to tell apart');
  });

  it('warns of red and green of one tone for those who see no red or no green', () => {
    expect(of('#b5651d', '#6b8e23').warnings.join()).toMatch(/who see no (red|green)/);
  });

  it('warns of two of one tone, however different', () => {
    const { warnings, contrast } = of('#c0392b', '#2e7d32');
    expect(contrast).toBeLessThan(1.5);
    expect(warnings).toContain('nearly the same in black and white');
  });

  it('has nothing against slate and chalk', () => {
    expect(of('#4b5a6b', '#f2efe6').warnings).toEqual([]);
  });

  it('warns of two print marks that are the same', () => {
    expect(yarnWarnings([yarns[0]!, { ...yarns[1]!, mark: yarns[0]!.mark }])[0]!.warnings).toContain('both have the same print mark');
  });

  it('warns of two print marks of nearly the same shape', () => {
    expect(yarnWarnings([{ ...yarns[0]!, mark: 'ring' }, { ...yarns[1]!, mark: 'dot' }])[0]!.warnings).toContain('their print marks are alike');
  });

  it('asks from where the pattern says', () => {
    expect(yarnWarnings(yarns, { leastDifference: 90 })[0]!.warnings).toContain('hard to tell apart');
  });
});

describe('taking yarns in and out', () => {
  const three = { ...LEG, yarns: withYarn(yarns) };

  it('is one step, and none where nothing changes', () => {
    const step = setYarns(three.yarns, 'Add a yarn')(benchOf(LEG));
    expect(after(LEG, step).yarns).toHaveLength(3);
    expect(setYarns(yarns, 'Nothing')(benchOf(LEG))).toBeNull();
  });

  it('draws motifs in another yarn when theirs goes, and says how many cells', () => {
    const pattern = { ...three, motifs: [{ ...TICK, cells: ['.C', 'C.', 'CC'] }] };
    const removed = removeYarn(benchOf(pattern), 'C', 'B');
    expect(removed.ok && removed.step.label).toBe('Take out C new yarn: 4 cells in B chalk');
    expect(after(pattern, removed.ok ? removed.step : null).motifs[0]!.cells).toEqual(['.B', 'B.', 'BB']);
  });

  it('puts another yarn into the rows that are worked in it, and says how many', () => {
    expect(yarnUse(benchOf(three), 'A')).toEqual({ rows: 7, cells: 0 });
    const removed = removeYarn(benchOf(three), 'A', 'B');
    expect(removed.ok && removed.step.label).toBe('Take out A slate: 7 rows in B chalk');
    const now = after(three, removed.ok ? removed.step : null);
    expect(now.yarns.map((yarn) => yarn.letter)).toEqual(['B', 'C']);
    expect(now.sections[0]!.lines[0]).toMatchObject({ text: 'with B, ch 11 (13).' });
  });

  it('takes out nothing that is not there, or for a yarn that is not there', () => {
    expect(removeYarn(benchOf(three), 'C', 'C').ok).toBe(false);
    expect(removeYarn(benchOf(three), 'C', 'Q')).toEqual({ ok: false, reason: 'There is no yarn Q to put in the place of C.' });
  });

  it.each([[{ rows: 1, cells: 0 }, '1 row'], [{ rows: 2, cells: 1 }, '2 rows and 1 cell'], [{ rows: 0, cells: 0 }, '']])('%j is %j', (use, words) => {
    expect(yarnUseWords(use)).toBe(words);
  });
});
