import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Measure, Swatch } from '../../../../src/engine/1-pattern/pieceFacts.ts';
import { DISC, NO_EDGE, PANEL, SOCK } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import { fitCount } from '../../../../src/engine/2-construct/recipes/fitCount.ts';
import { ballCounts, flatCount, flatMore } from '../../../../src/engine/2-construct/recipes/flatCount.ts';
import { foundationChains } from '../../../../src/engine/2-construct/recipes/foundationChains.ts';
import { heelRowCount, heelRows } from '../../../../src/engine/2-construct/recipes/shortRowHeel.ts';
import { toePlan, toeStop } from '../../../../src/engine/2-construct/recipes/toePlan.ts';
import { workText } from '../../workText.ts';
import { madeIn, measure, pieceOf, requestOf } from './pieceOf.ts';

const SQUARE = { stitches: 20, rows: 20, overCm: 10, stitch: 'sc' as const };

describe('flat discs', () => {
  it.each([
    [0.8, 5.0], [0.87, 5.5], [1, 6.28], [1.5, 9.42], [2, 12.57], [2.25, 14.1], [3, 18.85],
  ])('stitches %f times as high as wide grow by %f a round (2π × height ÷ width)', (ratio, more) => {
    expect(flatMore(ratio)).toBeCloseTo(more, 1);
  });

  it.each([[6, 0.955], [8, 1.273], [12, 1.91], [16, 2.546], [18, 2.865]])('%i more a round lie flat for a height of %f widths', (more, ratio) => {
    expect(flatMore(ratio)).toBeCloseTo(more, 2);
  });

  it('in single crochet count 6, 12, 18 … 48 (published counts), whatever the changes', () => {
    // Published: single crochet 6 more a round, double crochet 12 (craftymaria.blogspot.com 2009/06, mamas2hands.com 2017/03).
    for (const changes of ['stacked', 'staggered'] as const) {
      const disc = pieceOf(requestOf({ ...DISC, changes }, [measure('across', 8)], { gauge: SQUARE }));
      expect(madeIn(disc, 'crown')).toEqual([6, 12, 18, 24, 30, 36, 42, 48]);
    }
    const double = pieceOf(requestOf({ ...DISC, stitch: 'dc' }, [measure('across', 12)], { gauge: { ...SQUARE, stitches: 19, rows: 10, stitch: 'dc' } }));
    expect(madeIn(double, 'crown')).toEqual([12, 24, 36, 48, 60, 72]);
  });

  it.each([
    // Half doubles 1.27 to 1.6 times as high as wide: 8 to 10 more a round (published: 8, craftymaria.blogspot.com 2009/06 and mamas2hands.com 2017/03; up to 10 in use, common practice).
    [1.273, [8, 16, 24, 32]], [1.43, [9, 18, 27, 36]], [1.6, [10, 20, 30, 40]],
  ])('in half double crochet %f times as high as wide count %j', (ratio, counts) => {
    const disc = pieceOf(requestOf({ ...DISC, stitch: 'hdc' }, [measure('across', 4 * 2 * (ratio / 2))], { gauge: { stitches: 20, rows: 20 / ratio, overCm: 10, stitch: 'hdc' } }));
    expect(madeIn(disc, 'crown')).toEqual(counts);
    expect(disc.findings).toEqual([]);
  });

  it('as a cap end on the girth to a stitch, whatever is more in each round', () => {
    // By hand: 54 cm at 1.9 double crochets are 102.6, so 102; 12 more a round are 8 rounds to 96, 8.5 are 9, the last of 6 more.
    const cap = pieceOf(requestOf({ ...DISC, stitch: 'dc' }, [measure('girth', 54)], { gauge: { stitches: 19, rows: 10, overCm: 10, stitch: 'dc' } }));
    expect(madeIn(cap, 'crown')).toEqual([12, 24, 36, 48, 60, 72, 84, 96, 102]);
    expect(cap.findings).toEqual([]);
  });

  it('by gauge have in each round what the circle asks for, to half a stitch', () => {
    for (let round = 1; round < 40; round++) expect(Math.abs(flatCount(round, 0.87) - 2 * Math.PI * 0.87 * round)).toBeLessThanOrEqual(0.5);
  });
});

describe('balls', () => {
  // Rows ∝ sin θ (mspremiseconclusion.wordpress.com 2010/03/14); with square stitches the equator has twice as many stitches as rows (tacomagic.wordpress.com 2011/11/23).
  it.each([
    [8, [3, 9, 13, 16, 16, 13, 9, 3]],
    [12, [3, 9, 15, 19, 22, 24, 24, 22, 19, 15, 9, 3]],
  ])('of %i rounds have %j stitches', (rounds, counts) => {
    expect(ballCounts(rounds, 1)).toEqual(counts);
    // Half of a girth of so many rows of 5 mm.
    const ball = pieceOf(requestOf({ kind: 'ball', yarn: 'A' }, [measure('across', rounds / Math.PI)], { gauge: SQUARE }));
    expect(madeIn(ball, 'ball')).toEqual(counts);
  });
});

describe('foundation chains', () => {
  it.each([
    // stitch, turning chain counts, chains beyond the stitches, first worked in; sources in the last column
    ['sc', false, 1, 2, 'knotions.com, freeasyfar.com'],
    ['sc', true, 1, 2, 'a turning chain of single crochet never counts'],
    ['hdc', true, 1, 3, 'forum.knittinghelp.com: 12 chains give 11'],
    ['hdc', false, 2, 3, 'same thread'],
    ['dc', true, 2, 4, 'bkkquilt.com for the 4th'],
    ['dc', false, 3, 4, 'same thread'],
    ['tr', true, 3, 5, 'reckoned from the rule'],
    ['tr', false, 4, 5, 'same thread'],
    ['dtr', true, 4, 6, 'reckoned from the rule'],
    ['dtr', false, 5, 6, 'same thread'],
  ] as const)('%s, turning chain counts %s: %i more, worked in the %ith (%s)', (stitch, counts, more, nth, _source) => {
    const found = foundationChains(stitch, 30, counts);
    expect(found).toEqual({ chains: 30 + more, nth });
    // Chains less those skipped, and one for a turning chain that counts, are the stitches.
    expect(found.chains - (nth - 1) + (counts && stitch !== 'sc' ? 1 : 0)).toBe(30);
  });

  it.each(['sc', 'hdc', 'dc'] as const)('give just so many stitches when worked in %s', (stitch) => {
    const { findings, ...worked } = pieceOf(requestOf({ ...PANEL, stitch }, [measure('width', 15), measure('height', 6)], { gauge: { ...SQUARE, stitch } }));
    expect(findings).toEqual([]);
    expect(madeIn({ findings, ...worked }, 'panel')[0]).toBe(30);
  });
});

describe('a published sample that can’t be', () => {
  it('with 9 chains, the first double crochet in the 5th and 5 more after it is found out: 4 chains are left', () => {
    // 9 − 5 = 4 (reckoned); the sample was printed so.
    const { findings } = workText('Foundation: ch 9.\nRow 1: dc in 5th ch from hook, dc in next 5 chs.');
    expect(findings.filter(({ degree }) => degree === 'wrong').map(({ rule, expected, found }) => [rule, expected, found])).toEqual([['notEnoughPlaces', 5, 4]]);
  });
});

describe('gauges', () => {
  it('keep their fractions to the last: a gauge rounded first would give another count', () => {
    // By hand: 25 cm at 2.14 are 53.5, so 54; at 21 to 10 cm they would be 52.5, so 52.
    const sock = pieceOf(requestOf({ ...SOCK, cuff: NO_EDGE }, [measure('footGirth', 25), measure('footLength', 24), measure('legLength', 20)], { gauge: { stitches: 21.4, rows: 22.6, overCm: 10, stitch: 'sc' } }));
    expect(sock.made.numbers[0]!.get('around')).toMatchObject({ value: 54, from: { exact: expect.closeTo(53.5, 9) as number } });
    // 20 cm less the one row on the foundation: 45.2 − 1.
    expect(sock.made.numbers[0]!.get('leg.rows')).toMatchObject({ value: 44, from: { exact: expect.closeTo(44.2, 9) as number } });
  });

  it('of a swatch are taken as counted over what was measured', () => {
    // By hand: 27 stitches in 12.7 cm are 2.126 a cm, 46.8 in 22 cm; 2.1 would be 46.2.
    const swatch: Swatch = { id: '1', stitch: 'sc', technique: 'plain', washed: true, stitches: 27, widthCm: 12.7, rows: 30.5, heightCm: 13, hookMm: null, weight: null, stretchedCm: null, yarn: null, grams: null, metres: null };
    const sock = pieceOf(requestOf(SOCK, [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 20)], { swatches: [swatch] }));
    const { value, from } = sock.made.numbers[0]!.get('around')!;
    expect(value).toBe(46);
    expect(from).toMatchObject({ exact: expect.closeTo((22 * 27) / 12.7, 9) as number });
  });

  it('of the swatch counted after washing come before those counted before it', () => {
    const swatch = (id: string, washed: boolean, widthCm: number): Swatch => ({ id, stitch: 'sc', technique: 'plain', washed, stitches: 20, widthCm, rows: 20, heightCm: 10, hookMm: null, weight: null, stretchedCm: null, yarn: null, grams: null, metres: null });
    const around = (...swatches: Swatch[]) => pieceOf(requestOf(SOCK, [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 20)], { swatches })).made.numbers[0]!.get('around')!.value;
    // 22 cm at 2 are 44 stitches; washed, at 20 to 11 cm, 40.
    expect(around(swatch('1', false, 10))).toBe(44);
    expect(around(swatch('2', true, 11), swatch('1', false, 10))).toBe(40);
  });

  it('give the worked example of a published sock: 9 in less a tenth at 7.5 stitches an inch are 60.75, so 60', () => {
    // wabi-sabi.ca, socks with ease.
    const girth: Measure = { name: 'footGirth', cm: [9 * 2.54], easePercent: -10, easeCm: 0 };
    const sock = pieceOf(requestOf(SOCK, [girth, measure('footLength', 24), measure('legLength', 20)], { gauge: { stitches: 7.5, rows: 9, overCm: 2.54, stitch: 'sc' } }));
    expect(sock.made.numbers[0]!.get('around')).toMatchObject({ value: 60, from: { exact: expect.closeTo(60.75, 9) as number } });
  });
});

describe('counts that fit a motif', () => {
  it('are the nearest of all numbers, by brute force', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 140, noNaN: true }), fc.constantFrom(1, 2), fc.integer({ min: 1, max: 14 }), fc.integer({ min: 0, max: 6 }), (exact, step, repeat, edge) => {
        const fit = fitCount(exact, step, { repeat, edge }, 6);
        const good = Array.from({ length: 400 }, (_, i) => i).filter((n) => n >= 6 && n % step === 0 && n - edge >= repeat && (n - edge) % repeat === 0);
        expect(fit.fits).toBe(good.length > 0);
        if (!fit.fits) return;
        const off = (n: number) => Math.abs(n - exact);
        expect(off(fit.count)).toBeCloseTo(Math.min(...good.map(off)), 9);
        expect(fit.up).toBe(good.find((n) => n >= exact));
        expect(fit.down).toBe(good.findLast((n) => n <= exact) ?? null);
      }),
      { numRuns: 400, seed: 3 },
    );
  });

  it('leave a motif aside that can’t be: 8 stitches and 1 in an even round', () => {
    expect(fitCount(50, 2, { repeat: 8, edge: 1 }, 6)).toMatchObject({ count: 50, without: 50, fits: false });
  });
});

describe('heels in short rows', () => {
  // Rows down = n − m, as many up; the count returns to n; both sides left equal (nataliesoddities.wordpress.com: equal sides matter most).
  it.each([[20, 5, 1], [24, 6, 1], [24, 6, 2], [32, 8, 2]] as const)('of %i leaving %i a side in steps of %i narrow and widen by as many rows', (stitches, left, step) => {
    const rows = heelRows({ stitches, leftFirst: left, leftSecond: left, step, from: 'seam', corners: false, yarn: null });
    const counts = rows.map((row) => (row.kind === 'row' ? row.rows : 0));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(heelRowCount({ leftFirst: left, leftSecond: left, step }));
    const by = (role: string) => rows.find((row) => row.role === role)!;
    expect(by('narrow')).toMatchObject({ rows: (2 * left) / step });
    expect(by('close')).toMatchObject({ rows: (2 * left) / step, stated: { count: stitches } });
  });

  it('refuse sides that leave no middle, or that steps can’t reach', () => {
    const plan = { stitches: 10, leftFirst: 5, leftSecond: 5, step: 0, from: 'seam', corners: false, yarn: null } as const;
    expect(() => heelRows(plan)).toThrow(RangeError);
    expect(() => heelRows({ ...plan, leftFirst: 3, leftSecond: 3, step: 2 })).toThrow(RangeError);
  });
});

describe('toes', () => {
  it.each([[44, 12], [48, 12], [56, 16], [60, 16], [64, 16]])('of %i stitches stop at %i, near a quarter (handbooks agree)', (around, stop) => {
    expect(toeStop(around, 'half')).toBe(stop);
  });

  it('pace their decreases as handbooks say', () => {
    const evens = (pace: 'every' | 'second' | 'half' | 'graduated') => toePlan(60, 20, { pace, evens: null }).decreases.map(({ evenBefore }) => evenBefore);
    expect(evens('every')).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(evens('second')).toEqual([0, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
    // Half of them in alternate rounds, the rest in every round.
    expect(evens('half')).toEqual([0, 1, 1, 1, 1, 0, 0, 0, 0, 0]);
    // Once in the 4th round, every 3rd twice, every 2nd several times, then every round (zanotowane.pl/713/7914).
    expect(evens('graduated')).toEqual([3, 2, 2, 1, 1, 1, 0, 0, 0, 0]);
  });

  it('refuse counts that decreases of four can’t reach, and more than a round can hold', () => {
    expect(() => toePlan(46, 12, { pace: 'every', evens: null })).toThrow(RangeError);
    expect(() => toePlan(64, 4, { pace: 'every', evens: null }, 3)).toThrow(RangeError);
  });
});

describe('edges', () => {
  it.each([
    ['plain', 4, [48, 48, 48, 48, 48, 48, 48, 48]],
    ['backLoops', 4, [48, 48, 48, 48, 48, 48, 48, 48]],
    ['posts', 4.5, [48, 48, 48, 48, 48]],
    ['folded', 2, [48, 48, 48, 48, 48, 48, 48, 48]],
    ['picot', 2, [48, 48, 48, 48, 24, 48, 48, 48, 48]],
  ] as const)('%s of %f cm', (edge, heightCm, counts) => {
    const tube = pieceOf(requestOf({ kind: 'tube', start: { edge, heightCm, yarn: 'A' }, end: NO_EDGE, yarn: 'A', motif: { repeat: 0, edge: 0 }, changes: 'stacked', loop: null }, [measure('girth', 24), measure('height', 20)], { gauge: SQUARE }));
    expect(madeIn(tube, 'start')).toEqual(counts);
    expect(tube.findings).toEqual([]);
  });
});
