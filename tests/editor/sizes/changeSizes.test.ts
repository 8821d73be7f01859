import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import { addSizes, removeSize, renameSize } from '../../../src/editor/sizes/commands/changeSizes.ts';
import { after, sockPattern } from './bookPiece.ts';

const cmOf = (pattern: ReturnType<typeof sockPattern>, name: string) => pattern.piece?.measures?.find((one) => one.name === name)?.cm;

describe('sizes of a pattern', () => {
  it('puts sizes in with the measurements that are known, the others as the last size has them, and names an only size', () => {
    const { pattern } = after(sockPattern(), addSizes([{ name: 'M', cm: { footGirth: 27, calf: 38 } }, { name: 'L', cm: { footLength: 26 } }], 'Add sizes'));
    expect(pattern.sizes).toEqual(['1', 'M', 'L']);
    expect(cmOf(pattern, 'footGirth')).toEqual([25, 27, 25]);
    expect(cmOf(pattern, 'footLength')).toEqual([24, 24, 26]);
    expect(cmOf(pattern, 'calf')).toEqual([null, 38, null]);
  });

  it('leaves numbers set by hand with the size they were set for', () => {
    const { pattern } = after(sockPattern({ pins: { around: [40] } }), addSizes([{ name: 'M', cm: {} }], 'Add a size'));
    expect(pattern.piece?.pins).toEqual({ around: [40, null] });
  });

  it('gives two sizes of one name different ones', () => {
    const once = after(sockPattern(), addSizes([{ name: 'M', cm: {} }], 'Add a size')).pattern;
    expect(after(once, addSizes([{ name: 'M', cm: {} }], 'Add a size')).pattern.sizes).toEqual(['1', 'M', 'M 2']);
  });

  it('takes a size out with its measurements, and one undo brings everything back', () => {
    const two = after(sockPattern(), addSizes([{ name: 'M', cm: { footGirth: 27 } }], 'Add a size')).pattern;
    const { pattern, inverse } = after(two, removeSize(0));
    expect([pattern.sizes, cmOf(pattern, 'footGirth')]).toEqual([['M'], [27]]);
    expect(applyTransaction(pattern, inverse)).toMatchObject({ ok: true, pattern: two });
  });

  it('does not take the only size out, and makes no step of a name that stays', () => {
    const state = { pattern: sockPattern(), at: 1 } as Parameters<ReturnType<typeof removeSize>>[0];
    expect(removeSize(0)(state)).toBeNull();
    expect(renameSize(0, '')(state)).toBeNull();
    expect(renameSize(3, 'S')(state)).toBeNull();
  });
});
