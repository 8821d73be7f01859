import type { Measure } from '../../../../src/engine/1-pattern/pieceFacts.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DISC, NO_EDGE, PANEL, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { EdgeSettings, PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { sockSizes } from '../../../../src/engine/readings/sizes/sockSizes.ts';
import { measure, pieceOf, requestOf, type WorkedPiece } from './pieceOf.ts';

/** Gauges of single crochet from chunky to sock yarn, stitches from wide to tall. */
const gauge = fc.record({ stitches: fc.double({ min: 9, max: 32, noNaN: true }), tall: fc.double({ min: 0.78, max: 1.1, noNaN: true }) })
  .map(({ stitches, tall }) => ({ stitches, rows: stitches / tall, overCm: 10, stitch: 'sc' as const }));
const cm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const edge: fc.Arbitrary<EdgeSettings> = fc.record({ edge: fc.constantFrom('none', 'plain', 'backLoops', 'posts', 'folded', 'picot'), heightCm: cm(1, 5), yarn: fc.constantFrom('A', 'B') });
const motif = fc.constantFrom({ repeat: 0, edge: 0 }, { repeat: 6, edge: 0 }, { repeat: 8, edge: 2 }, { repeat: 7, edge: 0 });
const yarn = fc.constantFrom('A', 'B', 'C');

const socks = fc.record({
  cuff: edge,
  leg: fc.record({ way: fc.constantFrom('flat' as const, 'rounds' as const), calf: fc.boolean(), yarn, motif }),
  heel: fc.record({
    kind: fc.constantFrom('shortRows' as const, 'flap' as const, 'afterthought' as const), share: fc.constantFrom(0.4, 0.5, 0.55, 0.6), turn: fc.constantFrom('atOnce' as const, 'stepped' as const),
    step: fc.constantFrom(1 as const, 2 as const), corners: fc.boolean(), gusset: fc.constantFrom('every' as const, 'second' as const), yarn,
  }),
  foot: fc.record({ yarn }),
  toe: fc.record({ pace: fc.constantFrom('every' as const, 'second' as const, 'half' as const, 'graduated' as const), evens: fc.constant(null), inStep: fc.boolean(), close: fc.constantFrom('drawn' as const, 'seam' as const), yarn }),
  loop: fc.constantFrom(null, { cm: 8, yarn: 'B' }),
  fringe: fc.constantFrom(null, { every: 2, strands: 3, cm: 12, yarn: 'C' }),
}).map((settings): PieceSettings => ({ kind: 'sock', ...settings }));

/** Feet of two sizes, from a child's to a large man's; the foot longer than it is round, as feet are. */
const feet = fc.record({ girth: cm(14, 28), ratio: cm(1.02, 1.16), leg: cm(10, 40), calf: cm(1.1, 1.65), grow: cm(0.5, 4) }).map(({ girth, ratio, leg, calf, grow }): readonly Measure[] => [
  measure('footGirth', girth, girth + grow), measure('footLength', girth * ratio, (girth + grow) * ratio), measure('legLength', leg, leg + grow), measure('calf', girth * calf, (girth + grow) * calf),
]);

function opensNothing({ pattern, fabrics }: WorkedPiece, mayStay: readonly string[]): void {
  fabrics.forEach((fabric) => {
    const sections = new Set([...fabric.openAtEnd].map((stitch) => pattern.sections[fabric.rows[fabric.row[stitch]!]!.section]!.id));
    expect([...sections].filter((id) => !mayStay.includes(id))).toEqual([]);
  });
}

type Numbers = WorkedPiece['made']['numbers'][number];

/** Every asked-for measurement within a stitch or row, or so many as `slack` allows by the numbers of that size. */
function measuresMet({ reports, made }: WorkedPiece, slack: (name: string, numbers: Numbers) => number = () => 1): void {
  reports.forEach((report, size) => {
    for (const one of report.finished) {
      if (one.differenceCm === null) continue;
      const stitches = Math.abs(one.differenceCm) / one.oneCm;
      expect(stitches, `${one.name}: ${one.cm} for ${one.wanted!.value}`).toBeLessThanOrEqual(slack(one.name, made.numbers[size]!) + 1e-6);
    }
  });
}

/** Whether a number was held at the least that the making allows, so that the measurement can't be met. */
function atLeast(numbers: Numbers, key: string): boolean {
  const origin = numbers.get(key);
  return origin?.from.kind === 'formula' && origin.from.rounding !== null && origin.from.exact < origin.from.rounding.least - 0.5;
}

describe('every recipe, for gauges and measurements within sense', () => {
  it.each([2026, 3026, 4026])('a sock of any make works without findings in every size, and measures what was wanted (seed %i)', (seed) => {
    fc.assert(
      fc.property(socks, gauge, feet, (settings, of, measures) => {
        if (settings.kind !== 'sock') return;
        const worked = pieceOf(requestOf(settings, measures, { gauge: of }));
        expect(worked.findings).toEqual([]);
        opensNothing(worked, ['loop']);
        const { repeat } = settings.leg.motif;
        measuresMet(worked, (name, numbers) => {
          switch (name) {
            // A motif takes the count half a repeat away, a whole one where it must be even too.
            case 'footGirth':
            case 'opening':
              return numbers.get('foot.rounds')!.value === 0 ? Infinity : repeat > 0 ? repeat + 1 : 1;
            // The top is asked for only where the leg is shaped, and never narrower than the ankle.
            case 'calf':
              return !settings.leg.calf || atLeast(numbers, 'top') ? Infinity : 1;
            // A flap with its gusset, or heel and toe, can be longer than a very short foot.
            case 'footLength':
              return atLeast(numbers, 'foot.rounds') ? Infinity : 1;
            case 'legLength':
              return atLeast(numbers, 'leg.rows') ? Infinity : 1;
            default:
              return 1;
          }
        });
      }),
      { numRuns: 60, seed, endOnFailure: true },
    );
  });

  it.each([7, 1007])('a panel in any of its stitches, shaped or not, with and without bobbles (seed %i)', (seed) => {
    fc.assert(
      fc.property(fc.constantFrom('sc' as const, 'hdc' as const, 'dc' as const), gauge, cm(6, 60), cm(4, 50), cm(0.5, 2), motif, fc.constantFrom(null, { every: 5, at: 0.4 }, { every: 9, at: 1 }), fc.boolean(), (stitch, of, width, height, far, repeat, bobbles, shaped) => {
        const settings: PieceSettings = { ...PANEL, stitch, motif: repeat, bobbles, loop: { cm: 9, yarn: 'B' }, fringe: { every: 3, strands: 4, cm: 15, yarn: 'C' } };
        const measures = [measure('width', width, width + 6), measure('height', height, height + 3), ...(shaped ? [measure('topWidth', width * far, width + 2)] : [])];
        const worked = pieceOf(requestOf(settings, measures, { gauge: of }));
        expect(worked.findings).toEqual([]);
        opensNothing(worked, ['panel', 'loop']);
        measuresMet(worked, (name, numbers) => ((name === 'width' || (name === 'topWidth' && !shaped)) && repeat.repeat > 0 ? repeat.repeat + repeat.edge : (name === 'topWidth' && atLeast(numbers, 'far.stitches')) || (name === 'height' && atLeast(numbers, 'rows')) ? Infinity : 1));
      }),
      { numRuns: 70, seed },
    );
  });

  it.each([8, 1008])('a tube, even or shaped, with any edges (seed %i)', (seed) => {
    fc.assert(
      fc.property(edge, edge, gauge, cm(12, 60), cm(14, 60), cm(0.6, 1.7), motif, fc.constantFrom('stacked' as const, 'staggered' as const), (start, end, of, girth, height, far, repeat, changes) => {
        const settings: PieceSettings = { ...TUBE, start, end, motif: repeat, changes };
        const worked = pieceOf(requestOf(settings, [measure('girth', girth, girth + 5), measure('endGirth', girth * far, girth + 4), measure('height', height, height + 2)], { gauge: of }));
        expect(worked.findings).toEqual([]);
        opensNothing(worked, ['tube', 'end', 'start']);
        measuresMet(worked, (name) => (name === 'girth' && repeat.repeat > 0 ? 2 * repeat.repeat + repeat.edge : 1));
      }),
      { numRuns: 70, seed },
    );
  });

  it.each([9, 1009])('a disc or cap in any of its stitches, flat by number or by gauge (seed %i)', (seed) => {
    fc.assert(
      fc.property(fc.constantFrom('sc' as const, 'hdc' as const, 'dc' as const), fc.constantFrom('constant' as const, 'byGauge' as const), fc.constantFrom('stacked' as const, 'staggered' as const), edge, gauge, cm(5, 30), cm(0, 12), fc.boolean(), (stitch, more, changes, brim, of, across, sides, cap) => {
        const settings: PieceSettings = { ...DISC, stitch, more, changes, brim: cap ? brim : NO_EDGE };
        const measures = cap
          ? [measure('girth', across * 3.2, across * 3.2 + 3), measure('height', across / 2 + 6 + sides, across / 2 + 7 + sides)]
          : [measure('across', across, across + 4), measure('height', across / 2 + sides, across / 2 + 2 + sides)];
        const worked = pieceOf(requestOf(settings, measures, { gauge: of }));
        expect(worked.findings).toEqual([]);
        opensNothing(worked, ['crown', 'sides', 'brim']);
        // A cap is as wide as its girth makes it; a crown can be higher than what is asked for, and nothing is smaller than its first rounds.
        measuresMet(worked, (name, numbers) => {
          switch (name) {
            case 'across':
              return cap || atLeast(numbers, 'rounds') ? Infinity : 1;
            case 'height':
              return numbers.get('sides')!.value === 0 ? Infinity : 1;
            case 'girth':
              return !cap || atLeast(numbers, 'around') ? Infinity : 1;
            default:
              return 1;
          }
        });
      }),
      { numRuns: 60, seed },
    );
  });

  it.each([10, 1010])('an oval and a ball (seed %i)', (seed) => {
    fc.assert(
      fc.property(gauge, cm(3, 16), cm(2, 14), (of, width, longer) => {
        const oval = pieceOf(requestOf({ kind: 'oval', yarn: 'A' }, [measure('width', width, width + 2), measure('length', width + longer, width + longer + 5)], { gauge: of }));
        expect(oval.findings).toEqual([]);
        opensNothing(oval, ['oval']);
        measuresMet(oval);
        const ball = pieceOf(requestOf({ kind: 'ball', yarn: 'A' }, [measure('across', width, width + 3)], { gauge: of }));
        expect(ball.findings).toEqual([]);
        opensNothing(ball, []);
        measuresMet(ball);
      }),
      { numRuns: 40, seed },
    );
  });

  it('a sock in as many sizes as there are bands of feet, women’s and men’s together', () => {
    const bands = [...sockSizes('women'), ...sockSizes('men')];
    const measures = [measure('footGirth', ...bands.map((one) => one.footGirthCm)), measure('footLength', ...bands.map((one) => one.footLengthCm)), measure('legLength', ...bands.map(() => 20)), measure('calf', ...bands.map((one) => one.calfCm))];
    const worked = pieceOf(requestOf({ ...SOCK, leg: { ...SOCK.leg, calf: true } }, measures));
    expect(worked.pattern.sizes).toHaveLength(13);
    expect(worked.findings).toEqual([]);
    measuresMet(worked);
  });

  it.each([77, 1077])('a sock with any numbers pinned by hand works without a wrong number, or says that they can’t be (seed %i)', (seed) => {
    const keys = ['around', 'top', 'cuff.rows', 'leg.rows', 'heel.stitches', 'heel.left', 'toe.stop', 'foot.rounds', 'flap.rows', 'gusset.rounds', 'toe.rounds'];
    fc.assert(
      fc.property(socks, feet, fc.dictionary(fc.constantFrom(...keys), fc.tuple(fc.integer({ min: -2, max: 90 }), fc.constantFrom(null, 7, 24, 2.5)), { maxKeys: 3 }), (settings, measures, pins) => {
        const worked = pieceOf(requestOf(settings, measures, { pins }));
        expect(worked.findings.filter(({ degree }) => degree === 'wrong')).toEqual([]);
        for (const { key, size, found } of worked.made.problems) expect(worked.made.numbers[size]!.get(key)!.value).not.toBe(found);
      }),
      { numRuns: 40, seed },
    );
  });

  it('a leg of any counts, however short', () => {
    fc.assert(
      fc.property(fc.constantFrom('flat' as const, 'rounds' as const), fc.integer({ min: 6, max: 40 }), fc.integer({ min: 0, max: 50 }), fc.integer({ min: 2, max: 40 }), (way, half, more, rows) => {
        const calf = measure('calf', (2 * half + 2 * more) / 1.8);
        const worked = pieceOf(requestOf({ ...SOCK, cuff: NO_EDGE, leg: { ...SOCK.leg, way, calf: true } }, [measure('footGirth', (2 * half) / 1.8), measure('footLength', 30), measure('legLength', rows / 2), calf]));
        expect(worked.findings).toEqual([]);
      }),
      { numRuns: 80, seed: 78 },
    );
  });

  it('a sock without any measurement of the foot is refused', () => {
    expect(() => pieceOf(requestOf(SOCK, [measure('legLength', 20)]))).toThrow(RangeError);
  });
});
