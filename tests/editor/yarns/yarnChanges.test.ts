import { describe, expect, it } from 'vitest';
import { changedYarn, hexColour, recoloured, swappedYarns, withYarn } from '../../../src/editor/yarns/yarnChanges.ts';
import { yarnWarnings } from '../../../src/editor/yarns/yarnWarnings.ts';
import { removeYarn } from '../../../src/editor/bench/commands/removeYarn.ts';
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

  it('draws motifs in another yarn when theirs goes', () => {
    const pattern = { ...three, motifs: [{ ...TICK, cells: ['.C', 'C.', 'CC'] }] };
    expect(after(pattern, removeYarn('C', 'B')(benchOf(pattern))).motifs[0]!.cells).toEqual(['.B', 'B.', 'BB']);
  });

  it('leaves a yarn that rows are worked in', () => {
    expect(removeYarn('A', 'B')(benchOf(three))).toBeNull();
    expect(removeYarn('C', 'C')(benchOf(three))).toBeNull();
    expect(removeYarn('C', 'Q')(benchOf(three))).toBeNull();
  });
});
