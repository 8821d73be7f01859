import { describe, expect, it } from 'vitest';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import { sizeParts } from '../../../src/engine/notation/sizeParts.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import { made, workText } from '../workText.ts';

const NAMES = ['S', 'M', 'L'];
const read = (text: string) => readRow(text, { terms: 'us', sizes: 3, sizeNames: NAMES, letters: ['A', 'B'] });
const HEAD = 'Sizes\nSizes: S (M, L)\n\nPIECE\nFoundation: ch 11 (13, 15).\nRow 1: sc in 2nd ch from hook and in each ch across.\n';

describe('clauses for some sizes only', () => {
  it.each([
    ['Sizes S and L: ch 1, turn, sc in next 5 (7) sts. Size M: ch 1, turn, sc in next 9 sts.', [[0, 2], [1]]],
    ['ch 1, turn. Sizes M, and L: sc in next st.', [null, [1, 2]]],
    ['ch 1, turn (sizes M and L only: 2 sc in next st), sc in next 3 sts', [null, [1, 2], null]],
    ['Size S: sc in next st. All sizes: sc in next st.', [[0], null]],
    ['for size l: sc in next st', [[2]]],
  ])('%s', (text, sizes) => {
    expect(sizeParts(text, NAMES)?.map((part) => part.sizes)).toEqual(sizes);
  });

  it('leaves rows without such words, and patterns of one size, alone', () => {
    expect(sizeParts('sc in each st across', NAMES)).toBeNull();
    expect(sizeParts('Size XL: sc in next st', NAMES)).toBeNull();
    expect(sizeParts('Size S: sc in next st', [''])).toBeNull();
  });

  it('works in each size what stands for it, with the number of its own', () => {
    const text = `${HEAD}Row 2: Sizes S and L: ch 1, turn, sc in next 9 (13) sts, 2 sc in last st. Size M: ch 1, turn, sc in each st across. (11 (12, 15) sc)`;
    expect([0, 1, 2].map((size) => made(text, size).at(-1))).toEqual([11, 12, 15]);
    expect([0, 1, 2].flatMap((size) => workText(text, size).findings)).toEqual([]);
  });

  it('says at the very words what is wrong in a part', () => {
    const text = 'Size S: sc in next 2 sts. Size M: flurble.';
    const [found] = read(text).findings;
    expect(text.slice(...found!.where.text!)).toBe('flurble');
  });

  it.each([
    'Sizes S and L: ch 1, turn, sc in next 5 (7) sts. Size M: ch 1, turn, sc in next 9 sts. (5 (9, 7) sc)',
    'ch 1, turn. Sizes M and L: 2 sc in next st. All sizes: sc in next 3 (4, 5) sts. (3 (6, 7) sts)',
  ])('writes what it read: %s', (text) => {
    const once = read(text);
    const words = writeRow(once.body, once.stated, { terms: 'us', sizeNames: NAMES });
    const again = read(words);
    expect(writeRow(again.body, again.stated, { terms: 'us', sizeNames: NAMES })).toBe(words);
    const plain = (value: unknown) => JSON.stringify(value, (key, part: unknown) => (key === 'range' ? undefined : part));
    expect(plain(again.body)).toBe(plain(once.body));
  });
});
