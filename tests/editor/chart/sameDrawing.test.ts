import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../src/engine/6-drawing/drawing.ts';
import { sameDrawing } from '../../../src/editor/chart/sameDrawing.ts';
import { syntheticDrawing } from './syntheticDrawing.ts';

const shape = { columns: 8, rows: 6 };
const drawing = syntheticDrawing(shape);
const stitchesWith = (change: (stitches: { corners: Float32Array; filled: Uint8Array; ink: Uint8Array; glyph: Int32Array }) => void): Drawing => {
  const copy = { ...drawing.stitches, corners: drawing.stitches.corners.slice(), filled: drawing.stitches.filled.slice(), ink: drawing.stitches.ink.slice(), glyph: drawing.stitches.glyph.slice() };
  change(copy);
  return { ...drawing, stitches: copy };
};

describe('whether two drawings show the same', () => {
  it('is so for the same shape made twice', () => {
    expect(sameDrawing(drawing, syntheticDrawing(shape))).toBe(true);
  });

  const others: { name: string; other: Drawing }[] = [
    { name: 'another size', other: syntheticDrawing({ ...shape, rows: 7 }) },
    { name: 'other cells', other: syntheticDrawing({ ...shape, cellWidthMm: 5 }) },
    { name: 'a moved corner', other: stitchesWith((s) => (s.corners[11] = 99)) },
    { name: 'a cell no longer filled', other: stitchesWith((s) => (s.filled[3] = 0)) },
    { name: 'another ink', other: stitchesWith((s) => (s.ink[47] = 3)) },
    { name: 'another symbol', other: stitchesWith((s) => (s.glyph[47] = 2)) },
    { name: 'another glyph under the same index', other: { ...drawing, glyphs: drawing.glyphs.map((glyph, i) => (i === 1 ? { ...glyph, id: 'dc' } : glyph)) } },
    { name: 'another number beside a row', other: { ...drawing, marks: drawing.marks.map((mark) => (mark.kind === 'text' && mark.text === '3' ? { ...mark, text: '33' } : mark)) } },
    { name: 'a mark more', other: { ...drawing, marks: [...drawing.marks, drawing.marks[0]!] } },
  ];
  it.each(others)('is not so with $name', ({ other }) => {
    expect(sameDrawing(drawing, other)).toBe(false);
    expect(sameDrawing(other, drawing)).toBe(false);
  });
});
