import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { FORMS, writtenPattern } from '../../../src/editor/takeAway/writtenPattern.ts';
import { mendedSigns } from '../../../src/editor/words/mendedSigns.ts';
import { plainText } from '../../../src/editor/words/plainText.ts';
import { textOfMarkdown } from '../../../src/editor/words/textOfMarkdown.ts';
import { benchOf, LEG } from '../bench/benchOf.ts';

describe('the words of a pattern in Markdown', () => {
  it.each([
    ['a heading', '## Leg ##', 'Leg'],
    ['a label in bold', '**Row 2:** sc in next 4 sts', 'Row 2: sc in next 4 sts'],
    ['an entry of a list', '- **Hook:** 4.5 mm', 'Hook: 4.5 mm'],
    ['a star that was kept', '\\*sc in next st; rep from \\* to end', '*sc in next st; rep from * to end'],
    ['a star that begins a repeat', '*sc in next st, inc* 6 times', '*sc in next st, inc* 6 times'],
    ['two repeats', '*sc* twice, *dc* twice', '*sc* twice, *dc* twice'],
  ])('lose the marks of %s and nothing else', (_, marked, plain) => {
    expect(textOfMarkdown(marked)).toBe(plain);
  });

  it('are those that the tool wrote itself', () => {
    const words = writtenPattern(LEG, benchOf(LEG).grids, 'us', {});
    const back = patternFromText(plainText(FORMS.markdown.write(words)).text).pattern!;
    const plain = patternFromText(FORMS.text.write(words)).pattern!;
    expect(back.sections.map(({ lines }) => lines.map(({ text }) => text))).toEqual(plain.sections.map(({ lines }) => lines.map(({ text }) => text)));
    expect([back.title, back.sizes, back.gauge]).toEqual([plain.title, plain.sizes, plain.gauge]);
  });
});

describe('signs read in a wrong encoding', () => {
  const spoil = (text: string) => new TextDecoder('windows-1252').decode(new TextEncoder().encode(text));

  it.each(['Rows 2–6: sc in next 6 sts — 26 sts', '2½ × “ch 1”, turn…', 'crème Åse ß'])('are set right: %s', (text) => {
    expect(spoil(text)).not.toBe(text);
    expect(mendedSigns(spoil(text))).toBe(text);
  });

  it('are the only ones that change', () => {
    for (const text of ['Rows 2–6', 'café, Ärmel, Åse', '½ × ¾', 'Â', 'â€', 'â€“ – a good dash beside a spoilt one']) expect(mendedSigns(text)).toBe(text);
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom(...'abc –—×½“”é.,()') }), (text) => mendedSigns(spoil(text)) === text), { seed: 5 });
  });
});

describe('a text that is plain', () => {
  it.each(['Mat\n\nMAT\nRnd 1: magic ring, 6 sc in ring. (6 sc)', 'Row 1: *sc, ch 1; rep from * to end', '# of sts: 40', 'Row 1: 2 < 3'])('stays as it is: %s', (text) => {
    expect(plainText(text)).toEqual(text.startsWith('# ') ? { text: 'of sts: 40', told: 'The marks of Markdown were taken out.' } : { text, told: '' });
  });
});
