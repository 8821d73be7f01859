import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import type { Ground, Pattern, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { liftYarns } from '../../../src/engine/4-colour/liftYarns.ts';
import { fabricWithStitches, setStitches } from '../../../src/engine/4-colour/setStitches.ts';
import { stitchOfCode } from '../../../src/engine/craft/stitches.ts';
import { STITCH_OVERRIDES } from '../../../src/engine/craft/stitchOverrides.ts';
import { writeWords } from '../../../src/engine/readings/words/writeWords.ts';
import { wordsToText } from '../../../src/engine/readings/words/wordsToText.ts';
import { handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const WIDTH = 11;
const FLAT = `Quay
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6
Yarn C: lamp orange #e07b39

LEG
Foundation: with A, ch ${WIDTH + 1}.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (${WIDTH} sc)
Rows 2-6: ch 1, turn, sc in each st across. (${WIDTH} sc)
`;
const ROUND = FLAT.replace(/Foundation[\s\S]*$/, `Foundation: with A, ch ${WIDTH}, join to form a ring.\nRnd 1: sc in each ch around. (${WIDTH} sc)\nRnds 2-6: sc in each st around. (${WIDTH} sc)\n`);

function shown(pattern: Pattern): readonly string[] {
  const fabric = work(construct(pattern, 0));
  return picture(pattern, fabric, colour(pattern, fabric, 0));
}

/** The fabric with the stitches that motifs set. */
function worked(pattern: Pattern) {
  const fabric = work(construct(pattern, 0));
  return fabricWithStitches(fabric, setStitches(pattern, colourGrid(fabric), 0));
}

function written(pattern: Pattern): string {
  const fabric = worked(pattern);
  return wordsToText(writeWords({ pattern, sizes: [{ size: 0, fabric, colours: colour(pattern, fabric, 0) }], terms: 'us' }));
}

/** Every stitch of the rows in words: kind, legs, loop, post. */
function stitches(pattern: Pattern): readonly string[] {
  const fabric = worked(pattern);
  const how = FLAG.frontLoop | FLAG.backLoop | FLAG.frontPost | FLAG.backPost;
  return fabric.rows.map((row) => Array.from({ length: row.end - row.first }, (_, i) => row.first + i).map((stitch) => `${stitchOfCode(fabric.kind[stitch]!).us}/${fabric.legs[stitch]}/${fabric.flags[stitch]! & how}`).join(' '));
}

/** A pattern from words, its changes of yarn lifted to loose cells again. */
function lifted(text: string): Pattern {
  const { pattern } = patternFromText(text);
  const edits = liftYarns(pattern!, [work(construct(pattern!, 0))]);
  const applied = applyTransaction(pattern!, { label: '', at: 0, edits });
  if (!applied.ok) throw new Error(applied.reason);
  return applied.pattern;
}

const cells = fc.array(fc.string({ unit: fc.constantFrom('A', 'B', 'C', '.'), minLength: 5, maxLength: 5 }), { minLength: 1, maxLength: 4 });
const place = fc.record({
  across: fc.constantFrom<Placement['across']>('fill', 1, 2),
  align: fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
  anchor: fc.constantFrom('row' as const, 'front' as const, 'seam' as const),
  fill: fc.constantFrom('whole' as const, 'spread' as const, 'edges' as const),
  mirror: fc.boolean(),
  up: fc.integer({ min: 1, max: 2 }),
});
const ground = fc.constantFrom<Ground | null>(null, { kind: 'stripes', stripes: [{ letter: 'B', rows: 2 }, { letter: 'A', rows: 1 }] }, { kind: 'replace', yarns: [{ from: 'A', to: 'C' }] });

describe('colour written into rows', () => {
  it('reads back to the same cells, whatever lies over what, flat and in rounds', () => {
    let changing = 0;
    fc.assert(
      fc.property(fc.constantFrom(FLAT, ROUND), cells, place, ground, (text, drawn, more, under) => {
        const read = patternFromText(text).pattern!;
        const [section] = read.sections;
        const pattern: Pattern = {
          ...read,
          sections: [{ ...section!, ...(under ? { colour: { ground: under } } : {}) }],
          motifs: [{ id: 'm', name: '', cells: drawn }],
          placements: [handPlacement({ section: section!.id, row: { line: section!.lines[1]!.id, nth: 0 }, ...more })],
        };
        const words = written(pattern);
        const again = lifted(words);
        expect(shown(again), words).toEqual(shown(pattern));
        // Lifted, no row changes yarn inside any more: the cells hold what differs from one yarn a row.
        if (again.cells.length > 0) changing++;
        const plain = { ...again, cells: [] };
        for (const row of shown(plain)) expect(new Set(row).size).toBeLessThanOrEqual(1);
      }),
      { numRuns: 150, seed: 77_7 },
    );
    expect(changing).toBeGreaterThan(100);
  });

  it('goes the other way in wrong side rows', () => {
    const read = patternFromText(FLAT).pattern!;
    const [section] = read.sections;
    const pattern: Pattern = {
      ...read,
      motifs: [{ id: 'm', name: '', cells: ['BBBCC', 'BBBCC'] }],
      placements: [handPlacement({ section: section!.id, row: { line: section!.lines[1]!.id, nth: 0 }, offset: 2 })],
    };
    const rows = written(pattern).split('\n').filter((line) => /^Row [12]\b/.test(line));
    const runs = (row: string) => [...row.matchAll(/with ([ABC])|change to ([ABC])|\b([ABC]) (?:sc|\d)/g)].map((match) => match.slice(1).find(Boolean));
    expect(rows).toHaveLength(2);
    // Both rows show AABBBCCAAAA from the left; the first is worked from the right.
    expect(runs(rows[0]!)).toEqual(['A', 'C', 'B', 'A']);
    expect(runs(rows[1]!)).toEqual(['A', 'B', 'C', 'A']);
  });

  it('tells the stitches that motifs set, as they are worked on each side, and reads back to the same stitches', () => {
    const letters = [...STITCH_OVERRIDES.map((one) => one.letter), '.', '.', '.', '.'];
    let setRows = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(FLAT, ROUND),
        fc.array(fc.string({ unit: fc.constantFrom(...letters), minLength: 5, maxLength: 5 }), { minLength: 2, maxLength: 4 }),
        fc.constantFrom('.....', '.B.B.', 'BBBBB'),
        place,
        (text, knots, cells, more) => {
          const read = patternFromText(text).pattern!;
          const [section] = read.sections;
          const pattern: Pattern = {
            ...read,
            motifs: [{ id: 'm', name: '', cells: knots.map(() => cells), stitches: knots }],
            placements: [handPlacement({ section: section!.id, row: { line: section!.lines[1]!.id, nth: 0 }, ...more })],
          };
          const words = written(pattern);
          const { pattern: again, findings } = patternFromText(words);
          expect(findings.filter((one) => one.degree === 'wrong'), words).toEqual([]);
          expect(stitches(again!), words).toEqual(stitches(pattern));
          expect(shown(again!), words).toEqual(shown(pattern));
          setRows += stitches(pattern).filter((row) => /bobble|popcorn|puff|cluster/.test(row)).length;
        },
      ),
      { numRuns: 150, seed: 77_8 },
    );
    expect(setRows).toBeGreaterThan(200);
  });
});
