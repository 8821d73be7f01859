import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motif } from '../../../src/engine/1-pattern/pattern.ts';
import { drawCells } from '../../../src/engine/4-colour/drawMotif.ts';
import { friezeOf } from '../../../src/engine/4-colour/frieze.ts';
import { friezeImages, makeStrip, type StripLines } from '../../../src/engine/4-colour/friezeStrip.ts';
import { placedStrip } from '../../../src/engine/4-colour/placedStrip.ts';
import { MOTIF_SHELF } from '../../../src/engine/4-colour/motifShelf.ts';
import { FRIEZE_GROUPS, friezeRow, type FriezeGroup } from '../../../src/engine/craft/friezeGroups.ts';

const GROUPS = FRIEZE_GROUPS.map((row) => row.group);
const ends = fc.constantFrom('on' as const, 'between' as const);
const lines: fc.Arbitrary<StripLines> = fc.record({ left: ends, right: ends, along: ends });
const piece = (letters: readonly string[]) =>
  fc.tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 1, max: 4 })).chain(([width, height]) => fc.array(fc.string({ unit: fc.constantFrom(...letters), minLength: width, maxLength: width }), { minLength: height, maxLength: height }));

/** What a long strip is the same under, found by trying every line and centre on a strip of many repeats, far from its ends. */
function symmetries(cells: readonly string[]): { readonly along: boolean; readonly across: boolean; readonly turn: boolean; readonly glide: boolean } {
  const filled = cells.map((row) => row.replaceAll('.', ' ').trim() !== '');
  const strip = cells.slice(filled.indexOf(true), filled.lastIndexOf(true) + 1).map((row) => row.repeat(8));
  const width = cells[0]!.length;
  const bottom = strip.length - 1;
  const middle = Array.from({ length: width }, (_, i) => 3 * width + i);
  const isSame = (image: (x: number, y: number) => string | undefined) => strip.every((row, y) => middle.every((x) => row[x] === image(x, y)));
  // Sums of a column and its image, over one repeat about the middle: even on a stitch, odd between two.
  const sums = Array.from({ length: 2 * width }, (_, i) => 6 * width + i);
  // The smallest shift that leaves the strip as it is.
  const shift = Array.from({ length: width }, (_, i) => i + 1).find((by) => isSame((x, y) => strip[y]![x + by]))!;
  return {
    along: isSame((x, y) => strip[bottom - y]![x]),
    across: sums.some((sum) => isSame((x, y) => strip[y]![sum - x])),
    turn: sums.some((sum) => isSame((x, y) => strip[bottom - y]![sum - x])),
    glide: shift % 2 === 0 && isSame((x, y) => strip[bottom - y]![x + shift / 2]),
  };
}

describe('frieze groups', () => {
  it.each<[FriezeGroup, readonly string[]]>([
    // One small strip of each, worked out by hand from what the group contains (generators as in the table of craft/friezeGroups.ts).
    ['p1', ['B..', 'BB.']],
    ['p11g', ['BB.B..', 'B..BB.']],
    ['p1m1', ['.B.', 'BBB']],
    ['p2', ['BBB...', '..B...', '..BBB.']],
    ['p2mg', ['BBB...', '...BBB']],
    ['p11m', ['B..', 'BB.', 'B..']],
    ['p2mm', ['.B.', 'BBB', '.B.']],
  ])('%s is recognised', (group, cells) => {
    expect(friezeOf({ cells })!.group).toBe(group);
  });

  it('are recognised as trying every line and centre on a long strip finds them', () => {
    const seen = new Map<FriezeGroup, number>();
    fc.assert(
      fc.property(fc.constantFrom(...GROUPS), piece(['A', '.']), lines, (group, drawn, where) => {
        const cells = makeStrip(drawn, group, where);
        const found = friezeOf({ cells });
        if (!found) {
          expect(cells.join('')).toMatch(/^\.*$/);
          return;
        }
        seen.set(found.group, (seen.get(found.group) ?? 0) + 1);
        const { alongMirror, acrossMirror, turn, glide } = friezeRow(found.group);
        const hand = symmetries(cells);
        expect({ along: alongMirror, across: acrossMirror, turn }).toEqual({ along: hand.along, across: hand.across, turn: hand.turn });
        // A mirror along the strip brings a glide with it, by a whole repeat where half of one is none.
        if (!alongMirror) expect(glide).toBe(hand.glide);
        expect(found.mirrorLines.length > 0).toBe(hand.across);
        expect(found.turnCentres.length > 0).toBe(hand.turn);
      }),
      { numRuns: 2_000, seed: 17_07 },
    );
    expect([...seen.keys()].sort()).toEqual([...GROUPS].sort());
  });

  it('are made of a drawn piece: every group, lines on stitches and between them, and nothing more symmetrical than asked where the piece is not', () => {
    const made = new Map<string, number>();
    fc.assert(
      // With many letters a piece is hardly ever symmetrical by chance.
      fc.property(fc.constantFrom(...GROUPS), piece([...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']), lines, (group, drawn, where) => {
        const cells = makeStrip(drawn, group, where);
        const found = friezeOf({ cells })!;
        // All that the group contains is there.
        const wanted = friezeRow(group);
        const hand = symmetries(cells);
        if (wanted.alongMirror) expect(hand.along).toBe(true);
        if (wanted.acrossMirror) expect(hand.across).toBe(true);
        if (wanted.turn) expect(hand.turn).toBe(true);
        if (found.group === group) made.set(`${group} ${where.left} ${where.right}`, (made.get(`${group} ${where.left} ${where.right}`) ?? 0) + 1);
        // The drawn piece is in it, where no shared stitch had to give way.
        const isShared = (group === 'p2' || group === 'p2mg') && (where.left === 'on' || where.right === 'on');
        if (!isShared) drawn.forEach((row, y) => expect(cells[y]!.slice(0, row.length)).toBe(row));
        // Mirror lines are where they were asked for.
        if (found.group === group && (group === 'p1m1' || group === 'p2mm')) {
          const left = where.left === 'on' ? 0 : -0.5;
          const right = drawn[0]!.length - (where.right === 'on' ? 1 : 0.5);
          const within = (line: number) => (line + found.period) % found.period;
          expect(found.mirrorLines).toEqual([within(left), within(right)].sort((a, b) => a - b));
        }
      }),
      { numRuns: 2_000, seed: 17_08 },
    );
    // Each group came out as itself with each choice of lines.
    expect(made.size).toBe(GROUPS.length * 4);
  });

  it('are drawn in: whatever is drawn with a group has it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...GROUPS), fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 9 }), fc.array(fc.record({ x: fc.nat(9), y: fc.nat(4) }), { minLength: 1, maxLength: 8 }), (group, half, height, axis, points) => {
        const blank = { id: 'm', name: '', cells: Array.from({ length: height }, () => '.'.repeat(2 * half)) };
        const { cells } = points.reduce<Motif>((motif, point, i) => drawCells(motif, [point], 'ABC'[i % 3]!, { group, axis }), blank);
        // Rows left empty are rows of the strip here.
        const hand = symmetries(cells.map((row) => row.replaceAll('.', 'x')));
        const wanted = friezeRow(group);
        if (wanted.alongMirror) expect(hand.along).toBe(true);
        if (wanted.acrossMirror) expect(hand.across).toBe(true);
        if (wanted.turn) expect(hand.turn).toBe(true);
      }),
      { numRuns: 1_000, seed: 17_09 },
    );
  });

  it('have images that come back: the image of an image is an image', () => {
    fc.assert(
      fc.property(fc.constantFrom(...GROUPS), fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 5 }), fc.integer({ min: -5, max: 9 }), fc.nat(11), fc.nat(4), (group, half, height, axis, atX, atY) => {
        const period = 2 * half;
        const key = ({ x, y }: { readonly x: number; readonly y: number }) => y * period + x;
        const images = friezeImages(group, period, height, axis, { x: atX % period, y: atY % height });
        const all = new Set(images.map(key));
        for (const image of images) expect(new Set(friezeImages(group, period, height, axis, image).map(key))).toEqual(all);
      }),
      { numRuns: 1_000, seed: 17_10 },
    );
  });

  it('find the smallest repeat first', () => {
    expect(friezeOf({ cells: ['BB..BB..', '..BB..BB'] })).toMatchObject({ group: 'p2mg', period: 4, mirrorLines: [0.5, 2.5], turnCentres: [1.5, 3.5] });
    expect(friezeOf({ cells: ['AAAA'] })).toMatchObject({ group: 'p2mm', period: 1, mirrorLines: [0, 0.5] });
  });

  it('leave empty rows off, and look at stitches too', () => {
    expect(friezeOf({ cells: ['...', '.B.', 'BBB', '...', '...'] })).toMatchObject({ group: 'p1m1', rows: [1, 3] });
    expect(friezeOf({ cells: ['BBBB'], stitches: ['b.o.'] })).toMatchObject({ group: 'p2mm', mirrorLines: [0, 2] });
    expect(friezeOf({ cells: ['BBBB'], stitches: ['bo..'] })).toMatchObject({ group: 'p11m' });
    expect(friezeOf({ cells: ['...', '...'] })).toBeNull();
  });

  it('name the strips that the shelf has', () => {
    expect(MOTIF_SHELF.map((one) => [one.id, friezeOf(one)!.group])).toEqual([
      ['waves', 'p1'],
      ['puffin', 'p1'],
      ['sail', 'p1'],
      ['gull', 'p1m1'],
      ['rope', 'p2'],
      ['pebble', 'p2mg'],
      ['star', 'p2mm'],
    ]);
  });

  it('belong to the strip as it is placed: mirrored repeats, gaps', () => {
    const flag = { id: 'm', name: '', cells: ['BBC', 'B..'] };
    expect(friezeOf(placedStrip(flag, { gap: 0, mirror: false }))).toMatchObject({ group: 'p1', period: 3 });
    expect(friezeOf(placedStrip(flag, { gap: 1, mirror: true }))).toMatchObject({ group: 'p1m1', period: 8, mirrorLines: [3, 7] });
    expect(friezeOf(placedStrip({ ...flag, stitches: ['b..', '...'] }, { gap: 2, mirror: false }))).toMatchObject({ group: 'p1', period: 5 });
  });

  it('refuse what can not be', () => {
    expect(() => makeStrip(['A'], 'p1m1', { left: 'on', right: 'on', along: 'on' })).toThrow('a piece of 1 stitches');
    expect(() => friezeImages('p11g', 3, 2, 0, { x: 0, y: 0 })).toThrow(RangeError);
  });
});
