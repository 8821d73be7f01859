import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../../src/engine/1-pattern/applyTransaction.ts';
import { patternFault } from '../../../../src/engine/1-pattern/file.ts';
import type { Pattern, Placement } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { SOCK } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import { gradePattern, type Grading } from '../../../../src/engine/2-construct/recipes/gradePattern.ts';
import { settingsOf } from '../../../../src/engine/2-construct/recipes/settingsOf.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { check } from '../../../../src/engine/readings/checks/check.ts';
import { GAUGE, measure, pieceOf, requestOf } from './pieceOf.ts';

const SETTINGS: PieceSettings = { ...SOCK, cuff: { edge: 'posts', heightCm: 4, yarn: 'C' }, leg: { ...SOCK.leg, motif: { repeat: 8, edge: 0 } }, toe: { ...SOCK.toe, yarn: 'C' }, loop: { cm: 9, yarn: 'B' } };
const FEET = [measure('footGirth', 22, 25), measure('footLength', 22, 25), measure('legLength', 20, 22)];
const PLACED: Placement = { id: 'dots', section: 'leg', motif: 'dot', row: { line: 'leg.rows', nth: 6 }, align: 'centre', offset: 0, across: 'fill', up: 2, gap: 0, mirror: false };

function drawn(settings = SETTINGS): Pattern {
  const { pattern } = pieceOf(requestOf(settings, FEET));
  return {
    ...pattern, motifs: [{ id: 'dot', name: 'Dots', cells: ['BBAAAAAA', 'AABBAAAA'] }], placements: [PLACED],
    cells: [{ section: 'leg', row: { line: 'leg.rows', nth: 2 }, size: 1, from: 3, letters: 'BB' }],
  };
}

function grading(more: Partial<Grading> = {}): Grading {
  return { sizes: [{ name: 'child', from: 0 }, { name: 'woman', from: 1 }, { name: 'man', from: 1 }], measures: [measure('footGirth', 17, 23, 27), measure('footLength', 16, 24, 28), measure('legLength', 12, 20, 26)], pins: {}, swatches: [], gauge: null, settings: null, ...more };
}

function graded(pattern: Pattern, to: Grading) {
  const result = gradePattern(pattern, to)!;
  const done = applyTransaction(pattern, { label: '', at: 0, edits: result.edits });
  if (!done.ok) throw new Error(done.reason);
  expect(patternFault(done.pattern)).toBeNull();
  const back = applyTransaction(done.pattern, done.inverse);
  expect(back.ok && back.pattern).toStrictEqual(pattern);
  return { ...result, pattern: done.pattern };
}

function findings(pattern: Pattern) {
  return pattern.sizes.flatMap((_, size) => {
    const fabric = work(construct(pattern, size));
    return check(pattern, fabric, colour(pattern, fabric, size)).filter(({ degree }) => degree === 'wrong');
  });
}

const around = (pattern: Pattern) => pattern.sizes.map((_, size) => work(construct(pattern, size)).rows.find((row) => row.word === 'row')!.made);

describe('a piece graded to other measurements', () => {
  it('keeps its settings in its sections', () => {
    expect(settingsOf(drawn())).toEqual(SETTINGS);
    const others: PieceSettings[] = [
      { kind: 'panel', stitch: 'hdc', yarn: 'B', motif: { repeat: 6, edge: 1 }, bobbles: { every: 6, at: 0.75 }, loop: null, fringe: { every: 2, strands: 3, cm: 18, yarn: 'A' } },
      { kind: 'tube', start: { edge: 'folded', heightCm: 2, yarn: 'A' }, end: { edge: 'none', heightCm: 0, yarn: 'B' }, yarn: 'C', motif: { repeat: 0, edge: 0 }, changes: 'stacked', loop: null },
      { kind: 'oval', yarn: 'B' }, { kind: 'ball', yarn: 'C' },
    ];
    for (const settings of others) {
      const measures = [measure('width', 20), measure('length', 24), measure('across', 8), measure('girth', 24), measure('height', 18)];
      expect(settingsOf(pieceOf(requestOf(settings, measures)).pattern)).toEqual(settings);
    }
  });

  it('has the rows of the new numbers in new sizes, its motif on the same row, its loose cells with their size', () => {
    const { pattern, kept, moved, droppedRuns } = graded(drawn(), grading());
    // 17, 23 and 27 cm at 1.8 stitches a cm are 30.6, 41.4 and 48.6: multiples of 8.
    expect(around(pattern)).toEqual([32, 40, 48]);
    expect(pattern.sizes).toEqual(['child', 'woman', 'man']);
    expect(pattern.placements).toEqual([PLACED]);
    expect(pattern.cells.map(({ size, letters }) => [size, letters])).toEqual([[1, 'BB'], [2, 'BB']]);
    expect({ kept, moved, droppedRuns }).toEqual({ kept: [], moved: [], droppedRuns: 0 });
    expect(findings(pattern)).toEqual([]);
  });

  it('is the very same piece when graded to what it is', () => {
    const pattern = drawn();
    const { edits } = gradePattern(pattern, grading({ sizes: [{ name: '1', from: 0 }, { name: '2', from: 1 }], measures: FEET }))!;
    const done = applyTransaction(pattern, { label: '', at: 0, edits });
    expect(done.ok && done.pattern).toEqual(pattern);
  });

  it('leaves what was changed by hand, its numbers carried over by size', () => {
    const pattern = drawn();
    const toe = pattern.sections.find((section) => section.id === 'toe')!;
    const byHand: Pattern = { ...pattern, sections: pattern.sections.map((section) => (section === toe ? { ...toe, lines: [{ kind: 'note', id: 'mine', text: 'Mind the toe.' }, ...toe.lines] } : section)) };
    const result = graded(byHand, grading());
    expect(result.kept).toEqual(['toe']);
    expect(result.pattern.sections.find((section) => section.id === 'toe')!.lines[0]).toMatchObject({ text: 'Mind the toe.' });
    expect(around(result.pattern)).toEqual([32, 40, 48]);
  });

  it('moves a motif to the nearest row when its line is gone, and takes loose cells off', () => {
    const calf: PieceSettings = { ...SETTINGS, leg: { ...SETTINGS.leg, calf: true } } as PieceSettings;
    const { pattern: shaped } = pieceOf(requestOf(calf, [...FEET, measure('calf', 30, 34)]));
    const line = shaped.sections.find((section) => section.id === 'leg')!.lines.find(({ id }) => id === 'leg.decrease3')!;
    const pattern: Pattern = { ...drawn(), sections: shaped.sections, placements: [{ ...PLACED, row: { line: line.id, nth: 0 }, locked: true }], cells: [{ section: 'leg', row: { line: line.id, nth: 0 }, size: 0, from: 0, letters: 'B' }] };
    const result = graded(pattern, grading({ settings: SETTINGS }));
    expect(result.moved).toEqual(['dots']);
    expect(result.pattern.placements[0]!.row.line).toMatch(/^leg\.rows/);
    expect(result.pattern.placements[0]!.locked).toBe(true);
    expect([result.droppedRuns, result.pattern.cells]).toEqual([1, []]);
  });

  it('pins a number by hand, and the rest follows', () => {
    const { pattern, piece } = graded(drawn(), grading({ pins: { around: [null, 44, null], 'heel.left': [null, null, 4] } }));
    expect(around(pattern)).toEqual([32, 44, 48]);
    expect(piece.numbers[1]!.get('around')!.from).toMatchObject({ kind: 'pinned', instead: { value: 40 } });
    expect(piece.numbers[1]!.get('heel.stitches')!.value).toBe(22);
    expect(piece.numbers[2]!.get('heel.left')!.value).toBe(4);
    expect(findings(pattern)).toEqual([]);
  });

  it('says which pinned numbers can’t be, and uses the reckoned ones', () => {
    const { piece } = graded(drawn(), grading({ pins: { around: [31, null, null], 'heel.left': [null, 40, 2.5] } }));
    expect(piece.problems).toEqual([
      { key: 'around', size: 0, found: 31, expected: 'an even number' },
      { key: 'heel.left', size: 1, found: 40, expected: 'at most 9' },
      { key: 'heel.left', size: 2, found: 2.5, expected: 'a whole number' },
    ]);
    expect(piece.numbers[0]!.get('around')!.value).toBe(32);
  });

  it('works without a wrong number for any feet and gauges, in one transaction', () => {
    fc.assert(
      fc.property(fc.double({ min: 15, max: 28, noNaN: true }), fc.double({ min: 0.5, max: 4, noNaN: true }), fc.double({ min: 10, max: 30, noNaN: true }), fc.constantFrom('shortRows' as const, 'flap' as const, 'afterthought' as const), fc.boolean(), (girth, grow, stitches, kind, calf) => {
        const settings = { ...SOCK, heel: { ...SOCK.heel, kind }, leg: { ...SOCK.leg, calf, motif: { repeat: 8, edge: 0 } } };
        const sizes = [{ name: 'a', from: 1 }, { name: 'b', from: 0 }, { name: 'c', from: 0 }];
        const girths = [girth, girth + grow, girth + 2 * grow];
        const { pattern } = graded(drawn(), grading({ sizes, settings, gauge: { ...GAUGE, stitches, rows: stitches * 1.1 }, measures: [measure('footGirth', ...girths), measure('footLength', ...girths.map((cm) => cm * 1.08)), measure('legLength', 20, 21, 22), measure('calf', ...girths.map((cm) => cm * 1.5))] }));
        expect(findings(pattern)).toEqual([]);
      }),
      { numRuns: 30, seed: 44 },
    );
  });

  it('is null for a pattern that no recipe made', () => {
    expect(gradePattern({ ...drawn(), sections: [{ id: 's', name: 'S', remark: '', lines: [], recipe: null }] }, grading())).toBeNull();
  });
});
