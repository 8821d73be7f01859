import { describe, expect, it } from 'vitest';
import { shapeSolid } from '../../../../src/engine/5-layout/solid/shapeSolid.ts';
import { flatness } from '../../../../src/engine/readings/flatness/flatness.ts';
import { EXAMPLES } from '../../../reference/workExample.ts';
import { STANDS } from '../../../../src/engine/5-layout/solid/standing.ts';
import type { Example } from '../../../reference/workExample.ts';
import { discText, GAUGE, shaped } from './solidOf.ts';
import { distance, edgesOf, folds, middleOf, openLoops, pointOf, strains, volumeMl } from './measureSolid.ts';

const W = 100 / 18;
const H = 5;

describe('pieces of simple shape', () => {
  it.each([
    ['worked in a spiral', 'Foundation: ch 40, join to form a ring.\nRnds 1-30: sc in each st around. (40 sc)'],
    ['worked flat and seamed', 'Foundation: ch 41.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-30: ch 1, turn, sc in each st across. (40 sc)\nSeam the side edges.'],
  ])('a tube %s is round, as wide and long as its stitches', (_, text) => {
    const { fabric, web, solid } = shaped(text);
    const radius = (40 * W) / (2 * Math.PI);
    expect(solid.halfMm[0]).toBeGreaterThan(0.97 * radius);
    expect(solid.halfMm[0]).toBeLessThan(1.03 * radius);
    expect(solid.halfMm[2]).toBeGreaterThan(0.97 * radius);
    expect(2 * solid.halfMm[1]).toBeCloseTo(30 * H, 0);
    expect(openLoops(solid).map((loop) => loop.length)).toEqual([40, 40]);
    expect(folds(solid)).toBe(0);
    expect(volumeMl(solid)).toBeGreaterThan((0.95 * Math.PI * radius * radius * 30 * H) / 1000);
    expect(strains(fabric, web, solid).height.rms).toBeLessThan(0.01);
    // Grows upwards, the start of its rounds at the back.
    expect(middleOf(solid, web.rows.at(-1)!)[1]).toBeGreaterThan(middleOf(solid, web.rows[0]!)[1]);
    expect(pointOf(solid.heads, web.rows[5]!.first)[2]).toBeLessThan(0);
  });

  it('a flat panel lies in a plane, right side to the viewer, as wide and tall as its stitches', () => {
    const { fabric, web, solid } = shaped('Foundation: ch 31.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\nRows 2-20: ch 1, turn, sc in each st across. (30 sc)');
    expect(2 * solid.halfMm[0]).toBeCloseTo(30 * W, 2);
    expect(2 * solid.halfMm[1]).toBeCloseTo(20 * H, 2);
    expect(solid.halfMm[2]).toBeLessThan(1e-6);
    expect(strains(fabric, web, solid).height.most).toBeLessThan(1e-6);
    for (const corner of solid.outline) expect(solid.normals[corner * 3 + 2]).toBeCloseTo(1, 5);
    // A right-side row runs from right to left.
    const heads = new Map([...solid.stitches].map((stitch, head) => [stitch, pointOf(solid.heads, head)]));
    const row = fabric.rows[1]!;
    expect(heads.get(row.first + 1)![0]).toBeGreaterThan(heads.get(row.end - 1)![0]);
    expect(middleOf(solid, web.rows.at(-1)!)[1]).toBeGreaterThan(middleOf(solid, web.rows[0]!)[1]);
  });

  it('a disc of six more in each round lies flat and round', () => {
    const { solid } = shaped(discText(6, 16));
    expect(solid.halfMm[2]).toBeLessThan(1e-6);
    expect(solid.halfMm[0]).toBeGreaterThan(0.95 * 16 * H);
    expect(solid.halfMm[0] / solid.halfMm[1]).toBeGreaterThan(0.93);
    expect(solid.halfMm[0] / solid.halfMm[1]).toBeLessThan(1.07);
    expect(folds(solid)).toBe(0);
    expect(openLoops(solid)).toHaveLength(1);
    for (const corner of solid.outline) expect(solid.normals[corner * 3 + 2]).toBeGreaterThan(0.99);
  });

  it.each([3, 4, 5])('%i more in each round make a cone, its sine the ratio of the flatness reading', (k) => {
    const { fabric, web, solid } = shaped(discText(k, 16));
    const { ratio, lies } = flatness(fabric, 0, GAUGE)[10]!;
    expect(lies).toBe('cups');
    // Slope between rounds 4 and 13: the way out over the way along.
    const radius = (r: number): number => {
      const row = web.rows[r]!;
      const middle = middleOf(solid, row);
      let sum = 0;
      for (let i = row.first; i < row.end; i++) sum += distance(pointOf(solid.heads, i), middle);
      return sum / (row.end - row.first);
    };
    const out = radius(13) - radius(4);
    const along = distance(middleOf(solid, web.rows[13]!), middleOf(solid, web.rows[4]!));
    expect(Math.abs(out / Math.hypot(out, along) - ratio)).toBeLessThan(0.08);
  });

  it('rounds that double ruffle: they fill far more than a plane', () => {
    const { solid } = shaped('Rnd 1: magic ring, 6 sc in ring.\nRnds 2-6: 2 sc in each st around.');
    expect(solid.halfMm[2]).toBeGreaterThan(10);
    expect(solid.halfMm[0]).toBeLessThan(1.2 * 6 * H);
  });

  it('a cap has its crown on top, right side out, and one opening below', () => {
    const { solid, web } = shaped(`${discText(6, 12)}\nRnds 13-26: sc in each st around. (72 sc)`);
    expect(openLoops(solid).map((loop) => loop.length)).toEqual([72]);
    expect(volumeMl(solid)).toBeGreaterThan(300);
    expect(middleOf(solid, web.rows[1]!)[1]).toBeGreaterThan(middleOf(solid, web.rows.at(-1)!)[1] + 10 * H);
    expect(folds(solid)).toBeLessThanOrEqual(2);
  });

  it('a ball closes, with no opening but the end that is drawn shut', () => {
    const { solid } = shaped(`${discText(6, 6)}\nRnds 7-12: sc in each st around.\n${[4, 3, 2, 1].map((n, i) => `Rnd ${13 + i}: (sc2tog, sc in next ${n} ${n === 1 ? 'st' : 'sts'}) 6 times.`).join('\n')}\nRnd 17: sc2tog 6 times. (6 sc)\nDraw the yarn through the remaining 6 sts and pull tight.`);
    expect(openLoops(solid).map((loop) => loop.length)).toEqual([6]);
    expect(volumeMl(solid)).toBeGreaterThan(80);
  });

  it('short rows on a flat panel leave no slit', () => {
    const { solid } = shaped('Foundation: ch 21.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (20 sc)\nRow 2: ch 1, turn, sc in each st across. (20 sc)\nRow 3: ch 1, turn, sc in next 10 sts. Leave 10 unworked. (10 sc)\nRow 4: ch 1, turn, sc in each st across. (10 sc)\nRow 5: ch 1, turn, sc in each st across, sc in next unworked st. (11 sc)');
    expect(openLoops(solid)).toHaveLength(1);
    expect([...edgesOf(solid).values()].every((cells) => cells.length === 1)).toBe(true);
  });

  it('nothing worked gives nothing', () => {
    const { solid } = shaped('Foundation: ch 5.');
    expect(solid.cells).toHaveLength(0);
    expect(solid.halfMm).toEqual([0, 0, 0]);
  });

  it('refuses a gauge that is not positive', () => {
    const { fabric } = shaped(discText(6, 3));
    expect(() => shapeSolid(fabric, { ...GAUGE, rows: 0 })).toThrow(RangeError);
  });
});

/** An example as a written pattern: its foundation, then its rows numbered from 1. */
function exampleText({ foundation, construction, rows }: Example): string {
  const chains = `ch ${foundation.chains ?? 20}${foundation.joined ? ', join to form a ring' : ''}`;
  const lines = [`Foundation: ${foundation.type === 'ring' && foundation.chains === undefined ? 'magic ring' : chains}.`];
  rows.forEach((row, k) => lines.push(`${construction === 'rounds' || /rnd/i.test(row.label) ? 'Rnd' : 'Row'} ${k + 1}: ${row.instruction}`));
  return lines.join('\n');
}

describe('published examples', () => {
  it.each(EXAMPLES.map((example) => [example.id, example] as const))('%s has a shape: finite, and no longer than its stitches in a line', (_, example) => {
    const { solid } = shaped(exampleText(example));
    for (const values of [solid.corners, solid.normals, solid.heads]) expect(values.every(Number.isFinite)).toBe(true);
    expect(solid.cells.length).toBeGreaterThan(0);
    expect(Math.max(...solid.halfMm)).toBeLessThan(1.5 * W * solid.stitches.length);
  });
});

/** A tube of 40 with an opening over some of its stitches, and rounds worked into it. */
const hand = (open: number, rounds: number): string => `HAND
Foundation: with A, ch 40, join to form a ring.
Rnds 1-20: sc in each st around. (40 sc)
Rnd 21: ch ${open} (each counts as st), skip next ${open} sts, sc in each st around. (40 sts)
Rnds 22-40: sc in each st around. (40 sc)
Fasten off.

THUMB
Join A with a sl st in the 1st st of the opening.
Rnds 1-${rounds}: sc in each st around. (${2 * open} sc)`;

describe('openings', () => {
  it.each([[6, 10], [8, 12], [8, 4]])('a thumb in an opening of %i, %i rounds long, stands out of the hand', (open, rounds) => {
    const { fabric, web, solid } = shaped(hand(open, rounds));
    const thumb = web.rows.filter((row) => row.setInto >= 0);
    expect(thumb).toHaveLength(rounds);
    expect(openLoops(solid).map((loop) => loop.length).sort((a, b) => a - b)).toEqual([2 * open, 40, 40]);
    // Measured: 4 to 7 pairs of cells, in the corners of the opening.
    expect(folds(solid)).toBeLessThanOrEqual(10);
    const axis = [0, 1, 2].map((c) => (middleOf(solid, web.rows[10]!)[c]! + middleOf(solid, web.rows[30]!)[c]!) / 2) as [number, number, number];
    const mouth = middleOf(solid, thumb[0]!);
    const end = middleOf(solid, thumb.at(-1)!);
    const radius = (40 * W) / (2 * Math.PI);
    expect(distance(mouth, axis)).toBeGreaterThan(radius - H);
    expect(distance(end, axis)).toBeGreaterThan(radius + 0.8 * (rounds - 2) * H);
    const { width, height } = strains(fabric, web, solid);
    expect(width.rms).toBeLessThan(0.025);
    expect(height.rms).toBeLessThan(0.025);
  });

  it('one that nothing is worked into stays a slit with chains over it, and its tube straight', () => {
    const { solid, web } = shaped(hand(8, 1).split('\n\n')[0]!);
    expect(web.rows.every((row) => row.setInto < 0)).toBe(true);
    expect(openLoops(solid)).toHaveLength(3);
    expect(folds(solid)).toBe(0);
    expect(2 * solid.halfMm[1]).toBeCloseTo(40 * H, 0);
  });
});

describe('row ends', () => {
  it.each([
    ['as they are', 'sc in each st across'],
    ['round a corner of three', 'sc in next 19 sts, 3 sc in next st'],
  ])('picked up for a border, %s, lie flat beside their rows', (_, top) => {
    const { web, solid } = shaped(`Foundation: ch 21.
Row 1: sc in 2nd ch from hook and in each ch across. (20 sc)
Rows 2-16: ch 1, turn, sc in each st across. (20 sc)
Row 17: ch 1, turn, ${top}, sc in next 16 row ends.
Row 18: ch 1, turn, sc in each st across.`);
    expect([...web.stands].filter((stands) => stands !== STANDS.top)).toHaveLength(16);
    expect(solid.halfMm[2]).toBeLessThan(1e-3);
    expect(folds(solid)).toBe(0);
    expect(openLoops(solid)).toHaveLength(1);
    expect([...edgesOf(solid).values()].every((cells) => cells.length === 1)).toBe(true);
    // The border goes down the side: its last stitch stands beside the first row, a stitch or two outside it.
    const border = web.rows.at(-2)!;
    const first = web.rows[1]!;
    const low = [border.first, border.end - 1].map((i) => Math.min(...[first.first, first.end - 1].map((end) => distance(pointOf(solid.heads, i), pointOf(solid.heads, end)))));
    expect(Math.min(...low)).toBeGreaterThan(W);
    expect(Math.min(...low)).toBeLessThan(2 * W);
  });
});
