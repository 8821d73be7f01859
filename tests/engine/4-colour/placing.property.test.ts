import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motif, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { placementLie } from '../../../src/engine/4-colour/placementLie.ts';
import { placementsAt } from '../../../src/engine/4-colour/placementsAt.ts';
import { repeatStart, spreadRepeats, type Spread } from '../../../src/engine/4-colour/spreadRepeats.ts';
import { handFabric, handPattern, handPlacement, type HandRow } from './handFabric.ts';
import { picture } from './picture.ts';

const RUNS = { numRuns: 1_500, seed: 5_110 };

const spreading = fc.record({
  align: fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
  offset: fc.integer({ min: -5, max: 5 }),
  across: fc.oneof(fc.constant('fill' as const), fc.integer({ min: 1, max: 5 })),
  gap: fc.integer({ min: 0, max: 3 }),
  fill: fc.constantFrom('whole' as const, 'spread' as const, 'edges' as const),
  anchor: fc.constantFrom('row' as const, 'seam' as const, 'front' as const),
});

const lefts = (spread: Spread) => Array.from({ length: spread.repeats }, (_, i) => repeatStart(spread, i));
const mod = (value: number, by: number) => ((value % by) + by) % by;

describe('the ways to fill a width', () => {
  it('lay each what it promises, whatever the width, motif, gap, anchor and offset', () => {
    fc.assert(
      fc.property(spreading, fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 7 }), fc.boolean(), (place, width, motifWidth, isRing) => {
        const line = place.anchor === 'row' ? null : place.anchor === 'seam' ? 0 : width / 2;
        const spread = spreadRepeats({ width, line, isRing }, motifWidth, place);
        const at = lefts(spread);
        const step = motifWidth + place.gap;
        // The part of a repeat that lies on the line, in half stitches.
        const part = (left: number) => (place.align === 'left' ? left : place.align === 'right' ? left + motifWidth : left + motifWidth / 2) - place.offset;
        const isOnLine = (left: number) => Math.abs(part(left) - line!) < 1;

        if (place.across !== 'fill') {
          expect(at).toHaveLength(place.across);
          at.forEach((left, i) => expect(left - at[0]!).toBe(i * step));
          const total = place.across * step - place.gap;
          if (line !== null) expect(Math.abs((place.align === 'left' ? at[0]! : place.align === 'right' ? at[0]! + total : at[0]! + total / 2) - place.offset - line)).toBeLessThan(1);
          expect(spread.wraps).toBe(line !== null && isRing && total <= width);
          return;
        }
        if (place.fill === 'edges') {
          // Every column of the row, or of the round from where it is cut, lies in a repeat or in a gap of one and the same rhythm.
          const [from, to] = spread.kept ?? [0, width];
          expect(to - from).toBe(width);
          for (let column = from; column < to; column++) {
            const inRepeat = at.filter((left) => column >= left && column < left + motifWidth).length;
            expect(inRepeat).toBe(mod(column - at[0]!, step) < motifWidth ? 1 : 0);
          }
          at.slice(1).forEach((left, i) => expect(left - at[i]!).toBe(step));
          expect(at.every((left) => left < to && left + motifWidth > from)).toBe(true);
          if (line !== null && at.length > 0) expect(Array.from({ length: 200 }, (_, i) => at[0]! + (i - 100) * step).some(isOnLine)).toBe(true);
          return;
        }
        if (place.fill === 'spread' && at.length > 1 && spread.left === 0 && spread.right === 0 && spread.extra) {
          const between = at.slice(1).map((left, i) => left - at[i]! - motifWidth);
          if (isRing) between.push(width + at[0]! - at.at(-1)! - motifWidth);
          else expect([at[0], at.at(-1)! + motifWidth]).toEqual([0, width]);
          expect(Math.max(...between) - Math.min(...between)).toBeLessThanOrEqual(1);
          expect(Math.min(...between)).toBeGreaterThanOrEqual(place.gap);
          // One more would not keep the gaps.
          expect((at.length + 1) * motifWidth + (isRing ? at.length + 1 : at.length) * place.gap).toBeGreaterThan(width);
          if (isRing && line !== null) expect(at.some(isOnLine)).toBe(true);
          return;
        }
        // Whole repeats.
        at.slice(1).forEach((left, i) => expect(left - at[i]!).toBe(spread.extra ? left - at[i]! : step));
        if (line === null) return; // The other property test has these.
        if (isRing) {
          let fits = 0;
          while ((fits + 1) * step <= width) fits++;
          if (fits === 0 && motifWidth <= width) fits = 1;
          expect(at).toHaveLength(fits);
          if (fits > 0) expect(at.some(isOnLine)).toBe(true);
          expect(spread.left + spread.right).toBe(fits === 0 ? width : width - fits * motifWidth - (fits - 1) * place.gap);
          // Counted from the seam, what is left over lies at the seam; from the front, halved about the side opposite, to within half a repeat.
          if (fits > 0 && place.anchor === 'seam' && place.align !== 'centre') expect(place.align === 'left' ? at[0] : at.at(-1)! + motifWidth).toBe(place.offset);
        } else {
          at.forEach((left) => expect(left >= 0 && left + motifWidth <= width).toBe(true));
          if (at.length > 0) {
            expect(at[0]! - step).toBeLessThan(0);
            expect(at.at(-1)! + step + motifWidth).toBeGreaterThan(width);
            expect(Array.from({ length: 200 }, (_, i) => at[0]! + (i - 100) * step).some(isOnLine)).toBe(true);
          }
        }
      }),
      { ...RUNS, numRuns: 6_000 },
    );
  });
});

const motif = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 4 })).chain(([width, height]) =>
  fc
    .array(fc.array(fc.constantFrom('A', 'B', 'C', '.'), { minLength: width, maxLength: width }), { minLength: height, maxLength: height })
    .map((rows): Motif => ({ id: 'm', name: '', cells: rows.map((row) => row.join('')) })),
);

const placement: fc.Arbitrary<Placement> = fc
  .tuple(
    spreading,
    fc.record({
      up: fc.integer({ min: 1, max: 3 }),
      mirror: fc.boolean(),
      flip: fc.boolean(),
      gapUp: fc.integer({ min: 0, max: 2 }),
      stagger: fc.option(fc.record({ kind: fc.constantFrom('halfDrop' as const, 'brick' as const), by: fc.oneof(fc.constant('half' as const), fc.integer({ min: 0, max: 9 })), closed: fc.boolean() })),
      follow: fc.constantFrom('left' as const, 'centre' as const, 'right' as const),
      nth: fc.integer({ min: 0, max: 2 }),
      rowsUp: fc.integer({ min: -1, max: 2 }),
    }),
  )
  .map(([across, { nth, stagger, rowsUp, ...rest }]) => handPlacement({ ...across, ...rest, ...(stagger ? { stagger } : {}), row: { line: 'r', nth }, bySize: [{ rowsUp }] }));

/** Paints repeat by repeat and cell by cell, from where the bottom row has its repeats. */
function painted(one: Motif, place: Placement, counts: readonly number[], isRing: boolean, spread: Spread): { readonly rows: readonly string[]; readonly cut: number } {
  const width = one.cells[0]!.length;
  const height = one.cells.length;
  const period = height + (place.gapUp ?? 0);
  const at = lefts(spread);
  const round = at.length > 0 ? at.length * spread.step + (spread.extra?.at(-1) ?? 0) : 0;
  const by = place.stagger ? (place.stagger.by === 'half' ? Math.floor((place.stagger.kind === 'halfDrop' ? period : width + place.gap) / 2) : place.stagger.by) : 0;
  const bottom = place.row.nth + (place.bySize![0]!.rowsUp ?? 0);
  const canvas = counts.map((count) => Array.from({ length: count }, () => 'A'));
  let cut = 0;
  for (const order of [0, 1]) {
    at.forEach((left, i) => {
      if (i % 2 !== order) return;
      for (let tier = 0; tier < place.up; tier++) {
        for (let y = 0; y < height; y++) {
          for (let x = 0; x < width; x++) {
            const letter = one.cells[height - 1 - (place.flip && tier % 2 === 1 ? height - 1 - y : y)]![place.mirror && i % 2 === 1 ? width - 1 - x : x]!;
            if (letter === '.') continue;
            let up = tier * period + y;
            let along = left + x;
            if (place.stagger?.kind === 'halfDrop' && i % 2 === 1) up = place.stagger.closed ? (up + by) % (period * place.up) : up + by;
            if (place.stagger?.kind === 'brick' && tier % 2 === 1) along = place.stagger.closed ? at[0]! + mod(along + by - at[0]!, round) : along + by;
            const row = bottom + up;
            if (row >= counts.length) continue;
            const count = counts[row]!;
            const from = counts[bottom]!;
            const line = (n: number) => (place.anchor === 'seam' ? 0 : n / 2);
            const isByRow = place.anchor === 'row' || (place.anchor === 'seam' && !isRing);
            if (isByRow) along += place.follow === 'left' ? 0 : place.follow === 'right' ? count - from : -Math.floor((from - count) / 2);
            else if (place.align === 'centre') {
              const total = place.across === 'fill' ? width : place.across * (width + place.gap) - place.gap;
              along += Math.floor(line(count) - total / 2) - Math.floor(line(from) - total / 2);
            } else along += Math.floor(line(count)) - Math.floor(line(from));
            if (spread.kept && (along < spread.kept[0] || along >= spread.kept[1])) {
              cut++;
              continue;
            }
            if (spread.wraps) along = mod(along, count);
            if (along < 0 || along >= count) cut++;
            else canvas[row]![along] = letter;
          }
        }
      }
    });
  }
  return { rows: canvas.map((row) => row.join('')).reverse(), cut };
}

const flat = (counts: readonly number[]): readonly HandRow[] => counts.map((stitches, nth) => ({ stitches, line: 'r', nth, direction: nth % 2 === 0 ? -1 : 1 }));
const rounds = (counts: readonly number[]): readonly HandRow[] => counts.map((stitches, nth) => ({ stitches, line: 'r', nth, direction: -1, word: 'round', round: true }));

describe('placing by arithmetic and painting cell by cell', () => {
  it('give the same picture and count the same cells cut: staggers, flips, gaps up, anchors, rounds, shaped rows', () => {
    fc.assert(
      fc.property(motif, placement, fc.integer({ min: 1, max: 20 }), fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 3, maxLength: 12 }), fc.boolean(), (one, place, width, steps, isRing) => {
        // A round keeps its width here: what repeats do where rounds grow is a matter of taste, not of arithmetic.
        const counts = steps.map((_, i) => Math.max(width + (isRing ? 0 : steps.slice(0, i).reduce((a, b) => a + b, 0)), 1));
        const fabric = handFabric(isRing ? rounds(counts) : flat(counts));
        const pattern = handPattern({ motifs: [one], placements: [place] });
        const grid = colourGrid(fabric);
        const lie = placementLie(place, one, grid, 0);
        const colours = colour(pattern, fabric, 0, grid);
        const bottom = place.row.nth + place.bySize![0]!.rowsUp!;
        if (place.row.nth >= counts.length || bottom < 0 || bottom >= counts.length) {
          expect(lie).toBeNull();
          return;
        }
        const hand = painted(one, place, counts, isRing, lie!.spread);
        expect(picture(pattern, fabric, colours)).toEqual(hand.rows);
        expect(colours.fits[0]!.cellsCut).toBe(hand.cut);
        for (const stitch of grid.columns.stitches) {
          const top = placementsAt(pattern, grid, 0, stitch).find((layer) => layer.letter !== '.')!;
          expect(top.letter).toBe(pattern.yarns[colours.yarn[stitch]!]!.letter);
        }
      }),
      RUNS,
    );
  });
});
