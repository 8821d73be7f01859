import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import { patternFault } from '../../../src/engine/1-pattern/file.ts';
import { removal, type Removable } from '../../../src/engine/1-pattern/removal.ts';
import { rowLine, SMALL } from './smallPattern.ts';

const transact = (edits: readonly Edit[], pattern = SMALL) => applyTransaction(pattern, { label: 'Change', at: 5, edits });

const legLine = rowLine('leg-2', 'ch 1, turn, sc in each st across. (40 (44, 48) sc)', [10, 12, 14], { start: 2 });
const threeSizes: readonly Edit[] = [
  { kind: 'set', field: 'sizes', value: ['S', 'M', 'L'] },
  { kind: 'setLine', section: 'leg', line: legLine },
  { kind: 'setSection', section: 'leg', name: 'LEG', remark: '', recipe: { name: 'legPanel', settings: { stitches: [40, 44, 48] } } },
];

describe('a transaction', () => {
  it('makes all its edits and gives the transaction that takes them back', () => {
    const applied = transact(threeSizes);
    expect(applied).toMatchObject({ ok: true, pattern: { sizes: ['S', 'M', 'L'] }, inverse: { label: 'Change', at: 5 } });
    if (!applied.ok) return;
    expect(transact(applied.inverse.edits, applied.pattern)).toMatchObject({ ok: true, pattern: SMALL });
  });

  it('makes none if one is refused, and names it', () => {
    const before = structuredClone(SMALL);
    expect(transact([{ kind: 'set', field: 'title', value: 'x' }, { kind: 'removeMotif', motif: 'gone' }])).toEqual({ ok: false, reason: 'There is no motif "gone".', edit: 1 });
    expect(SMALL).toStrictEqual(before);
  });

  it('refuses a change of sizes that leaves a vector behind', () => {
    expect(transact(threeSizes.slice(0, 2))).toMatchObject({ ok: false, reason: 'LEG: a setting has 2 numbers, expected one number for each of the 3 sizes.' });
    expect(transact(threeSizes.filter((_, i) => i !== 1))).toMatchObject({ ok: false, reason: 'LEG: the rows of a line has 2 numbers, expected one number for each of the 3 sizes.' });
  });

  it('refuses a vector that has not one number for each size', () => {
    expect(transact([{ kind: 'setLine', section: 'leg', line: legLine }])).toMatchObject({ ok: false, reason: 'LEG: the rows of a line has 3 numbers, expected one number for each of the 2 sizes.' });
  });
});

describe('taking out with all that hangs on it', () => {
  const placement = (row: { line: string; nth: number }) => ({ ...SMALL, placements: [{ ...SMALL.placements[0]!, row }] });

  it.each<[string, Removable]>([
    ['lines', { kind: 'lines', section: 'leg', lines: ['leg-1', 'leg-2'] }],
    ['a section', { kind: 'section', section: 'leg' }],
    ['a motif', { kind: 'motif', motif: 'flag' }],
    ['a yarn', { kind: 'yarn', letter: 'B', to: 'C' }],
    ['a yarn in no use', { kind: 'yarn', letter: 'A', to: 'B' }],
  ])('%s goes in one transaction that can be taken back', (_, what) => {
    const applied = transact(removal(SMALL, what));
    if (!applied.ok) throw new Error(applied.reason);
    expect(patternFault(applied.pattern)).toBeNull();
    expect(transact(applied.inverse.edits, applied.pattern)).toMatchObject({ ok: true, pattern: SMALL });
  });

  it('moves a placement to the next row that stays, else to the last one before', () => {
    const taken = transact(removal(placement({ line: 'leg-1', nth: 0 }), { kind: 'lines', section: 'leg', lines: ['leg-1'] }), placement({ line: 'leg-1', nth: 0 }));
    expect(taken.ok && taken.pattern.placements[0]!.row).toEqual({ line: 'leg-2', nth: 0 });
    const before = transact(removal(SMALL, { kind: 'lines', section: 'leg', lines: ['leg-2', 'leg-3'] }));
    expect(before.ok && before.pattern.placements[0]!.row).toEqual({ line: 'leg-1', nth: 0 });
    expect(before.ok && before.pattern.cells).toEqual([]);
    const all = transact(removal(SMALL, { kind: 'lines', section: 'leg', lines: ['leg-1', 'leg-2', 'leg-3'] }));
    expect(all.ok && all.pattern.placements).toEqual([]);
  });

  it('gives motifs and loose cells of a yarn the other yarn', () => {
    const applied = transact(removal(SMALL, { kind: 'yarn', letter: 'B', to: 'C' }));
    expect(applied.ok && applied.pattern.motifs.map((motif) => motif.cells)).toEqual([['CCC', 'C..'], ['C']]);
    expect(applied.ok && applied.pattern.cells.map((run) => run.letters)).toEqual(['CC', 'C', 'CA']);
    expect(applied.ok && applied.pattern.yarns.map((yarn) => yarn.letter)).toEqual(['A', 'C']);
  });
});
