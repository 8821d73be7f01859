import { describe, expect, it } from 'vitest';
import type { Gauge } from '../../../../src/engine/1-pattern/pattern.ts';
import { flatness } from '../../../../src/engine/readings/flatness/flatness.ts';
import { workText } from '../../workText.ts';

/** Stitches 10 mm wide; a single crochet `tall` mm tall. */
const gaugeOf = (tall: number): Gauge => ({ stitches: 10, rows: 100 / tall, overCm: 10, stitch: 'sc' });

/** `k` stitches more in each of `rounds` rounds, from a ring. */
function disc(stitch: 'sc' | 'hdc' | 'dc', k: number, rounds: number): string {
  const lines = [`Rnd 1: magic ring, ${k} ${stitch} in ring. (${k} sts)`, `Rnd 2: 2 ${stitch} in each st around. (${2 * k} sts)`];
  for (let r = 3; r <= rounds; r++) lines.push(`Rnd ${r}: (2 ${stitch} in next st, ${stitch} in next ${r - 2} sts) ${k} times. (${k * r} sts)`);
  return lines.join('\n');
}

const rowsOf = (text: string, tall: number) => flatness(workText(text).fabric, 0, gaugeOf(tall));

describe('flatness of rounds from a ring', () => {
  it.each([
    // Published rules for a flat circle (two craft blogs, 2009 and 2017): single crochet 6, half double 8, double 12; 8 to 10 are in use for half double.
    { stitch: 'sc', least: 6, most: 6 },
    { stitch: 'hdc', least: 8, most: 10 },
    { stitch: 'dc', least: 12, most: 12 },
  ] as const)('needs $least to $most increases a round for $stitch, as published, within half an increase', ({ stitch, least, most }) => {
    // Single crochet 0.955 (where 6 is exact) to 1 times as tall as wide.
    for (const tall of [9.55, 10]) {
      const [first] = rowsOf(disc(stitch, most, 4), tall);
      expect(first!.flatIncreases).toBeGreaterThan(least - 0.5);
      expect(first!.flatIncreases).toBeLessThan(most + 0.6);
    }
  });

  it.each([
    // Derived, 2π·h/w: height over width, increases.
    [0.8, 5.0], [0.87, 5.5], [1, 6.28], [1.5, 9.42], [2, 12.57], [2.25, 14.1], [3, 18.85],
  ])('needs %f times as tall as wide: %f increases', (ratio, increases) => {
    expect(rowsOf(disc('sc', 6, 3), 10 * ratio)[0]!.flatIncreases).toBeCloseTo(increases, 1);
  });

  it.each([
    // The project's own measurements of such discs (discs of springs, laid free): height, increases, ratio, how it lies.
    [0.95, 3, 0.503, 'cups'], [0.95, 4, 0.67, 'cups'], [0.95, 5, 0.838, 'cups'], [0.95, 6, 1.005, 'flat'], [0.95, 7, 1.173, 'ruffles'], [0.95, 8, 1.34, 'ruffles'],
    [1, 4, 0.637, 'cups'], [1, 5, 0.796, 'cups'], [1, 6, 0.955, 'flat'], [1, 7, 1.114, 'ruffles'], [1, 8, 1.273, 'ruffles'],
  ] as const)('at %f tall, %i increases have the ratio %f: %s', (tall, k, ratio, lies) => {
    const rows = rowsOf(disc('sc', k, 8), 10 * tall);
    expect(rows).toHaveLength(8);
    rows.forEach((row) => {
      expect(row.increases).toBe(k);
      expect(row.ratio).toBeCloseTo(ratio, 3);
      expect(row.lies).toBe(lies);
      expect(row.running.lies).toBe(lies);
    });
  });

  it('gives a cone the angle whose sine is the ratio', () => {
    const [row] = rowsOf(disc('sc', 3, 6), 9.5);
    expect(Math.sin(row!.coneRad!)).toBeCloseTo(0.503, 3);
    expect(rowsOf(disc('sc', 6, 6), 9.5)[5]!.coneRad).toBeNull();
  });

  it.each([
    // One more in every N stitches: radius over height h / ln((N + 1) / N), derived from Henderson and Taimiņa's hyperbolic plane.
    [1, 1.443], [2, 2.466], [3, 3.476], [4, 4.481], [5, 5.485], [6, 6.487], [8, 8.49], [10, 10.492], [12, 12.493], [20, 20.496],
  ])('one more in every %i stitches makes a hyperbolic plane of %f heights', (n, radius) => {
    // Start wide, so that N divides the counts for two rounds.
    const counts = [n * n * 6, n * (n + 1) * 6, (n + 1) * (n + 1) * 6];
    const each = n === 1 ? '2 sc in each st around' : `(sc in next ${n - 1 === 1 ? 'st' : `${n - 1} sts`}, 2 sc in next st) around`;
    const rows = rowsOf(`Rnd 1: magic ring, ${counts[0]!} sc in ring.\nRnd 2: ${each}.\nRnd 3: ${each}.`, 10);
    expect(rows.map((row) => row.made)).toEqual(counts);
    expect(rows[2]!.hyperbolicMm! / 10).toBeCloseTo(radius, 3);
    expect(rows[0]!.hyperbolicMm).toBeNull();
  });

  it('one more in every 4 makes 25 of 20, as published (sites.google.com/site/phanyamada); from a ring that still lies flat or cups, and further out has a radius of about 4½ heights', () => {
    const growth = (from: number) => rowsOf(`Rnd 1: magic ring, ${from} sc in ring.\nRnd 2: (sc in next 3 sts, 2 sc in next st) around.`, 10);
    expect(growth(20).map((row) => row.made)).toEqual([20, 25]);
    // 5 more are fewer than the 6.28 that lie flat, 20 more are not.
    expect([growth(20)[1]!.lies, growth(80)[1]!.lies]).toEqual(['cups', 'ruffles']);
    // r ÷ h is about N + ½ (derived).
    expect(Math.abs(growth(80)[1]!.hyperbolicMm! / 10 - 4.5)).toBeLessThan(0.02);
  });

  it.each([
    // By hand: a cone whose rounds grow by a share of what lies flat has that share as the sine of its half angle: 30°, 45°, 60° of a disc of 12.
    [6, 30], [8.485, 45], [10.392, 60],
  ])('of a disc that takes 12, %f more a round make a cone of %f degrees to its axis', (more, degrees) => {
    const whole = Math.round(more);
    // Twelve lie flat where a stitch is 12 ÷ 2π as tall as wide; the gauge is set so that the whole number is that share.
    const [row] = rowsOf(disc('sc', whole, 3), (10 * 12 * whole) / more / (2 * Math.PI));
    expect((row!.coneRad! * 180) / Math.PI).toBeCloseTo(degrees, 2);
    expect(row!.lies).toBe('cups');
  });

  it('doubling in each round from 6 gives the published 6, 12, 24, 48, 96 and ruffles from the third round on (a craft blog)', () => {
    const rows = rowsOf('Rnd 1: magic ring, 6 sc in ring.\nRnds 2-5: 2 sc in each st around.', 9.55);
    expect(rows.map((row) => row.made)).toEqual([6, 12, 24, 48, 96]);
    expect(rows.map((row) => row.lies)).toEqual(['flat', 'flat', 'ruffles', 'ruffles', 'ruffles']);
  });

  it('forgives one odd round in the running ratio', () => {
    const rows = rowsOf(`${disc('sc', 6, 5)}\nRnd 6: sc in each st around. (30 sc)\nRnd 7: (2 sc in next st, sc in next st, 2 sc in next st, sc in next 2 sts) 6 times. (42 sc)\nRnd 8: (2 sc in next st, sc in next 6 sts) 6 times. (48 sc)`, 9.55);
    expect(rows.map((row) => row.increases)).toEqual([6, 6, 6, 6, 6, 0, 12, 6]);
    expect(rows[5]!.lies).toBe('cups');
    expect(rows[6]!.lies).toBe('ruffles');
    expect(rows[6]!.running.lies).toBe('flat');
    expect(rows[7]!.running.lies).toBe('flat');
  });

  it('takes rounds joined over a counted turning chain from their own stitches', () => {
    const rows = rowsOf('Rnd 1: ch 4, join to form a ring, ch 3, 11 dc in ring, join with sl st in top of ch-3. (12 dc)\nRnd 2: ch 3, dc in same st, 2 dc in each st around, join with sl st in top of ch-3. (24 dc)', 9.55);
    expect(rows.map((row) => [row.made, row.increases, row.lies])).toEqual([[12, 12, 'flat'], [24, 12, 'flat']]);
  });

  it('stops where the work closes again, and says nothing of panels, tubes and later sections', () => {
    const ball = rowsOf(`${disc('sc', 6, 4)}\nRnd 5: sc in each st around.\nRnd 6: (sc2tog, sc in next 2 sts) 6 times.\nRnd 7: sc in each st around.`, 9.55);
    expect(ball).toHaveLength(5);
    expect(rowsOf('Foundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc in each st across.', 10)).toEqual([]);
    expect(rowsOf('Foundation: ch 20, join to form a ring.\nRnds 1-4: sc in each st around.', 10)).toEqual([]);
    const cap = workText(`Cap\n\nCROWN\n${disc('sc', 6, 4)}\n\nSIDES\nRnds 1-3: sc in each st around. (24 sc)`).fabric;
    expect(flatness(cap, 0, gaugeOf(10))).toHaveLength(4);
    expect(flatness(cap, 1, gaugeOf(10))).toEqual([]);
  });

  it('refuses a section that is not there', () => {
    expect(() => flatness(workText(disc('sc', 6, 2)).fabric, 3, gaugeOf(10))).toThrow(/section 3 asked of 1/);
  });
});
