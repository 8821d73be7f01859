import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/engine/6-drawing/textSize.ts';
import { wrapText } from '../../../src/engine/6-drawing/wrapText.ts';

const TEN = textWidth('x'.repeat(10), 2);

describe('text in lines', () => {
  it.each([
    ['', ['']],
    ['short', ['short']],
    ['ten at most', ['ten at', 'most']],
    ['exactly 10', ['exactly 10']],
    ['aaaaaaaaaaaaaaaaaaaaaaaaa b', ['aaaaaaaaaa', 'aaaaaaaaaa', 'aaaaa b']],
    ['a bbbbbbbbbbbb', ['a', 'bbbbbbbbbb', 'bb']],
    ['🧶🧶🧶🧶🧶🧶🧶🧶🧶🧶 🧶', ['🧶🧶🧶🧶🧶🧶🧶🧶🧶🧶', '🧶']],
  ])('no line of %j is wider than asked, and no letter is lost', (text, lines) => {
    expect(wrapText(text, 2, TEN)).toEqual(lines);
    for (const line of lines) expect(textWidth(line, 2)).toBeLessThanOrEqual(TEN + 1e-9);
    expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
  });
});
