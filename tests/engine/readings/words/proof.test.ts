import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openPatternFile } from '../../../../src/engine/1-pattern/file.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { DISC, PANEL, SOCK } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { wordsToText } from '../../../../src/engine/readings/words/wordsToText.ts';
import { writeWords } from '../../../../src/engine/readings/words/writeWords.ts';
import { measure, pieceOf, requestOf } from '../../2-construct/recipes/pieceOf.ts';

function demo(): Pattern {
  const opened = openPatternFile(readFileSync(new URL('../../../../static/puffin-quay.json', import.meta.url), 'utf8'));
  if (opened.kind !== 'ok') throw new Error(opened.kind);
  return opened.pattern;
}

const MEASURES = (['footGirth', 'footLength', 'legLength', 'calf', 'width', 'topWidth', 'length', 'height', 'endGirth', 'across'] as const).map((name, i) => measure(name, 20 + i, 22 + i, 24.5 + i));
const recipe = (settings: PieceSettings) => (): Pattern => pieceOf(requestOf(settings, MEASURES)).pattern;

/** What a technical editor strikes out, and what it is. */
const SLIPS: readonly (readonly [what: string, found: RegExp])[] = [
  ['one of many', /(?<![\d,(] ?|\d[\d ()]*)\b1 (?:sts|chs|sps|rows|rnds|times|sl sts|row ends)\b/],
  ['many of one', /\b(?:[2-9]|\d\d+) (?:st|ch|row|rnd|sl st|puff st)\b(?! (?:ends?|from|before|after|of)\b|-)/],
  ['a comma or stop too many', /,,|,\.|\.,|\.\.|;;|;,| ,| \.|: :/],
  ['a blank too many', / {2}|\( | \)|\[ | \]/],
  ['a word twice', /\b(\p{L}{2,}) \1\b/u],
  ['an article before a word that takes another', /\ba (?:hdc|ehdc|[aeio]\w+)\b|\ban (?:sc|dc|tr|st|ch)\b/],
  ['nothing in brackets', /\(\)|\[\]/],
  ['a number that is none', /NaN|undefined|null|Infinity|-\d+ st/],
  ['a clause that hangs', /(?:, and|, then|,|;|:) *$/],
];

describe('the words as a technical editor reads them', () => {
  it.each<[string, () => Pattern]>([
    ['Puffin Quay', demo],
    ['a boot sock with loop and fringe', recipe({ ...SOCK, loop: { cm: 8, yarn: 'B' }, fringe: { every: 2, strands: 3, cm: 12, yarn: 'C' } })],
    ['a sock in rounds with a flap', recipe({ ...SOCK, leg: { ...SOCK.leg, way: 'rounds', calf: true }, heel: { ...SOCK.heel, kind: 'flap', yarn: 'C' } })],
    ['a panel with bobbles', recipe({ ...PANEL, stitch: 'hdc', bobbles: { every: 5, at: 0.5 } })],
    ['a disc in double crochet', recipe({ ...DISC, stitch: 'dc' })],
    ['an oval', recipe({ kind: 'oval', yarn: 'A' })],
    ['a ball', recipe({ kind: 'ball', yarn: 'B' })],
  ])('of %s have no slip of number, article or stop, in US and UK terms, in all sizes and in each', (_, make) => {
    const pattern = make();
    const worked = pattern.sizes.map((_size, size) => {
      const fabric = work(construct(pattern, size));
      return { size, fabric, colours: colour(pattern, fabric, size) };
    });
    for (const sizes of [worked, ...worked.map((one) => [one])]) {
      for (const terms of ['us', 'uk'] as const) {
        const lines = wordsToText(writeWords({ pattern, sizes, terms })).split('\n');
        const slips = lines.flatMap((line) => SLIPS.flatMap(([what, found]) => (found.test(line) ? [`${what}: “${found.exec(line)![0]}” in ${line}`] : [])));
        expect(slips).toEqual([]);
        for (const line of lines) expect([...line].filter((mark) => mark === '(').length, line).toBe([...line].filter((mark) => mark === ')').length);
      }
    }
  });

  it.each([
    ['one of many', 'sc in next 1 sts'],
    ['many of one', 'sc in next 4 st'],
    ['a comma or stop too many', 'sc in next st,, turn'],
    ['a blank too many', 'sc  in next st'],
    ['a word twice', 'in in next st'],
    ['an article before a word that takes another', 'with a hdc'],
    ['a number that is none', 'NaN sts'],
    ['a clause that hangs', 'sc in next st, '],
  ])('are looked through for %s: “%s” is found', (what, line) => {
    expect(SLIPS.filter(([, found]) => found.test(line)).map(([name]) => name)).toContain(what);
  });
});
