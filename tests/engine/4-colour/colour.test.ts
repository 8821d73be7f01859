import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import type { Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { placementsAt } from '../../../src/engine/4-colour/placementsAt.ts';
import { rowColumns } from '../../../src/engine/4-colour/rowColumns.ts';
import { rowRuns } from '../../../src/engine/4-colour/rowRuns.ts';
import { flatRows, handFabric, handPattern, handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const FLAG_MOTIF = { id: 'm', name: 'flag', cells: ['BBC', 'B..', 'C..'] };

function placed(counts: readonly number[], placement: Partial<Placement>) {
  const pattern = handPattern({ motifs: [FLAG_MOTIF], placements: [handPlacement(placement)] });
  const fabric = handFabric(flatRows(counts));
  const colours = colour(pattern, fabric, 0);
  return { pattern, fabric, colours, lines: picture(pattern, fabric, colours), fit: colours.fits[0]! };
}

describe('columns', () => {
  it('count from the left of the right side, whichever way the row is worked', () => {
    const fabric = handFabric(flatRows([3, 4]));
    const { stitches, start, columnOf } = rowColumns(fabric);
    // Stitch 0 is a turning chain, 1 to 3 run right to left; 4 is a turning chain, 5 to 8 run left to right.
    expect([...stitches]).toEqual([3, 2, 1, 5, 6, 7, 8]);
    expect([...start]).toEqual([0, 3, 7]);
    expect([...columnOf]).toEqual([-1, 2, 1, 0, -1, 0, 1, 2, 3]);
  });
});

describe('colour', () => {
  it('lays a motif as it is drawn, its bottom row on the row of the placement, transparent cells left out', () => {
    expect(placed([5, 5, 5, 5], { row: { line: 'r', nth: 1 } }).lines).toEqual(['BBCAA', 'BAAAA', 'CAAAA', 'AAAAA']);
  });

  it.each<[string, Partial<Placement>, readonly string[]]>([
    ['left, two stitches in', { offset: 2 }, ['AABBCAAA', 'AABAAAAA', 'AACAAAAA']],
    ['right', { align: 'right' }, ['AAAAABBC', 'AAAAABAA', 'AAAAACAA']],
    ['right, one stitch in', { align: 'right', offset: 1 }, ['AAAABBCA', 'AAAABAAA', 'AAAACAAA']],
    ['centre, the odd stitch to the right', { align: 'centre' }, ['AABBCAAA', 'AABAAAAA', 'AACAAAAA']],
    ['centre, one to the right', { align: 'centre', offset: 1 }, ['AAABBCAA', 'AAABAAAA', 'AAACAAAA']],
    ['filling', { across: 'fill' }, ['BBCBBCAA', 'BAABAAAA', 'CAACAAAA']],
    ['filling from the centre', { across: 'fill', align: 'centre' }, ['ABBCBBCA', 'ABAABAAA', 'ACAACAAA']],
    ['twice with a gap', { across: 2, gap: 2 }, ['BBCAABBC', 'BAAAABAA', 'CAAAACAA']],
    ['every second repeat mirrored', { across: 2, mirror: true }, ['BBCCBBAA', 'BAAAABAA', 'CAAAACAA']],
    ['hanging over the left edge', { offset: -1 }, ['BCAAAAAA', 'AAAAAAAA', 'AAAAAAAA']],
    ['hanging over the right edge', { offset: 6 }, ['AAAAAABB', 'AAAAAABA', 'AAAAAACA']],
  ])('lays repeats: %s', (_, placement, lines) => {
    expect(placed([8, 8, 8], placement).lines).toEqual(lines);
  });

  it('keeps the aligned edge, or the centre, where rows above are wider or narrower', () => {
    expect(placed([4, 6, 8], { align: 'left' }).lines).toEqual(['BBCAAAAA', 'BAAAAA', 'CAAA']);
    expect(placed([4, 6, 8], { align: 'right' }).lines).toEqual(['AAAAABBC', 'AAABAA', 'ACAA']);
    expect(placed([5, 7, 9], { align: 'centre' }).lines).toEqual(['AAABBCAAA', 'AABAAAA', 'ACAAA']);
  });

  it('counts the cells that a narrower row has no stitch for', () => {
    const { fit, lines } = placed([3, 3, 2], {});
    expect(lines).toEqual(['BB', 'BAA', 'CAA']);
    expect(fit).toMatchObject({ across: 1, leftOver: { left: 0, right: 0 }, cellsCut: 1, rowsCut: 0, cutAtSeam: false });
  });

  it('says what a placement leaves over, in stitches and in rows', () => {
    expect(placed([43, 43, 43, 43], { across: 'fill', align: 'centre', up: 2 }).fit).toEqual({
      placement: 'one',
      width: 43,
      across: 14,
      up: 1,
      leftOver: { left: 0, right: 1 },
      rowsCut: 2,
      cellsCut: 0,
      cutAtSeam: false,
      nearest: { down: 42, up: 45 },
    });
  });

  it('says that a repeat is cut at the seam where a hanging repeat meets the other side', () => {
    const pattern = handPattern({ motifs: [FLAG_MOTIF], placements: [handPlacement({ across: 3 })] });
    const rows = flatRows([8, 8, 8]);
    expect(colour(pattern, handFabric(rows), 0).fits[0]).toMatchObject({ across: 2, leftOver: { left: 0, right: -1 }, cellsCut: 1, cutAtSeam: false });
    expect(colour(pattern, handFabric(rows, 2), 0).fits[0]).toMatchObject({ cutAtSeam: true });
    expect(colour(pattern, handFabric(rows.map((row) => ({ ...row, word: 'round', round: true }))), 0).fits[0]).toMatchObject({ cutAtSeam: true });
  });

  it.each<[string, Partial<Placement>, readonly string[]]>([
    ['not moved', {}, ['BBCBBCBBC', 'BAABAABAA', 'CAACAACAA']],
    ['a stitch to the right', { offset: 1 }, ['CBBCBBCBB', 'ABAABAABA', 'ACAACAACA']],
    ['a stitch to the left', { offset: -1 }, ['BCBBCBBCB', 'AABAABAAB', 'AACAACAAC']],
    ['from the right edge, two inward', { align: 'right', offset: 2 }, ['CBBCBBCBB', 'ABAABAABA', 'ACAACAACA']],
    ['from the centre, four to the right', { align: 'centre', offset: 4 }, ['CBBCBBCBB', 'ABAABAABA', 'ACAACAACA']],
  ])('that fills a tube goes round the seam when it is moved, and no repeat is lost: %s', (_, placement, lines) => {
    const pattern = handPattern({ motifs: [FLAG_MOTIF], placements: [handPlacement({ across: 'fill', ...placement })] });
    const rounds = flatRows([9, 9, 9]).map((row) => ({ ...row, word: 'round' as const, round: true }));
    for (const fabric of [handFabric(rounds), handFabric(flatRows([9, 9, 9]), 2)]) {
      const coloured = colour(pattern, fabric, 0);
      expect(coloured.fits[0]).toMatchObject({ across: 3, leftOver: { left: 0, right: 0 }, cellsCut: 0, cutAtSeam: false });
      expect(picture(pattern, fabric, coloured)).toEqual(lines);
    }
  });

  it('that fills a flat row goes with what fits beside its offset', () => {
    expect(placed([9, 9, 9], { across: 'fill', offset: 1 }).lines).toEqual(['ABBCBBCAA', 'ABAABAAAA', 'ACAACAAAA']);
  });

  it('passes over foundations and steps on its way up', () => {
    const pattern = handPattern({ motifs: [FLAG_MOTIF], placements: [handPlacement({ row: { line: 'a', nth: 0 } })] });
    const fabric = handFabric([
      { stitches: 4, line: 'f', nth: 0, word: 'foundation' },
      { stitches: 3, line: 'a', nth: 0 },
      { stitches: 0, line: 'x', nth: 0, word: 'step' },
      { stitches: 3, line: 'b', nth: 0 },
      { stitches: 3, line: 'b', nth: 1 },
    ]);
    expect(picture(pattern, fabric, colour(pattern, fabric, 0))).toEqual(['BBC', 'BAA', '', 'CAA', '']);
  });

  it('gives a placement on a row that a size does not have an empty fit', () => {
    expect(placed([4], { row: { line: 'r', nth: 3 } }).fit).toMatchObject({ width: 0, across: 0, up: 0, rowsCut: 3 });
    expect(placed([4], { motif: 'gone' }).fit).toMatchObject({ width: 0, across: 0 });
  });

  it('lays later placements over earlier ones and loose cells of the size over all', () => {
    const pattern = handPattern({
      sizes: ['S', 'M'],
      motifs: [{ id: 'm', name: '', cells: ['BB'] }, { id: 'n', name: '', cells: ['C'] }],
      placements: [handPlacement({}), handPlacement({ id: 'two', motif: 'n', offset: 1 })],
      cells: [
        { section: 's', row: { line: 'r', nth: 0 }, size: 0, from: 3, letters: 'C.B' },
        { section: 's', row: { line: 'r', nth: 0 }, size: 1, from: 0, letters: 'A' },
      ],
    });
    const fabric = handFabric(flatRows([5]));
    const small = colour(pattern, fabric, 0);
    expect(picture(pattern, fabric, small)).toEqual(['BCACA']);
    expect(picture(pattern, fabric, colour(pattern, fabric, 1))).toEqual(['ACAAA']);
    // Stitch 0 is the turning chain; 1 is column 4, 5 is column 0.
    expect([...small.placement]).toEqual([0, 0, 0, 0, 2, 1]);
  });

  it('shows a change of a motif in every place that uses it', () => {
    const pattern = handPattern({ motifs: [{ id: 'm', name: '', cells: ['B.'] }], placements: [handPlacement({ across: 'fill' })] });
    const fabric = handFabric(flatRows([6]));
    const edited = applyEdit(pattern, { kind: 'setMotif', motif: { id: 'm', name: '', cells: ['.C'] } });
    expect(picture(pattern, fabric, colour(pattern, fabric, 0))).toEqual(['BABABA']);
    expect(edited.ok && picture(pattern, fabric, colour(edited.pattern, fabric, 0))).toEqual(['ACACAC']);
  });

  it('takes turning chains, joins and chains between stitches along with the stitch they are made with', () => {
    const pattern = handPattern({ cells: [{ section: 's', row: { line: 'r', nth: 0 }, size: 0, from: 0, letters: 'B.C' }] });
    const fabric = handFabric([{ stitches: 3, line: 'r', nth: 0, word: 'round', round: true }]);
    expect([...fabric.flags]).toEqual([FLAG.turning, FLAG.counts, FLAG.counts, FLAG.counts, FLAG.join]);
    expect([...colour(pattern, fabric, 0).yarn]).toEqual([2, 2, 0, 1, 1]);
  });

  it('keeps the yarns that the rows say where nothing is laid', () => {
    const pattern = handPattern({});
    const fabric = handFabric([{ stitches: 4, line: 'r', nth: 0, yarns: [1, 1, 2, 0] }]);
    expect(picture(pattern, fabric, colour(pattern, fabric, 0))).toEqual(['ACBB']);
  });

  it('is asked for a size of the pattern', () => {
    expect(() => colour(handPattern({}), handFabric(flatRows([3])), 1)).toThrow('size 1 asked of a pattern of 1 sizes');
  });
});

describe('yarn runs of a row', () => {
  it('are in working order, so a row worked from right to left begins at the right', () => {
    const cells = [0, 1].map((nth) => ({ section: 's', row: { line: 'r', nth }, size: 0, from: 0, letters: 'BBC' }));
    const pattern = handPattern({ cells });
    const fabric = handFabric(flatRows([5, 5]));
    const colours = colour(pattern, fabric, 0);
    expect(rowRuns(fabric, colours, 0)).toEqual([{ yarn: 0, count: 2 }, { yarn: 2, count: 1 }, { yarn: 1, count: 2 }]);
    expect(rowRuns(fabric, colours, 1)).toEqual([{ yarn: 1, count: 2 }, { yarn: 2, count: 1 }, { yarn: 0, count: 2 }]);
    expect(() => rowRuns(fabric, colours, 2)).toThrow('row 2 asked of a fabric of 2 rows');
  });
});

describe('what lies at a stitch', () => {
  it('is told from the top layer down to the yarn of the row', () => {
    const { pattern, fabric } = placed([8, 8, 8], { across: 2, mirror: true });
    const withCell = { ...pattern, cells: [{ section: 's', row: { line: 'r', nth: 2 }, size: 0, from: 3, letters: 'A' }] };
    const grid = colourGrid(fabric);
    const { stitches, start } = grid.columns;
    expect(placementsAt(withCell, grid, 0, stitches[start[2]! + 3]!)).toEqual([
      { kind: 'cell', letter: 'A' },
      { kind: 'placement', placement: 'one', motif: 'm', letter: 'C', cell: { repeat: 1, repeatUp: 0, x: 2, y: 2, letter: 'C' } },
      { kind: 'base', letter: 'A' },
    ]);
    expect(placementsAt(withCell, grid, 0, stitches[start[0]! + 7]!)).toEqual([{ kind: 'base', letter: 'A' }]);
    expect(placementsAt(withCell, grid, 0, 0)).toEqual([{ kind: 'base', letter: 'A' }]);
  });
});
