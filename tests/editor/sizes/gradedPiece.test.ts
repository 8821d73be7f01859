import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import { openPatternFile, writePatternFile } from '../../../src/engine/1-pattern/file.ts';
import { settingsOf } from '../../../src/engine/2-construct/recipes/settingsOf.ts';
import { addSizes } from '../../../src/editor/sizes/commands/changeSizes.ts';
import { makeAnew } from '../../../src/editor/sizes/commands/makeAnew.ts';
import { setCalf, setMotifMultiple } from '../../../src/editor/sizes/commands/setRecipe.ts';
import { withMeasure, withPin } from '../../../src/editor/sizes/factChanges.ts';
import { gradedPiece } from '../../../src/editor/sizes/gradedPiece.ts';
import { motifMultiple } from '../../../src/engine/readings/sizes/motifMultiple.ts';
import { numberRows } from '../../../src/editor/sizes/numberRows.ts';
import { after, sockPattern } from './bookPiece.ts';

const graded = (pattern: ReturnType<typeof sockPattern>) => {
  const piece = gradedPiece(pattern, settingsOf(pattern));
  if (piece.kind !== 'graded') throw new RangeError(`${piece.kind} instead of graded`);
  return piece;
};
const around = (pattern: ReturnType<typeof sockPattern>) => graded(pattern).graded.piece.numbers.map((numbers) => numbers.get('around')?.value);

describe('a piece made anew from its page of sizes', () => {
  it('is the same where the measurements are those it was made to', () => {
    expect(graded(sockPattern()).isSame).toBe(true);
  });

  it('is the same when it was kept as a file and opened again', () => {
    const opened = openPatternFile(writePatternFile(sockPattern()));
    expect(opened.kind === 'ok' && graded(opened.pattern).isSame).toBe(true);
  });

  it('gives each size its own stitches: girth × 1.8 stitches in 1 cm, even', () => {
    // By hand: 25 × 1.8 = 45, halves go up to 46; 28 × 1.8 = 50.4, to 50.
    const two = after(sockPattern(), addSizes([{ name: 'M', cm: { footGirth: 28 } }], 'Add a size')).pattern;
    expect(around(two)).toEqual([46, 50]);
    const { pattern } = after(two, makeAnew(graded(two).graded));
    expect(graded(pattern).isSame).toBe(true);
    expect(JSON.stringify(pattern.sections)).toMatch(/46 \(50\)/);
  });

  it('is one step, and one undo takes it back', () => {
    const changed = { ...sockPattern(), piece: withMeasure('footLength', 0, 26, 1)(sockPattern().piece!) };
    const { pattern, inverse } = after(changed, makeAnew(graded(changed).graded));
    expect(pattern.sections).not.toEqual(changed.sections);
    expect(applyTransaction(pattern, inverse)).toMatchObject({ ok: true, pattern: changed });
  });

  it('lets a number set by hand stand and everything reckoned from it follow', () => {
    const pinned = { ...sockPattern(), piece: withPin('around', 0, 52, 1)(sockPattern().piece!) };
    const numbers = graded(pinned).graded.piece.numbers[0]!;
    expect([numbers.get('around')?.value, numbers.get('heel.stitches')?.value]).toEqual([52, 26]);
    expect(withPin('around', 0, null, 1)(pinned.piece).pins).toEqual({});
  });

  it('keeps a section that was changed by hand and names it', () => {
    const plain = sockPattern();
    const sections = plain.sections.map((section) => (section.id !== 'foot' ? section : { ...section, lines: section.lines.map((line, i) => (i === 0 ? { ...line, text: `${line.text} ` } : line)) }));
    expect(graded({ ...plain, sections }).graded.kept).toEqual(['foot']);
  });

  it('says what is missing, and that written patterns have nothing that follows', () => {
    const bare = sockPattern({ measures: [] });
    expect(gradedPiece(bare, settingsOf(bare))).toEqual({ kind: 'missing', missing: [{ name: 'footGirth', sizes: [0] }, { name: 'footLength', sizes: [0] }, { name: 'legLength', sizes: [0] }] });
    expect(gradedPiece(bare, null)).toEqual({ kind: 'written' });
  });

  it.each([[0.1, 0.1, 0.1], [900, 1, 1], [1, 900, 1], [25, 2, 60]])('throws nothing at %s cm round, %s cm long, %s cm high: it is made or refused in words', (girth, long, high) => {
    const facts = [['footGirth', girth], ['footLength', long], ['legLength', high]] as const;
    const odd = { ...sockPattern(), piece: facts.reduce((all, [name, cm]) => withMeasure(name, 0, cm, 1)(all), sockPattern().piece!) };
    const piece = gradedPiece(odd, settingsOf(odd));
    if (piece.kind === 'refused') expect(piece.reason).toMatch(/can’t be worked: \S/);
    else expect(piece.kind).toBe('graded');
  });

  it('asks for the calf only where the leg is shaped for it', () => {
    // By hand: 38 × 1.8 = 68.4; 46 at the ankle and an even number more: 68.
    const straight = { ...sockPattern(), piece: withMeasure('calf', 0, 38, 1)(sockPattern().piece!) };
    const { pattern } = after(straight, setCalf(true));
    const top = (one: typeof pattern) => graded(one).graded.piece.numbers[0]!.get('top')?.value;
    expect([top(straight), top(pattern)]).toEqual([46, 68]);
  });

  it('prices a motif by the stitches that it adds', () => {
    // By hand: 25 × 1.8 = 45 stitches; even multiples of 8 nearest to it: 48, which is 2 more than 46, 2 ÷ 1.8 = 1.1 cm.
    const { pattern } = after(sockPattern(), setMotifMultiple({ repeat: 8, edge: 0 }));
    const price = motifMultiple(graded(pattern).graded.piece.numbers[0]!, 1.8);
    expect(price).toMatchObject({ every: 8, plus: 0, without: 46, stitches: 48, down: 40, up: 48 });
    expect(price!.differenceCm).toBeCloseTo(1.11, 2);
    // 25 cm ask for 45 stitches: 5 fewer and 3 more at 1.8 a cm.
    expect(price!.downCm).toBeCloseTo(-2.78, 2);
    expect(price!.upCm).toBeCloseTo(1.67, 2);
  });

  it('lists whole numbers only, each once, in every size', () => {
    const two = after(sockPattern(), addSizes([{ name: 'M', cm: { footGirth: 28 } }], 'Add a size')).pattern;
    const rows = numberRows(graded(two).graded.piece.numbers);
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
    expect(rows.find(({ key }) => key === 'around')?.origins.map((origin) => origin?.value)).toEqual([46, 50]);
    for (const { origins } of rows) for (const origin of origins) expect(Number.isInteger(origin?.value)).toBe(true);
  });
});
