import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STITCHES } from '../../../src/engine/craft/stitches.ts';
import { STITCH_PHRASES, otherTerms, stitchName, stitchWord, toTerms } from '../../../src/engine/craft/terms.ts';

/** US and UK words side by side; source: reference table of US and UK terms, three published pages that agree. */
const PAIRS = [
  ['ch', 'ch'],
  ['sl st', 'sl st'],
  ['sc', 'dc'],
  ['hdc', 'htr'],
  ['dc', 'tr'],
  ['tr', 'dtr'],
  ['dtr', 'ttr'],
] as const;

describe('US and UK terms', () => {
  it.each(PAIRS)('US %s is UK %s', (us, uk) => {
    expect(toTerms(us, 'us', 'uk')).toBe(uk);
    expect(toTerms(uk, 'uk', 'us')).toBe(us);
    const row = STITCHES.find((stitch) => stitch.us === us)!;
    expect(stitchWord(row.kind, 'uk')).toBe(uk);
  });

  it.each([
    ['single crochet', 'double crochet'],
    ['half double crochet', 'half treble crochet'],
    ['double crochet', 'treble crochet'],
    ['treble crochet', 'double treble crochet'],
    ['Gauge in sc', 'Tension in dc'],
    ['FPdc around next st, dc2tog, BPsc', 'FPtr around next st, tr2tog, BPdc'],
    ['Dc in next 3 dcs', 'Tr in next 3 trs'],
    ['double treble crochets and a treble crochet', 'triple treble crochets and a double treble crochet'],
  ])('US "%s" is UK "%s"', (us, uk) => {
    expect(toTerms(us, 'us', 'uk')).toBe(uk);
    expect(toTerms(uk, 'uk', 'us')).toBe(us);
  });

  it('leaves words alone that only contain a stitch word', () => {
    expect(toTerms('disc, script, trace, scdc, tr_', 'us', 'uk')).toBe('disc, script, trace, scdc, dtr_');
  });

  it('comes back to the same text for any text of stitch words', () => {
    const word = fc.constantFrom(...STITCHES.flatMap((row) => [row.us, row.usName]), 'in', 'next', 'st', '3', ',');
    fc.assert(
      fc.property(fc.array(word, { maxLength: 20 }), (words) => {
        const text = words.join(' ');
        expect(toTerms(toTerms(text, 'us', 'uk'), 'uk', 'us')).toBe(text);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('keeps sc out of UK words and htr out of US words', () => {
    const words = (terms: 'us' | 'uk') => STITCH_PHRASES[terms].map((phrase) => phrase.words.join(' '));
    expect(words('uk')).not.toContain('sc');
    expect(words('us')).not.toContain('htr');
    for (const row of STITCHES) expect(stitchName(row.kind, 'us').length).toBeGreaterThan(0);
    expect(otherTerms('us')).toBe('uk');
  });

  it('gives each word of a set one meaning only', () => {
    for (const terms of ['us', 'uk'] as const) {
      const words = STITCH_PHRASES[terms].map((phrase) => phrase.words.join(' '));
      expect(new Set(words).size).toBe(words.length);
    }
  });
});
