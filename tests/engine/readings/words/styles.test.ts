import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { readRow } from '../../../../src/engine/notation/readRow.ts';
import { writeRow } from '../../../../src/engine/notation/writeRow.ts';
import type { WordStyle } from '../../../../src/engine/notation/writeWork.ts';
import type { Instruction } from '../../../../src/engine/notation/instruction.ts';
import { wordsToHtml, wordsToMarkdown } from '../../../../src/engine/readings/words/wordsToMarkup.ts';
import { wordsToText } from '../../../../src/engine/readings/words/wordsToText.ts';
import { writeWords } from '../../../../src/engine/readings/words/writeWords.ts';
import { arbitraryRow } from '../../notation/arbitraryRow.ts';
import { statedWithoutRange, withoutRanges } from '../../notation/withoutRanges.ts';
import { fabricFacts, rowsIn, wordsOf, workedSize } from './workedSizes.ts';

const STYLES: readonly WordStyle[] = [{ runs: 'short' }, { repeats: 'bracket' }, { count: 'dash' }, { runs: 'short', repeats: 'bracket', count: 'dash' }];

/** Stars that a style writes as brackets. */
function bracketed(body: readonly Instruction[]): Instruction[] {
  return body.map((node) => (node.kind === 'repeat' ? { ...node, style: node.style === 'star' ? 'bracket' : node.style, body: bracketed(node.body) } : node));
}

describe('styles of wording', () => {
  const row = readRow('ch 1, turn, sc in next 6 sts, *sc in next 2 sts, 2 sc in next st; rep from * to last 3 sts, sc in next 3 sts. (26 sts)', { terms: 'us', sizes: 1 });
  it.each([
    [{}, 'ch 1, turn, sc in next 6 sts, *sc in next 2 sts, 2 sc in next st; rep from * to last 3 sts, sc in next 3 sts. (26 sts)'],
    [{ runs: 'short' }, 'ch 1, turn, 6 sc, *2 sc, 2 sc in next st; rep from * to last 3 sts, 3 sc. (26 sts)'],
    [{ repeats: 'bracket' }, 'ch 1, turn, sc in next 6 sts, [sc in next 2 sts, 2 sc in next st] to last 3 sts, sc in next 3 sts. (26 sts)'],
    [{ count: 'dash' }, 'ch 1, turn, sc in next 6 sts, *sc in next 2 sts, 2 sc in next st; rep from * to last 3 sts, sc in next 3 sts — 26 sts.'],
    [{ runs: 'short', repeats: 'bracket', count: 'dash' }, 'ch 1, turn, 6 sc, [2 sc, 2 sc in next st] to last 3 sts, 3 sc — 26 sts.'],
  ] as const)('%j', (style, text) => {
    expect(writeRow(row.body, row.stated, { terms: 'us', style })).toBe(text);
  });

  it.each(STYLES.flatMap((style, at) => [[style, 'us', 1, 20 + at] as const, [style, 'uk', 3, 30 + at] as const]))('%j in %s terms and %i sizes: rows read back the same', (style, terms, sizes, seed) => {
    fc.assert(
      fc.property(arbitraryRow(sizes), ({ body, stated }) => {
        const text = writeRow(body, stated, { terms, style });
        const read = readRow(text, { terms, sizes, letters: ['A', 'B', 'C'] });
        const wanted = style.repeats === 'bracket' ? bracketed(body) : body;
        expect(withoutRanges(read.body), text).toEqual(withoutRanges(wanted));
        expect(statedWithoutRange(read.stated), text).toEqual(statedWithoutRange(stated));
      }),
      { numRuns: 300, seed },
    );
  });
});

const DISC = `T\nTerms: US\n\nDISC\nRnd 1: magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\n${Array.from({ length: 8 }, (_, i) => `Rnd ${i + 3}: *sc in next ${i + 1} sts, 2 sc in next st; rep from * around.`).join('\n')}\n`;
const TOE = `T\nTerms: US\nSizes: S (M)\n\nTOE\nRnd 1: magic ring, 40 (48) sc in ring.\n${Array.from({ length: 4 }, (_, i) => `Rnd ${2 * i + 2}: (sc2tog, sc in next ${16 - 2 * i} (${20 - 2 * i}) sts, sc2tog) 2 times.\nRnd ${2 * i + 3}: sc in each st around.`).join('\n')}\n`;
const SLOPE = `T\nTerms: US\n\nPIECE\nFoundation: ch 31.\nRow 1: sc in 2nd ch from hook and in each ch across.\n${Array.from({ length: 6 }, (_, i) => `Row ${i + 2}: ch 1, turn, sc in next ${2 * i + 2} sts, sc2tog, sc in next ${26 - 3 * i} sts.`).join('\n')}\nRow 8: ch 1, turn, sc in next 3 sts. Leave the rest unworked.\n`;

describe('families of rows', () => {
  it.each([
    ['a disc', DISC, ['Rnd 3: *sc in next st, 2 sc in next st; rep from * around. (18 sc)', 'Rnds 4-10: work as rnd 3, with 1 more st between incs in each rnd. (6 sts more in each rnd, ending with 60 sc)']],
    ['the pairs of rounds of a toe, in two sizes', TOE, ['Rnd 3: sc in each st around. (36 (44) sc)', 'Rnds 4-9: work as rnds 2 and 3, with 2 fewer sts between decs each time. (counts 32 (40), 32 (40), 28 (36), 28 (36), 24 (32), 24 (32) sc)']],
    ['runs that move otherwise', SLOPE, ['Row 2: ch 1, turn, sc in next 2 sts, sc2tog, sc in next 26 sts. (29 sc)', 'Rows 3-7: work as row 2, with 2 more sts in the 1st run, and 3 fewer sts in the 2nd run in each row. (1 st fewer in each row, ending with 24 sc)']],
  ] as const)('%s: told by the row that they follow, and worked the same when read back', (_, text, lines) => {
    const pattern = patternFromText(text).pattern!;
    const written = wordsOf(pattern);
    const rows = rowsIn(written);
    for (const line of lines) expect(rows, written).toContain(line);
    const again = patternFromText(written).pattern!;
    for (const size of pattern.sizes.keys()) expect(fabricFacts(again, workedSize(again, size))).toEqual(fabricFacts(pattern, workedSize(pattern, size)));
    expect(wordsOf(again)).toBe(written);
  });

  it('leaves two rows that differ by a step as they are: saying so would be no plainer', () => {
    const written = rowsIn(wordsOf(patternFromText('T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc in next 8 sts, sc2tog.\nRow 3: ch 1, turn, sc in next 7 sts, sc2tog.').pattern!));
    expect(written.at(-1)).toBe('Row 3: ch 1, turn, sc in next 7 sts, sc2tog. (8 sc)');
  });
});

describe('the document in other forms', () => {
  const text = 'Shawl <b>& co</b>\nTerms: UK\nTension: 16 sts and 18 rows = 10 cm in dc\nHook: 4 mm\nYarn A: slate #4b5a6b\nNote: 5 < 6 & "so"\n\nPART_ONE\nFoundation: ch 13.\nRow 1: dc in 2nd ch from hook and in each ch across. (12 dc)\nRow 2: ch 1, turn, *dc in next st, 3-tr bobble in next st; rep from * to end.\n';
  const pattern = patternFromText(text).pattern!;
  const document = (terms: 'us' | 'uk') => writeWords({ pattern, sizes: [workedSize(pattern, 0)], terms });

  it('HTML escapes every text and has no mark of the pattern as its own', () => {
    const html = wordsToHtml(document('uk'));
    expect(html).toContain('<h1>Shawl &lt;b&gt;&amp; co&lt;/b&gt;</h1>');
    expect(html).toContain('5 &lt; 6 &amp; &quot;so&quot;');
    expect(html.match(/<(?!\/?(html|head|meta|title|body|h1|h2|section|dl|dt|dd|p|b|small|!doctype)\b)/g)).toBeNull();
  });

  it('Markdown keeps the stars of repeats', () => {
    const markdown = wordsToMarkdown(document('uk'));
    expect(markdown).toContain('**Row 2:** ch 1, turn, \\*dc in next st, 3-tr bobble in next st; rep from \\* to end. (12 sts)');
    expect(markdown.split('\n').filter((line) => line.startsWith('## '))).toEqual(['## Materials', '## Tension', '## Abbreviations', '## Special stitches', '## Notes', '## PART\\_ONE'].map((line) => line.replace('## Tension', '## Gauge')));
  });

  it('names the special stitches that the rows use, in the terms written, and reads them back as the same stitch', () => {
    expect(document('us').special).toEqual([{ name: '3-dc bobble', meaning: '3 dc worked together at their tops, all in one st' }]);
    const again = patternFromText(wordsToText(document('us'))).pattern!;
    expect(fabricFacts(again, workedSize(again, 0))).toEqual(fabricFacts(pattern, workedSize(pattern, 0)));
  });
});
