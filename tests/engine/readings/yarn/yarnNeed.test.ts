import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PieceFacts, Swatch } from '../../../../src/engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { PANEL, SOCK } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { Origin } from '../../../../src/engine/2-construct/recipes/origin.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { yarnBySection } from '../../../../src/engine/readings/yarn/yarnBySection.ts';
import { yarnNeed, type YarnNeed } from '../../../../src/engine/readings/yarn/yarnNeed.ts';
import { yarnRate } from '../../../../src/engine/readings/yarn/yarnRates.ts';
import { measure, pieceOf, requestOf } from '../../2-construct/recipes/pieceOf.ts';

const SWATCH: Swatch = { id: 'one', stitch: 'sc', technique: 'plain', washed: true, stitches: 36, widthCm: 20, rows: 40, heightCm: 20, hookMm: 4, weight: 3, stretchedCm: null, yarn: null, grams: 20, metres: 50 };

function needOf(pattern: Pattern, facts: PieceFacts, size = 0): YarnNeed {
  const fabric = work(construct(pattern, size));
  return yarnNeed(pattern, fabric, colour(pattern, fabric, size), facts);
}

function panel(width: number, height: number, more: Partial<PieceSettings> = {}): Pattern {
  return pieceOf(requestOf({ ...PANEL, ...more } as PieceSettings, [measure('width', width), measure('height', height)])).pattern;
}

const kindCm = (need: YarnNeed, kind: string) => need.uses.filter((use) => use.kind === kind).reduce((sum, use) => sum + use.cm, 0);

describe('yarn from a swatch', () => {
  it('of a fabric is its area times what the swatch takes for its area, within 2 %', () => {
    // 50 m in 20 × 20 cm. Foundation and turning chains are a larger part of a small fabric, hence the 2 %.
    fc.assert(
      fc.property(fc.integer({ min: 15, max: 60 }), fc.integer({ min: 15, max: 60 }), (width, height) => {
        const pattern = panel(width, height);
        const fabric = work(construct(pattern, 0));
        const worked = fabric.rows.filter((row) => row.word === 'row');
        const areaCm = (worked[0]!.made / 1.8) * (worked.length / 2);
        const expected = areaCm * (5000 / 400);
        const found = kindCm(needOf(pattern, { swatches: [SWATCH] }), 'stitches');
        expect(Math.abs(found - expected) / expected).toBeLessThan(0.02);
      }),
      { numRuns: 40, seed: 21 },
    );
  });

  it('is the swatch’s own length for a fabric like the swatch', () => {
    // 36 stitches and 40 rows are the swatch itself.
    expect(kindCm(needOf(panel(20, 20), { swatches: [SWATCH] }), 'stitches')).toBeCloseTo(5000, 0);
  });

  it('that was only weighed gives grams straight, and metres by the label', () => {
    const weighed: Swatch = { ...SWATCH, metres: null };
    const facts: PieceFacts = { swatches: [weighed], supplies: [{ letter: 'A', weight: 3, ballGrams: 50, ballMetres: 125, price: 4 }], tailCm: 0, marginPercent: 0 };
    const [yarn] = needOf(panel(20, 20), facts).yarns;
    expect(yarn!.grams!.estimate).toBeCloseTo(20, 1);
    expect(yarn!.metres.estimate).toBeCloseTo(50, 0);
    // Half a gram of 20, and the hand: the label's doubt is not in the weight.
    expect((yarn!.grams!.most - yarn!.grams!.estimate) / yarn!.grams!.estimate).toBeCloseTo(Math.hypot(0.025, 0.03), 3);
    expect((yarn!.metres.most - yarn!.metres.estimate) / yarn!.metres.estimate).toBeGreaterThan(0.05);
    expect([yarn!.balls, yarn!.cost, yarn!.guessed]).toEqual([1, 4, false]);
  });

  it('of its own yarn and stitch comes before one of any, and carried swatches are left aside', () => {
    const facts: PieceFacts = { swatches: [{ ...SWATCH, metres: 40 }, { ...SWATCH, id: 'b', yarn: 'B', metres: 60 }, { ...SWATCH, id: 'c', technique: 'carried', yarn: 'A', metres: 99 }] };
    const pattern = panel(20, 20);
    const [a, b] = [yarnRate(pattern, facts, 'A'), yarnRate(pattern, facts, 'B')];
    expect(b.stitchCm('sc').value / a.stitchCm('sc').value).toBeCloseTo(60 / 40, 6);
    // 10.6 : 15.7 : 20.4 in for an inch of row (windchilde.com), from a swatch of single crochet.
    expect(a.stitchCm('dc').value / a.stitchCm('sc').value).toBeCloseTo(1.92, 6);
    expect(a.stitchCm('dc').spread).toBeGreaterThan(a.stitchCm('sc').spread);
  });
});

describe('yarn without a swatch', () => {
  it('is a guess with its range: 10.6 widths a stitch', () => {
    const pattern = panel(20, 20);
    const need = needOf(pattern, { tailCm: 0 });
    const [yarn] = need.yarns;
    expect(yarn!.guessed).toBe(true);
    expect(yarn!.grams).toBeNull();
    // 36 × 40 stitches of 10 / 18 cm, foundation and turning chains of 0.467.
    const units = 36 * 40 + (37 + 39) * 0.467;
    expect(yarn!.metres.estimate).toBeCloseTo((units * 10.6 * (10 / 18)) / 100, 1);
    expect(yarn!.metres.most / yarn!.metres.estimate).toBeCloseTo(1.25, 2);
  });

  it('weighs what its class of yarn may weigh, with the class’s range', () => {
    const [yarn] = needOf(panel(20, 20), { supplies: [{ letter: 'A', weight: 3, ballGrams: 50, ballMetres: null, price: null }], tailCm: 0 }).yarns;
    // Light: 182 to 250 m of 100 g.
    expect((yarn!.grams!.estimate * 216) / 100).toBeCloseTo(yarn!.metres.estimate, 0);
    expect(yarn!.balls).toBe(Math.ceil((yarn!.grams!.estimate * 1.1) / 50));
  });
});

const SETTINGS: PieceSettings = { ...SOCK, cuff: { edge: 'folded', heightCm: 3, yarn: 'C' }, loop: { cm: 9, yarn: 'B' }, fringe: { every: 2, strands: 3, cm: 12, yarn: 'B' } };

/** A sock whose yarns are carried, joined, sewn and cut to fringe. */
function dotted(girth: readonly number[], foot: readonly number[], leg: readonly number[]): Pattern {
  const { pattern } = pieceOf(requestOf(SETTINGS, [measure('footGirth', ...girth), measure('footLength', ...foot), measure('legLength', ...leg)]));
  return {
    ...pattern, motifs: [{ id: 'dot', name: 'Dot', cells: ['BAAA', 'ABAA'] }],
    placements: [{ id: 'dots', section: 'leg', motif: 'dot', row: { line: 'leg.rows', nth: 4 }, align: 'centre', offset: 0, across: 'fill', up: 3, gap: 0, mirror: false }],
  };
}

describe('yarn of a piece', () => {
  const pattern = dotted([22, 26], [23, 27], [20, 24]);
  const facts: PieceFacts = { swatches: [SWATCH], supplies: ['A', 'B', 'C'].map((letter) => ({ letter, weight: 3, ballGrams: 50, ballMetres: 110, price: 5.5 })), currency: 'EUR' };

  it('is the same summed by colour and by section, and each is one of the five things', () => {
    for (const size of [0, 1]) {
      const need = needOf(pattern, facts, size);
      const byYarn = need.yarns.reduce((sum, yarn) => sum + yarn.metres.estimate, 0);
      const sections = [...new Set(need.uses.map((use) => use.section))].map((section) => need.uses.filter((use) => use.section === section).reduce((sum, use) => sum + use.cm, 0));
      expect(byYarn).toBeCloseTo(sections.reduce((sum, cm) => sum + cm, 0) / 100, 9);
      expect(new Set(need.uses.map((use) => use.kind))).toEqual(new Set(['stitches', 'carried', 'ends', 'seams', 'fringe']));
      expect(need.uses.every((use) => use.cm > 0 && use.spread >= 0)).toBe(true);
      const rows = yarnBySection(need);
      expect(new Set(rows.map(({ section, yarn }) => `${section} ${yarn}`)).size).toBe(rows.length);
      need.yarns.forEach((total, yarn) => expect(rows.filter((row) => row.yarn === yarn).reduce((sum, row) => sum + row.sumCm, 0) / 100).toBeCloseTo(total.metres.estimate, 9));
      for (const { cm, sumCm } of rows) expect(Object.values(cm).reduce((sum, one) => sum + one, 0)).toBeCloseTo(sumCm, 9);
    }
  });

  it('closes a toe with three times its width, and a heel worked into its opening with nothing', () => {
    const settings = { ...SOCK, heel: { ...SOCK.heel, kind: 'afterthought' }, toe: { ...SOCK.toe, close: 'seam' }, leg: { ...SOCK.leg, way: 'rounds' } } as const;
    const { pattern: sock, fabrics } = pieceOf(requestOf(settings, [measure('footGirth', 20), measure('footLength', 20), measure('legLength', 12)]));
    const need = yarnNeed(sock, fabrics[0]!, colour(sock, fabrics[0]!, 0));
    // 36 round; the toe stops at 8, laid flat 4 stitches wide at 1.8 a cm (by hand).
    const seams = need.uses.filter(({ kind }) => kind === 'seams');
    expect(seams.map(({ section }) => sock.sections[section]!.id)).toEqual(['toe']);
    expect(seams[0]!.cm).toBeCloseTo((3 * 4) / 1.8, 9);
  });

  it('knows fringe by its strands, and seams by their length', () => {
    const need = needOf(pattern, facts);
    const top = work(construct(pattern, 0)).rows.find((row) => row.word === 'row')!.made;
    expect(kindCm(need, 'fringe')).toBe((Math.floor((top - 1) / 2) + 1) * 3 * 12);
    // The seam closes cuff (worked double) and leg, the cuff is sewn down all round; sewn yarn is three times its length (common practice).
    const rows = work(construct(pattern, 0)).rows.filter((row) => row.section < 2 && row.word === 'row').length;
    expect(kindCm(need, 'seams')).toBeCloseTo(3 * (rows / 2 + top / 1.8), 1);
  });

  it('carries a yarn over the stitches of the other, and ends every length twice', () => {
    const need = needOf(pattern, facts);
    const carried = need.uses.filter((use) => use.kind === 'carried');
    expect(carried.map((use) => pattern.yarns[use.yarn]!.letter).sort()).toEqual(['A', 'B']);
    const ends = need.uses.filter((use) => use.kind === 'ends').reduce((sum, use) => sum + use.cm, 0);
    expect(ends % 30).toBe(0);
  });

  it('comes to whole balls with a margin, and a price', () => {
    const need = needOf(pattern, facts, 1);
    for (const yarn of need.yarns) expect(yarn.balls).toBe(Math.ceil((yarn.metres.estimate * 1.1) / 110));
    expect(need.cost).toBe(5.5 * need.yarns.reduce((sum, yarn) => sum + yarn.balls!, 0));
    expect(need.currency).toBe('EUR');
    expect(needOf(pattern, { ...facts, supplies: facts.supplies!.slice(1) }).cost).toBeNull();
  });

  it('is more for a larger size, in every yarn that it is worked in', () => {
    const [small, large] = [needOf(pattern, facts, 0), needOf(pattern, facts, 1)];
    small.yarns.forEach((yarn, i) => expect(large.yarns[i]!.metres.estimate).toBeGreaterThan(yarn.metres.estimate));
  });
});

describe('numbers of yarn', () => {
  const leaves = (origin: Origin): Origin[] => {
    const { from } = origin;
    return from.kind === 'formula' && from.inputs.length > 0 ? from.inputs.flatMap(leaves) : from.kind === 'pinned' ? leaves(from.instead) : [origin];
  };
  const ball: PieceFacts = { swatches: [{ ...SWATCH, metres: null }], supplies: [{ letter: 'A', weight: 3, ballGrams: 50, ballMetres: 125, price: 6.5 }], tailCm: 12, marginPercent: 20 };

  it('say down to swatch, ball, margin and price what they come from', () => {
    // By hand: the swatch itself again, 20 g, which are 50 m of 125 m to 50 g; two tails of 12 cm; 50.24 m and a fifth are one ball.
    const need = needOf(panel(20, 20), ball);
    const { metres, grams, balls, cost } = need.yarns[0]!.numbers;
    expect(metres.value).toBeCloseTo(50.24, 2);
    expect(grams!.value).toBeCloseTo(20.1, 1);
    expect([balls!.value, cost!.value, need.cost]).toEqual([1, 6.5, 6.5]);
    const said = leaves(cost!).map(({ says, value }) => [says, Number(value.toFixed(2))]);
    // 5000 cm ÷ (36 × 40 + 0.467 × (36 + 40)) a single crochet (ratio of a chain: windchilde.com, 4.95 to 10.6).
    expect(said).toEqual([
      ['yarn in a single crochet', 3.39], ['single crochets that they are worth', 1475.49], ['lengths that are joined', 1], ['a tail', 12], ['bought beyond the estimate', 0.2], ['yarn in a ball', 125], ['price of a ball', 6.5],
    ]);
    const sources = leaves(cost!).map(({ from }) => (from.kind === 'given' ? from.source : ''));
    expect(sources[0]).toBe('swatch one: 20 g weighed in 36 × 40 sts of sc. Other stitches by rough published ratios, give or take 10 %');
    expect(leaves(grams!).at(-1)).toMatchObject({ says: 'weight of a metre', value: 0.4, from: { source: 'the ball: 50 g are 125 m' } });
  });

  it('add up part by part: each is the product of what it names', () => {
    const need = needOf(dotted([22], [23], [20]), { ...ball, swatches: [SWATCH] });
    for (const { numbers } of need.yarns) {
      const { from } = numbers.metres;
      if (from.kind !== 'formula') throw new RangeError(`${from.kind} instead of formula`);
      expect(from.inputs.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(numbers.metres.value, 9);
    }
    // By hand: a seam is three times its length, carried yarn a tenth more than its way, a length has two tails of 12 cm.
    const part = (key: string) => need.numbers.get(key)!;
    expect(part('yarn.A.stitches').value * 100).toBeCloseTo(part('yarn.A.stitches.one').value * part('yarn.A.stitches.worth').value, 6);
    expect(part('yarn.A.seams').value * 100).toBeCloseTo(3 * part('yarn.A.seams.length').value, 9);
    expect(part('yarn.A.carried').value * 100).toBeCloseTo(1.1 * part('yarn.A.carried.over').value, 9);
    expect(part('yarn.A.ends').value * 100).toBeCloseTo(24 * part('yarn.A.ends.lengths').value, 9);
    expect(Number.isInteger(Number(part('yarn.A.ends.lengths').value.toFixed(9)))).toBe(true);
    for (const own of yarnBySection(need)) expect(need.ofSection(own, 'Leg').value * 100).toBeCloseTo(own.sumCm, 9);
  });

  it.each<[string, number, Partial<Record<'metres' | 'grams' | 'balls' | 'cost', number>>]>([
    // 130 m at 0.4 g, and a fifth more are 156 m: two balls of 125 m at 6.50.
    ['yarn.A', 130, { metres: 130, grams: 52, balls: 2, cost: 13 }],
    // The ball is known by its length, so its weight changes no ball.
    ['yarn.A.grams', 33, { grams: 33, balls: 1, cost: 6.5 }],
    ['yarn.A.balls', 4, { balls: 4, cost: 26 }],
    ['yarn.A.cost', 5, { balls: 1, cost: 5 }],
  ])('set by hand: %s to %f, and the rest follows', (key, value, expected) => {
    const need = needOf(panel(20, 20), { ...ball, pins: { [key]: [value] } });
    const { numbers } = need.yarns[0]!;
    for (const [name, wanted] of Object.entries(expected)) expect(numbers[name as keyof typeof expected]!.value).toBeCloseTo(wanted, 9);
    expect(need.cost).toBeCloseTo(expected.cost!, 9);
    expect(need.problems).toEqual([]);
    expect(need.numbers.get(key)!.from.kind).toBe('pinned');
    if (key === 'yarn.A') expect(need.yarns[0]!.metres).toEqual({ estimate: 130, least: 130, most: 130 });
  });

  it('set by hand to what can’t be are reckoned, and it is said', () => {
    const need = needOf(panel(20, 20), { ...ball, pins: { 'yarn.A.balls': [1.5], 'yarn.A': [-3] } });
    expect(need.problems.map(({ key, found, expected }) => [key, found, expected])).toEqual([['yarn.A', -3, '0 or more'], ['yarn.A.balls', 1.5, 'a whole number']]);
    expect(need.yarns[0]!.balls).toBe(1);
  });

  it('are marked as rough where no swatch was weighed: published ratios with their range', () => {
    // windchilde.com: 10.6 in of yarn in an inch of single crochet; sc : hdc : dc are 1 : 1.48 : 1.92. No laboratory values were found, hence a quarter either way.
    const rate = yarnRate(panel(20, 20), {}, 'A');
    expect(rate.guessed).toBe(true);
    expect(rate.stitchCm('sc').value).toBeCloseTo(10.6 / 1.8, 9);
    for (const [kind, ratio] of [['sc', 1], ['hdc', 1.48], ['dc', 1.92]] as const) expect(rate.stitchCm(kind).value / rate.stitchCm('sc').value).toBeCloseTo(ratio, 9);
    expect(rate.stitchCm('dc').spread).toBe(0.25);
    expect(rate.source).toMatch(/^a guess: .*give or take 25 %.*published measurement/);
  });

  it('of weight by class name the class and its span (two tables and the yards of a pound)', () => {
    const rate = yarnRate(panel(20, 20), { supplies: [{ letter: 'A', weight: 1, ballGrams: null, ballMetres: null, price: null }] }, 'A');
    expect(rate.weightSource).toMatch(/^rough, by yarn weight 1 Super Fine: 100 g are 350 to 600 m/);
    // A typical sock yarn has 400 m of 100 g (knitbettersocks.blogspot.com).
    expect(1 / rate.gramsPerCm!.value).toBe(475);
    expect(400 / 475).toBeGreaterThan(1 - rate.gramsPerCm!.spread);
  });
});
