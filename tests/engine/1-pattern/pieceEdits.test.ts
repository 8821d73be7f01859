import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { PieceFacts } from '../../../src/engine/1-pattern/pieceFacts.ts';
import { resize } from '../../../src/engine/1-pattern/resize.ts';
import { SMALL } from './smallPattern.ts';

const FACTS: PieceFacts = {
  measures: [{ name: 'footGirth', cm: [21, 23.5], easePercent: -5, easeCm: 0 }],
  pins: { 'heel.left': [7, null] },
  supplies: [{ letter: 'A', weight: 3, ballGrams: 50, ballMetres: 112, price: null }],
  wearer: 'young',
};
const set = (piece: PieceFacts | null) => applyTransaction(SMALL, { label: '', at: 0, edits: [{ kind: 'setPiece', piece }] });

describe('what a piece is made to', () => {
  it('is said whole and taken back, and leaves nothing behind', () => {
    const said = set(FACTS);
    expect(said.ok && said.pattern.piece).toEqual(FACTS);
    const back = said.ok && applyTransaction(said.pattern, said.inverse);
    expect(back && back.ok && back.pattern).toStrictEqual(SMALL);
  });

  it.each<[string, PieceFacts, RegExp]>([
    ['a girth of nothing', { ...FACTS, measures: [{ ...FACTS.measures![0]!, cm: [0, 20] }] }, /found 0, expected a number above 0/],
    ['a measurement twice', { ...FACTS, measures: [FACTS.measures![0]!, FACTS.measures![0]!] }, /expected each measurement once/],
    ['a yarn of weight 9', { ...FACTS, supplies: [{ ...FACTS.supplies![0]!, weight: 9 }] }, /at most 7/],
    ['an ease that leaves nothing', { ...FACTS, measures: [{ ...FACTS.measures![0]!, easePercent: -100 }] }, /above -100/],
  ])('refuses %s, saying where', (_, piece, reason) => {
    const applied = applyEdit(SMALL, { kind: 'setPiece', piece });
    expect(applied.ok ? '' : applied.reason).toMatch(reason);
  });

  it('must have a number for each size when a transaction is done', () => {
    const short = set({ ...FACTS, pins: { around: [40] } });
    expect(short.ok ? '' : short.reason).toBe('What the piece is made to has 1 numbers, expected one number for each of the 2 sizes.');
  });

  it('follows the sizes', () => {
    const said = set(FACTS);
    if (!said.ok) throw new Error(said.reason);
    const resized = applyTransaction(said.pattern, { label: '', at: 0, edits: [...resize(said.pattern, [{ name: 'M', from: 1 }, { name: 'L', from: 1 }, { name: 'S', from: 0 }])] });
    expect(resized.ok && resized.pattern.piece).toEqual({ ...FACTS, measures: [{ ...FACTS.measures![0]!, cm: [23.5, 23.5, 21] }], pins: { 'heel.left': [null, null, 7] } });
  });
});
