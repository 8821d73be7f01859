import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines, cutToWidth, type Run } from '../../../src/engine/publish/type/breakLines.ts';
import { measureText } from '../../../src/engine/publish/type/measureText.ts';
import { printable } from '../../../src/engine/publish/type/printable.ts';
import { fontWidths, setWidth } from '../../setup/makeFontWidths.ts';

const text = (words: string): readonly Run[] => [{ text: words, face: 'text' }];
const wide = (line: readonly { readonly xMm: number; readonly widthMm: number }[]): number => line.at(-1)!.xMm + line.at(-1)!.widthMm;

describe('measuring', () => {
  it('uses the widths of the font files that are shipped', () => {
    expect(existsSync(join(import.meta.dirname, '../../../src/publish/fonts/files/Literata-Regular.ttf'))).toBe(true);
    expect(readFileSync(join(import.meta.dirname, '../../../src/engine/publish/type/fontWidths.ts'), 'utf8')).toBe(fontWidths());
  });

  it.each([
    ['a', 'text', 10, 0.539 * 10 * (25.4 / 72), 'advance width of a in Literata: 539 of 1000'],
    ['0', 'label', 10, 0.528 * 11 * (25.4 / 72), 'advance width of 0 in Alegreya Sans: 528 of 1000, set 1.1 times as large'],
    ['e\u0301', 'text', 10, 0.508 * 0 + measureText('e', 'text', 10), 'a combining mark has no width of its own'],
  ] as const)('gives %s in %s at %d pt %d mm: %s', (word, face, sizePt, expected, source) => {
    expect(source).not.toBe('');
    expect(measureText(word, face, sizePt)).toBeCloseTo(expected, 6);
  });

  it.each(['text', 'italic', 'bold', 'label', 'strong'] as const)('is never less than what a line takes as it is set, with its letters drawn together: %s', (face) => {
    for (const said of ['Rows 4–17 (19, 21): ch 1, turn, sc in each st across, sc in next unworked st.', 'AVATAR To Ty fi ffl', '(48 (56, 64) sc)', 'Größe, œuvre, čaj, 10½ in']) {
      const set = setWidth(said, face) * measureText('x', face, 10) / setWidth('x', face);
      expect(measureText(said, face, 10)).toBeGreaterThanOrEqual(set - 0.05);
      expect(measureText(said, face, 10)).toBeLessThan(set * 1.1);
    }
  });

  it('is generous with characters that the faces do not have', () => {
    expect(measureText('🧶', 'text', 10)).toBeGreaterThan(measureText('m', 'text', 10));
    expect(measureText('編', 'text', 10)).toBeGreaterThan(measureText('m', 'text', 10));
  });
});

describe('breaking lines', () => {
  it('keeps all words in order, and every line inside the width', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 60 }), fc.integer({ min: 15, max: 140 }), (words, widthMm) => {
        const said = printable(words.join(' '));
        const lines = breakLines(text(said), 10, widthMm, measureText);
        for (const line of lines) expect(wide(line)).toBeLessThanOrEqual(widthMm + 1e-6);
        expect(lines.flatMap((line) => line.map((run) => run.text)).join('').replaceAll(' ', '')).toBe(said.replaceAll(' ', ''));
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('cuts a word that is longer than a line, and never overflows', () => {
    const lines = breakLines(text('x'.repeat(10_000)), 10, 100, measureText);
    expect(lines.length).toBeGreaterThan(150);
    expect(Math.max(...lines.map(wide))).toBeLessThanOrEqual(100);
    expect(lines.map((line) => line.map((run) => run.text).join('')).join('')).toBe('x'.repeat(10_000));
  });

  it('leaves a calmer edge than filling line by line', () => {
    const said = 'with B, ch 1, turn, *B sc 7, A sc 3, B sc 3, A sc 2, B sc 1; rep from * to last 8 sts, B sc 8, and join the yarn that is wanted next without a knot in it';
    const rag = (lines: readonly (readonly { readonly xMm: number; readonly widthMm: number }[])[]): number => lines.slice(0, -1).reduce((sum, line) => sum + (60 - wide(line)) ** 2, 0);
    const greedy: string[] = [];
    for (const word of said.split(' ')) {
      const longer = greedy.length === 0 ? word : `${greedy.at(-1)!} ${word}`;
      if (greedy.length > 0 && measureText(longer, 'text', 10) <= 60) greedy[greedy.length - 1] = longer;
      else greedy.push(word);
    }
    const filled = greedy.map((line) => [{ xMm: 0, widthMm: measureText(line, 'text', 10) }]);
    const broken = breakLines(text(said), 10, 60, measureText);
    expect(broken.length).toBeLessThanOrEqual(filled.length + 1);
    expect(rag(broken)).toBeLessThanOrEqual(rag(filled));
  });

  it('places runs of several faces one after another, those of one word without a gap', () => {
    const [line] = breakLines([{ text: 'A slate', face: 'bold' }, { text: ': ', face: 'text' }, { text: '140 m', face: 'text' }], 10, 100, measureText);
    expect(line!.map((run) => run.text)).toEqual(['A slate', ': 140 m']);
    expect(line![1]!.xMm).toBeCloseTo(line![0]!.widthMm, 9);
  });

  it('cuts a running head with … inside its width', () => {
    const cut = cutToWidth('Puffin Quay '.repeat(50), 'italic', 8.5, 60, measureText);
    expect(cut.endsWith('…')).toBe(true);
    expect(measureText(cut, 'italic', 8.5)).toBeLessThanOrEqual(60);
    expect(cutToWidth('Puffin Quay', 'italic', 8.5, 60, measureText)).toBe('Puffin Quay');
  });

  it('lets no control character or mark of direction through', () => {
    expect(printable('a\u0000b\u202ec\u2066d\n e\t f')).toBe('abcd e f');
  });
});
