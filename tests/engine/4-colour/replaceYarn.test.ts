import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Line, Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { replaceYarn } from '../../../src/engine/4-colour/replaceYarn.ts';
import { textInOtherYarn } from '../../../src/engine/4-colour/textInOtherYarn.ts';
import { LEG } from '../../editor/bench/benchOf.ts';

const THREE: Pattern = { ...LEG, yarns: [...LEG.yarns, { letter: 'C', name: 'lamp', colour: '#e07b39', mark: 'slash' }] };
const line = (text: string): Line => ({ kind: 'row', id: 'x', label: { word: 'row', rows: 1, start: null, side: null }, text });
const fabricsOf = (pattern: Pattern) => pattern.sizes.map((_, size) => work(construct(pattern, size)));

/** The letters of all stitches of a size, in working order. */
function letters(pattern: Pattern, size: number): string {
  const fabric = work(construct(pattern, size));
  const { yarn } = colour(pattern, fabric, size);
  return Array.from(yarn, (index) => pattern.yarns[index]!.letter).join('');
}
function replaced(pattern: Pattern, letter: string, to: string): Pattern {
  const found = replaceYarn(pattern, fabricsOf(pattern), letter, to);
  if (!found.ok) throw new Error(`not replaced: ${found.line}`);
  const applied = applyTransaction(pattern, { label: '', at: 0, edits: found.edits });
  if (!applied.ok) throw new Error(applied.reason);
  const back = applyTransaction(applied.pattern, applied.inverse);
  expect(back.ok && back.pattern).toEqual(pattern);
  return applied.pattern;
}

describe('a line in another yarn', () => {
  it.each([
    ['with C, ch 1, turn, sc in each st across. (10 sc)', 'with B, ch 1, turn, sc in each st across. (10 sc)'],
    ['ch 1, turn, sc in next 3 sts, change to C in last st, sc in each st across.', 'ch 1, turn, sc in next 3 sts, change to B in last st, sc in each st across.'],
    ['ch 1, turn, *A sc 3, C sc 2; rep from * to end.', 'ch 1, turn, *A sc 3, B sc 2; rep from * to end.'],
    ['ch 1, turn, 6 sc in C, 4 sc in A.', 'ch 1, turn, 6 sc in B, 4 sc in A.'],
    ['Join C with a sl st in the 3rd st before the seam.', 'Join B with a sl st in the 3rd st before the seam.'],
    ['Fasten off C.', 'Fasten off B.'],
    ['Fasten off.', 'Fasten off.'],
    ['ch 1, turn, sc in each st across.', 'ch 1, turn, sc in each st across.'],
    // What no longer changes is written without its changes.
    ['ch 1, turn, with C, sc in next 4 sts, B sc 2, C sc 4. (10 sc)', 'ch 1, turn, with B, sc in next 10 sts. (10 sc)'],
  ])('%j is %j with B for C', (text, wanted) => {
    expect(textInOtherYarn(line(text), THREE, 'C', 'B')).toBe(wanted);
  });

  it('leaves notes and other words alone, and refuses a yarn that is not there', () => {
    expect(textInOtherYarn({ kind: 'note', id: 'n', text: 'Wind C twice.' }, THREE, 'C', 'B')).toBe('Wind C twice.');
    expect(() => textInOtherYarn(line('with C, sc'), THREE, 'C', 'Q')).toThrow(RangeError);
  });
});

describe('a yarn in the place of another', () => {
  const opened = patternFromText(readFileSync(new URL('../../samples/puffin-quay/structure.txt', import.meta.url), 'utf8'));
  const quay = opened.pattern!;

  it.each([['A', 'B'], ['A', 'C'], ['B', 'C'], ['C', 'A'], ['B', 'A'], ['C', 'B']])('leaves every stitch of Puffin Quay as it was but for %s, which is %s', (letter, to) => {
    const now = replaced(quay, letter, to);
    expect(now.yarns.map((yarn) => yarn.letter)).not.toContain(letter);
    for (const size of quay.sizes.keys()) expect(letters(now, size)).toBe(letters(quay, size).replaceAll(letter, to));
    expect(work(construct(now, 0)).findings.filter((each) => each.rule === 'unknownYarn')).toEqual([]);
  });

  it('is put into motifs, loose cells and grounds too', () => {
    const pattern: Pattern = {
      ...THREE,
      motifs: [{ id: 'm', name: 'Tick', cells: ['.C', 'CB'] }],
      placements: [{ id: 'p', section: 'leg', motif: 'm', row: { line: 'plain', nth: 1 }, align: 'left', offset: 0, across: 'fill', up: 1, gap: 0, mirror: false }],
      cells: [{ section: 'leg', row: { line: 'plain', nth: 0 }, size: 0, from: 2, letters: 'CBC' }],
      versions: [{ id: 'v', name: 'striped', sections: [{ section: 'leg', ground: { kind: 'stripes', stripes: [{ letter: 'C', rows: 2 }, { letter: 'A', rows: 1 }] } }] }],
    };
    const now = replaced(pattern, 'C', 'A');
    expect(now.motifs[0]!.cells).toEqual(['.A', 'AB']);
    expect(now.versions![0]!.sections[0]!.ground).toEqual({ kind: 'stripes', stripes: [{ letter: 'A', rows: 2 }, { letter: 'A', rows: 1 }] });
    expect(letters(now, 0)).toBe(letters(pattern, 0).replaceAll('C', 'A'));
  });

  it('agrees with replacing letters stitch by stitch, whatever rows and yarns', () => {
    const run = fc.tuple(fc.constantFrom('A', 'B', 'C'), fc.integer({ min: 1, max: 4 }));
    fc.assert(
      fc.property(fc.array(fc.array(run, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 5 }), fc.constantFrom('A', 'B', 'C'), fc.constantFrom('A', 'B', 'C'), fc.boolean(), (rows, letter, to, isSaid) => {
        fc.pre(letter !== to);
        const width = Math.max(...rows.map((row) => row.reduce((sum, [, count]) => sum + count, 0)));
        const texts = rows.map((row) => {
          const rest = width - row.reduce((sum, [, count]) => sum + count, 0);
          return `ch 1, turn, ${row.map(([yarn, count]) => `${yarn} sc ${count}`).join(', ')}${rest > 0 ? `, sc in next ${rest} sts` : ''}.`;
        });
        const pattern: Pattern = {
          ...THREE, sizes: [''],
          sections: [{
            ...THREE.sections[0]!,
            lines: [
              { kind: 'row', id: 'f', label: { word: 'foundation', rows: 1, start: null, side: null }, text: `${isSaid ? 'with B, ' : ''}ch ${width + 1}.` },
              { ...line('sc in 2nd ch from hook and in each ch across.'), id: 'first' },
              ...texts.map((text, i) => ({ ...line(text), id: `row${i}` })),
            ],
          }],
        };
        expect(letters(replaced(pattern, letter, to), 0)).toBe(letters(pattern, 0).replaceAll(letter, to));
      }),
      { numRuns: 100, seed: 41_12 },
    );
  });
});
