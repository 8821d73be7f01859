import { wcagContrast } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Yarn } from '../../../src/engine/1-pattern/pattern.ts';
import { printLook } from '../../../src/engine/6-drawing/look.ts';
import { detailFor } from '../../../src/editor/chart/detail.ts';
import { INK_CODES, inksOnYarns, tonedInks } from '../../../src/editor/chart/inks.ts';

const yarn = (colour: string, mark: Yarn['mark'] = 'none'): Yarn => ({ letter: 'A', name: 'trial', colour, mark });
const inkOf = (colour: string, code: number): string => {
  const inks = inksOnYarns(printLook([yarn(colour)]));
  return inks.colours[inks.table[code]!]!;
};

describe('inks on yarns', () => {
  it.each([
    { colour: '#f2efe6', tone: 'dark' },
    { colour: '#1e1b18', tone: 'light' },
    { colour: '#e08a2e', tone: 'dark' },
    { colour: '#4b5a6b', tone: 'light' },
  ])('are $tone on $colour', ({ colour, tone }) => {
    const luminous = wcagContrast(inkOf(colour, 0), '#000000') > wcagContrast(inkOf(colour, 0), '#ffffff');
    expect(luminous ? 'light' : 'dark').toBe(tone);
  });

  it('stand out 3 : 1 at least from any yarn (WCAG 2.2, 1.4.11)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), fc.nat(INK_CODES - 1), (rgb, code) => {
        const colour = `#${rgb.toString(16).padStart(6, '0')}`;
        expect(wcagContrast(inkOf(colour, code), colour)).toBeGreaterThanOrEqual(3);
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('keep one entry a colour, and find it for each yarn', () => {
    const { cells, colours, table } = inksOnYarns(printLook([yarn('#ffffff'), yarn('#fefefe'), yarn('#101010')]));
    expect(cells).toEqual(['#ffffff', '#fefefe', '#101010']);
    expect(new Set(colours).size).toBe(colours.length);
    expect(table.slice(0, INK_CODES)).toEqual(table.slice(INK_CODES, 2 * INK_CODES));
    expect(colours[table[2 * INK_CODES]!]).not.toBe(colours[table[0]!]);
  });

  it('are black or white on white or near-black cells in black and white', () => {
    const { cells, colours } = inksOnYarns(printLook([yarn('#123456', 'dot'), yarn('#abcdef', 'solid')], { mono: true }));
    expect(cells[0]).toBe('#ffffff');
    expect(new Set(colours)).toEqual(new Set(['#000000', '#ffffff']));
  });
});

describe('tones of a chart in black and white seen from afar', () => {
  it('differ for all marks', () => {
    const marks = ['none', 'dot', 'slash', 'cross', 'bars', 'ring', 'solid', 'wedge'] as const;
    const yarns = marks.map((mark) => yarn('#123456', mark));
    const { cells } = tonedInks(inksOnYarns(printLook(yarns, { mono: true })), yarns);
    expect(new Set(cells).size).toBe(marks.length);
  });
});

describe('level of detail', () => {
  it.each([
    { px: 1, level: 'far', symbols: false },
    { px: 3.99, level: 'far', symbols: false },
    { px: 4, level: 'plain', symbols: false },
    { px: 6.5, level: 'small', symbols: true },
    { px: 10, level: 'work', symbols: true },
    { px: 30, level: 'close', symbols: true },
  ])('is $level for coloured cells of $px px', ({ px, level, symbols }) => {
    expect(detailFor(px, true)).toMatchObject({ level, symbols });
  });

  it('shows symbols earlier where no colours are to be read', () => {
    expect(detailFor(4, false).level).toBe('small');
    expect(detailFor(3.9, false).symbols).toBe(false);
  });
});
