import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { layerEdits, type LayerAct } from '../../../src/engine/4-colour/layers.ts';
import { flatRows, handFabric, handPattern, handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const FABRIC = handFabric(flatRows([6, 6, 6]));
const GRID = colourGrid(FABRIC);
const PATTERN = handPattern({
  motifs: [{ id: 'm', name: 'Bar', cells: ['BB'] }, { id: 'n', name: 'Dash', cells: ['CCC'] }],
  placements: [handPlacement({ id: 'a' }), handPlacement({ id: 'b', motif: 'n', offset: 1 }), handPlacement({ id: 'c', align: 'right' })],
});

function after(act: LayerAct, id: string, pattern: Pattern = PATTERN): Pattern {
  const edits = layerEdits(pattern, GRID, id, act);
  if (!edits) throw new Error('nothing to do');
  const applied = applyTransaction(pattern, { label: '', at: 0, edits });
  if (!applied.ok) throw new Error(applied.reason);
  return applied.pattern;
}

const show = (pattern: Pattern) => picture(pattern, FABRIC, colour(pattern, FABRIC, 0));

describe('layers', () => {
  it('lie over one another in their order', () => {
    expect(show(PATTERN)).toEqual(['AAAAAA', 'AAAAAA', 'BCCCBB']);
    expect(show(after({ kind: 'order', to: 'up' }, 'a'))).toEqual(['AAAAAA', 'AAAAAA', 'BBCCBB']);
    expect(show(after({ kind: 'order', to: 'bottom' }, 'b'))).toEqual(['AAAAAA', 'AAAAAA', 'BBCCBB']);
    expect(after({ kind: 'order', to: 'top' }, 'a').placements.map(({ id }) => id)).toEqual(['b', 'c', 'a']);
  });

  it('are moved, an edge that repeats are counted from notwithstanding', () => {
    expect(show(after({ kind: 'move', rowsUp: 1, stitchesRight: 2 }, 'a'))).toEqual(['AAAAAA', 'AABBAA', 'ACCCBB']);
    expect(show(after({ kind: 'move', rowsUp: 2, stitchesRight: -1 }, 'c'))).toEqual(['AAABBA', 'AAAAAA', 'BCCCAA']);
  });

  it('are copied, hidden, shown and taken off', () => {
    const copied = after({ kind: 'copy', newId: 'd', rowsUp: 2, stitchesRight: 0 }, 'a');
    expect(copied.placements.map(({ id }) => id)).toEqual(['a', 'd', 'b', 'c']);
    expect(show(copied)).toEqual(['BBAAAA', 'AAAAAA', 'BCCCBB']);
    const hidden = after({ kind: 'hide' }, 'b');
    expect(show(hidden)).toEqual(['AAAAAA', 'AAAAAA', 'BBAABB']);
    expect(colour(hidden, FABRIC, 0).fits.map((fit) => fit.placement)).toEqual(['a', 'c']);
    expect(after({ kind: 'show' }, 'b', hidden)).toStrictEqual(PATTERN);
    expect(show(after({ kind: 'remove' }, 'b'))).toEqual(['AAAAAA', 'AAAAAA', 'BBAABB']);
  });

  it('are locked and unlocked', () => {
    const locked = after({ kind: 'lock' }, 'a');
    expect(() => after({ kind: 'move', rowsUp: 1, stitchesRight: 0 }, 'a', locked)).toThrow('“Bar” is locked where it lies; unlock it first.');
    expect(after({ kind: 'copy', newId: 'd', rowsUp: 1, stitchesRight: 0 }, 'a', locked).placements[1]).not.toHaveProperty('locked');
    expect(after({ kind: 'unlock' }, 'a', locked)).toStrictEqual(PATTERN);
  });

  it.each<[string, string, LayerAct]>([
    ['a layer that is not there', 'x', { kind: 'hide' }],
    ['the top one further up', 'c', { kind: 'order', to: 'up' }],
    ['the bottom one to the bottom', 'a', { kind: 'order', to: 'bottom' }],
    ['off the rows', 'a', { kind: 'move', rowsUp: 3, stitchesRight: 0 }],
    ['nowhere', 'a', { kind: 'move', rowsUp: 0, stitchesRight: 0 }],
    ['unlocking what is open', 'a', { kind: 'unlock' }],
    ['showing what is shown', 'a', { kind: 'show' }],
  ])('have nothing to do for %s', (_, id, act) => {
    expect(layerEdits(PATTERN, GRID, id, act)).toBeNull();
  });
});

describe('sizes of their own', () => {
  const pattern = handPattern({
    sizes: ['S', 'M', 'L'],
    motifs: [{ id: 'm', name: 'Bar', cells: ['BB'] }],
    placements: [handPlacement({ across: 'fill', gap: 1, align: 'centre', bySize: [null, { across: 2, gap: 0, up: 2, gapUp: 1, offset: 1 }, { leftOut: true }] })],
  });
  const fabrics = [6, 9, 12].map((count) => handFabric(flatRows([count, count, count])));

  it('have their own repeats, gaps and rows, or none', () => {
    expect(fabrics.map((fabric, size) => picture(pattern, fabric, colour(pattern, fabric, size)))).toEqual([
      ['AAAAAA', 'AAAAAA', 'BBABBA'],
      ['AAABBBBAA', 'AAAAAAAAA', 'AAABBBBAA'],
      ['AAAAAAAAAAAA', 'AAAAAAAAAAAA', 'AAAAAAAAAAAA'],
    ]);
    expect(fabrics.map((fabric, size) => colour(pattern, fabric, size).fits.map((fit) => fit.across))).toEqual([[2], [2], []]);
  });
});
