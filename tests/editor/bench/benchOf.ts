import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Transaction } from '../../../src/engine/1-pattern/edit.ts';
import type { Line, Motif, Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import type { Amount } from '../../../src/engine/notation/instruction.ts';
import type { BenchState } from '../../../src/editor/bench/benchState.ts';
import { expect } from 'vitest';

const row = (id: string, text: string, rows: Amount = 1): Line => ({ kind: 'row', id, label: { word: 'row', rows, start: null, side: null }, text });

/** Three stitches high and two wide, for tests only. */
export const TICK: Motif = { id: 'tick', name: 'Tick', cells: ['.B', 'B.', 'BB'] };

/** A flat leg in two sizes: foundation, row 1, five equal rows on one line; counts of the project's own. */
export const LEG: Pattern = {
  id: 'leg', title: 'Small leg', designer: '', terms: 'us', gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, hookMm: 4.5,
  yarns: [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' }, { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' }],
  sizes: ['S', 'M'], hdcTurningChainCounts: false, notes: [], motifs: [], placements: [], cells: [],
  sections: [{
    id: 'leg', name: 'Leg', remark: 'worked flat', recipe: null,
    lines: [
      { kind: 'row', id: 'f', label: { word: 'foundation', rows: 1, start: null, side: null }, text: 'with A, ch 11 (13).' },
      row('first', 'sc in 2nd ch from hook and in each ch across. (10 (12) sc)'),
      row('plain', 'ch 1, turn, sc in each st across. (10 (12) sc)', 5),
      { kind: 'note', id: 'n', text: 'Rest the hands.' },
    ],
  }],
};

/** What commands see of a pattern. */
export function benchOf(pattern: Pattern, size = 0, section = 0): BenchState {
  const fabrics = pattern.sizes.map((_, index) => work(construct(pattern, index)));
  const fabric = fabrics[size]!;
  return { pattern, size, section, fabric, colours: colour(pattern, fabric, size), grids: fabrics.map(colourGrid), at: 1000 };
}

/** The pattern after a step; fails on a refusal, and unless the inverse gives the same pattern back. */
export function after(pattern: Pattern, transaction: Transaction | null): Pattern {
  expect(transaction).not.toBeNull();
  const applied = applyTransaction(pattern, transaction!);
  if (!applied.ok) throw new Error(applied.reason);
  const back = applyTransaction(applied.pattern, applied.inverse);
  expect(back.ok && back.pattern).toEqual(pattern);
  return applied.pattern;
}

/** Stitch numbers of a row of the fabric by its number, in working order. */
export function stitchesOfRow(state: BenchState, number: number): number[] {
  const found = state.fabric.rows.find((each) => each.number === number)!;
  return Array.from({ length: found.end - found.first }, (_, i) => found.first + i);
}
