import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Swatch } from '../../../../src/engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { NO_EDGE, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { describeFinding } from '../../../../src/engine/readings/checks/prose.ts';
import { featuresOf } from '../../../../src/engine/readings/sizes/featuresOf.ts';
import { pinChecks } from '../../../../src/engine/readings/sizes/pinChecks.ts';
import { sizeChecks } from '../../../../src/engine/readings/sizes/sizeChecks.ts';
import { sizeReport } from '../../../../src/engine/readings/sizes/sizeReport.ts';
import { footFrom, sockSizes } from '../../../../src/engine/readings/sizes/sockSizes.ts';
import { measure, pieceOf, requestOf } from '../../2-construct/recipes/pieceOf.ts';

const SWATCH: Swatch = { id: 'one', stitch: 'sc', technique: 'plain', washed: true, stitches: 26, widthCm: 14, rows: 28, heightCm: 14, hookMm: 4.5, weight: 3, stretchedCm: null, yarn: null, grams: null, metres: null };

function reportOf(pattern: Pattern, size = 0, facts = { swatches: [] as Swatch[], measures: [] as ReturnType<typeof measure>[] }) {
  const fabric = work(construct(pattern, size));
  return sizeReport(pattern, fabric, colour(pattern, fabric, size), size, facts);
}

const rules = (found: readonly { readonly rule: string }[]) => found.map(({ rule }) => rule);

describe('finished measurements from the worked fabric', () => {
  const { pattern } = patternFromText(readFileSync(new URL('../../../samples/puffin-quay/structure.txt', import.meta.url), 'utf8'));

  it.each([
    // By hand: 48 (56, 64) stitches at 18 to 10 cm; 8 + 40 rows at 20 to 10 cm; half of 17 (19, 21) heel rows, 27 (30, 34) and 12 rounds.
    [0, 26.67, 24, 23.75], [1, 31.11, 24, 25.75], [2, 35.56, 24, 28.25],
  ])('of Puffin Quay, size %i: %f cm round, leg %f cm, foot %f cm', (size, girth, leg, foot) => {
    const { finished } = reportOf(pattern!, size);
    const cm = (name: string) => finished.find((one) => one.name === name && one.piece === 0)!.cm;
    expect(cm('footGirth')).toBeCloseTo(girth, 2);
    expect(cm('opening')).toBeCloseTo(girth, 2);
    expect(cm('legLength')).toBeCloseTo(leg, 2);
    expect(cm('footLength')).toBeCloseTo(foot, 2);
  });

  it('of every section: rows, stitches at start and end, width and height', () => {
    const { sections } = reportOf(pattern!);
    expect(sections.map(({ name, kind, rows, stitches }) => [name, kind, rows, stitches.first, stitches.last])).toEqual([
      ['CUFF', 'seamed', 8, 48, 48], ['LEG', 'seamed', 40, 48, 48], ['HEEL', 'turned', 17, 24, 24], ['FOOT', 'round', 27, 48, 48], ['TOE', 'round', 12, 44, 12], ['LOOP', 'flat', 1, 16, 16],
    ]);
    expect(sections[1]).toMatchObject({ widthCm: expect.closeTo(48 / 1.8, 9) as number, heightCm: 20 });
  });

  it('explain themselves: stitches counted times the width of one', () => {
    const girth = reportOf(pattern!).finished[0]!;
    expect(girth.origin.from).toMatchObject({ kind: 'formula', inputs: [{ value: 48 }, { value: expect.closeTo(10 / 18, 9) as number }] });
  });

  it('stand beside what was wanted in every section too: made less asked for, in stitches, rows and cm', () => {
    // By hand: 25 cm at 1.8 are 45 stitches, made 46; 10 cm less a cuff of 7 rows are 13 rows exactly; half of 46 is 23, made 24; the toe stops at 10, the whole decreases of 4 next to a quarter.
    const request = requestOf(SOCK, [measure('footGirth', 25), measure('footLength', 25), measure('legLength', 10)]);
    const worked = pieceOf(request);
    const { sections, finished } = sizeReport(worked.pattern, worked.fabrics[0]!, colour(worked.pattern, worked.fabrics[0]!, 0), 0, { swatches: [], measures: request.measures, numbers: worked.made.numbers[0]! });
    const of = (id: string) => sections.find((one) => one.section === id)!.wanted!;
    expect([of('leg').stitches, of('leg').rows, of('heel').stitches, of('toe').stitches]).toEqual([45, 13, 23, 10]);
    expect(of('cuff').rows).toBeCloseTo(7, 9);
    expect(of('heel').widthCm).toBeCloseTo(1 / 1.8, 9);
    expect(of('toe').widthCm).toBeCloseTo(0, 9);
    expect(of('leg').widthCm).toBeCloseTo(1 / 1.8, 9);
    expect(of('leg').heightCm).toBeCloseTo(0, 9);
    // Set in, the heel goes round both sides of its opening: 48 stitches where 46 are asked for.
    const opened = pieceOf({ ...request, settings: { ...SOCK, heel: { ...SOCK.heel, kind: 'afterthought' } } });
    const setIn = sizeReport(opened.pattern, opened.fabrics[0]!, colour(opened.pattern, opened.fabrics[0]!, 0), 0, { swatches: [], measures: request.measures, numbers: opened.made.numbers[0]! });
    expect(setIn.sections.find((one) => one.section === 'heel')).toMatchObject({ stitches: { first: 48 }, wanted: { stitches: 46, widthCm: expect.closeTo(2 / 1.8, 9) as number } });
    // Nothing asks for a calf or an ankle: top and opening are to be as wide as the foot.
    for (const name of ['footGirth', 'calf', 'opening'] as const) {
      const one = finished.find((each) => each.name === name)!;
      expect([one.wanted!.value, one.differenceCm]).toEqual([25, expect.closeTo(1 / 1.8, 9)]);
    }
  });

  it('stand beside what was wanted, with ease and the difference', () => {
    const measures = [{ ...measure('footGirth', 28), easePercent: -5, easeCm: 0 }, measure('footLength', 24)];
    const { finished } = reportOf({ ...pattern!, sizes: pattern!.sizes }, 0, { swatches: [], measures });
    const girth = finished.find((one) => one.name === 'footGirth')!;
    expect(girth.wanted!.value).toBeCloseTo(26.6, 9);
    expect(girth.differenceCm).toBeCloseTo(26.667 - 26.6, 2);
  });

  it('follow the gauge of the technique where a swatch has it', () => {
    const rib: Swatch = { ...SWATCH, id: 'rib', stitch: 'dc', technique: 'posts', stitches: 20, widthCm: 10, rows: 10, heightCm: 10 };
    const settings: PieceSettings = { ...TUBE, start: { edge: 'posts', heightCm: 6, yarn: 'A' }, end: NO_EDGE };
    const plain = pieceOf(requestOf(settings, [measure('girth', 24), measure('height', 20)]));
    const ribbed = pieceOf(requestOf(settings, [measure('girth', 24), measure('height', 20)], { swatches: [rib] }));
    // A row of posts is 1 cm high by the swatch, and 2 × 0.5 cm by the heights of the catalogue: one more row of single crochet stands below.
    expect(ribbed.reports[0]!.sections[0]).toMatchObject({ rows: 7, kind: 'round' });
    expect(plain.reports[0]!.sections[0]!.rows).toBe(7);
    expect(ribbed.reports[0]!.finished.find((one) => one.name === 'height')!.differenceCm!).toBeCloseTo(0, 1);
  });

  it('say what a motif costs in stitches and centimetres', () => {
    const { pattern: sock } = pieceOf(requestOf(SOCK, [measure('footGirth', 23), measure('footLength', 24), measure('legLength', 20)]));
    const placed: Pattern = { ...sock, motifs: [{ id: 'm', name: 'Fish', cells: ['BBBBBA'] }], placements: [{ id: 'p', section: 'leg', motif: 'm', row: { line: 'leg.rows', nth: 2 }, align: 'centre', offset: 0, across: 'fill', up: 1, gap: 2, mirror: false }] };
    // 42 stitches; whole repeats of 6 with 2 between fill 40 and 48 round the seam.
    const [cost] = reportOf(placed).motifs;
    expect(cost).toMatchObject({ motif: 'Fish', stitches: 42 });
    expect(cost!.down).toBeLessThan(42);
    expect(cost!.downCm).toBeCloseTo((cost!.down - 42) / 1.8, 6);
    expect(cost!.upCm).toBeCloseTo((cost!.up - 42) / 1.8, 6);
  });
});

describe('checks of gauge and sizes', () => {
  const check = (swatch: Swatch) => sizeChecks({ gauge: { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' } } as Pattern, [], [], [swatch]);

  it('say nothing of a washed swatch within its class', () => {
    expect(check({ ...SWATCH, stitches: 24, widthCm: 16, hookMm: 5 })).toEqual([]);
  });

  it.each<[string, Partial<Swatch>, string[]]>([
    ['tighter than the class', { stitches: 28, widthCm: 14 }, ['gaugeUnusual']],
    ['with a thin hook', { hookMm: 3, widthCm: 18 }, ['hookUnusual']],
    ['before washing', { washed: false, widthCm: 18 }, ['swatchUnwashed']],
    ['counted over little', { stitches: 8, widthCm: 5.5 }, ['swatchSmall']],
    ['of lace counted in single crochet', { weight: 0, stitches: 60, widthCm: 20, hookMm: 1.5 }, []],
    ['on the lower bound', { stitches: 24, widthCm: 20 }, []],
    ['just below it', { stitches: 23, widthCm: 20.5 }, ['gaugeUnusual']],
  ])('of a swatch %s: %j → %j', (_, more, expected) => {
    expect(rules(check({ ...SWATCH, ...more }))).toEqual(expected);
  });

  it('look at the pattern’s own gauge where only the class of its yarn is known', () => {
    const pattern = { gauge: { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' }, hookMm: 4, piece: { supplies: ['A', 'B'].map((letter) => ({ letter, weight: 3, ballGrams: null, ballMetres: null, price: null })) } } as unknown as Pattern;
    expect(rules(sizeChecks(pattern, [], [], []))).toEqual(['gaugeUnusual', 'hookUnusual']);
    expect(rules(sizeChecks(pattern, [], [], [{ ...SWATCH, stitches: 24, widthCm: 16, hookMm: 5 }]))).toEqual([]);
  });

  it('name the class that a gauge is in, and the source', () => {
    expect(describeFinding(check({ ...SWATCH, stitches: 28, widthCm: 14 })[0]!)).toMatch(/^20 sc in 10 cm is outside the published range of yarn weight 3 \(Light\): 12 to 17; it is the range of 2 Fine\. .*guidelines.*Craft Yarn Council/);
  });

  it('warn when a sock’s opening can’t pass the heel: measured, or 1.36 times the girth', () => {
    const measures = [measure('footGirth', 22.8), measure('footLength', 24.6), measure('legLength', 18)];
    const sock = (more: ReturnType<typeof measure>[] = []) => pieceOf(requestOf(SOCK, [...measures, ...more]));
    const worked = sock();
    const [narrow] = sizeChecks(worked.pattern, worked.reports, measures, []);
    // 42 stitches are 23.3 cm and stretch to 28; heel and ankle of a foot of 22.8 need 31 (ANSUR II: 1.36 ×).
    expect(narrow).toMatchObject({ rule: 'openingNarrow', degree: 'doubtful', found: 28, expected: 31 });
    expect(describeFinding(narrow!)).toMatch(/reaches 28 cm when stretched 1\.2 times \(a guess: stretch the swatch\); heel and ankle need 31 cm \(1\.36 times the girth of the foot, mean of ANSUR II/);
    const tried: Swatch = { ...SWATCH, stitches: 24, widthCm: 14, rows: 28, heightCm: 14, stretchedCm: 19.6 };
    expect(rules(sizeChecks(worked.pattern, worked.reports, measures, [tried]))).toEqual([]);
    const measured = [...measures, measure('heelDiagonal', 26)];
    expect(rules(sizeChecks(worked.pattern, worked.reports, measured, []))).toEqual([]);
  });

  it('ask a plain tube of nine tenths of the foot to open to 1.51 times its width (1.36 ÷ 0.90)', () => {
    const measures = [{ ...measure('footGirth', 40), easePercent: -10 }, measure('footLength', 43), measure('legLength', 18)];
    const worked = pieceOf(requestOf(SOCK, measures, { gauge: { stitches: 40, rows: 40, overCm: 10, stitch: 'sc' } }));
    const [narrow] = sizeChecks(worked.pattern, worked.reports, measures, []);
    const opening = worked.reports[0]!.finished.find(({ name }) => name === 'opening')!.cm;
    expect(opening).toBe(36);
    expect(Number(narrow!.expected) / opening).toBeCloseTo(1.51, 2);
  });

  it('ask nothing to pass a stocking that nobody wears', () => {
    const measures = [measure('footGirth', 22.8), measure('footLength', 24.6), measure('legLength', 18)];
    const worked = pieceOf(requestOf(SOCK, measures));
    expect(rules(sizeChecks({ ...worked.pattern, piece: { wearer: 'object' } }, worked.reports, measures, []))).toEqual([]);
  });

  it('note an ankle that comes out wider than it was measured', () => {
    const measures = [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 18), measure('ankle', 19), measure('heelDiagonal', 20)];
    const worked = pieceOf(requestOf(SOCK, measures));
    expect(sizeChecks(worked.pattern, worked.reports, measures, []).map(({ rule, params }) => [rule, params['measure']])).toEqual([['measureOff', 'girth of the ankle, finished']]);
  });

  it('note a finished measurement that is more than a stitch or row off', () => {
    const measures = [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 18), measure('heelDiagonal', 20)];
    const motif: PieceSettings = { ...SOCK, leg: { ...SOCK.leg, motif: { repeat: 14, edge: 0 } } };
    const worked = pieceOf(requestOf(motif, measures));
    const found = sizeChecks(worked.pattern, worked.reports, measures, []);
    // 39.6 stitches wanted, 42 made for whole repeats.
    expect(found.map(describeFinding)).toEqual(['Size 1: the girth of the foot, finished is 23.3 cm, 22 cm was wanted.']);
  });
});

describe('numbers set by hand', () => {
  it('that can’t be are said in words', () => {
    const { made } = pieceOf(requestOf(SOCK, [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 18)], { pins: { around: [31], 'no.such': [4] } }));
    expect(pinChecks(made).map(describeFinding)).toEqual(['stitches round the foot can\'t be 31; an even number was expected. The reckoned number is used.']);
  });
});

describe('sizes of socks from open data', () => {
  it('are one of ANSUR’s bands each, with every girth', () => {
    const women = sockSizes('women');
    expect(women).toHaveLength(6);
    expect(women[2]).toMatchObject({ name: '24–25 cm', footLengthCm: 24.5, footGirthCm: 22.7, heelDiagonalCm: 30.8, ankleCm: 21.5, calfCm: 37.1 });
    expect(women[2]!.shoes).toEqual({ eu: 39, usMen: null, usWomen: 8 });
    expect(sockSizes('men').at(-1)).toMatchObject({ footLengthCm: 30.5, calfCm: 41.6 });
  });

  it('of any foot length follow the ratios: girth 0.93 of it, heel diagonal 1.36 of the girth', () => {
    const foot = footFrom(25);
    expect(foot.footGirthCm.value).toBeCloseTo(23.25, 9);
    expect(foot.heelDiagonalCm.value).toBeCloseTo(31.62, 9);
    expect(foot.heelDiagonalCm.from).toMatchObject({ kind: 'formula', inputs: [{ key: 'footGirth' }, { value: 1.36, from: { kind: 'table' } }] });
  });

  it('of children go by age', () => {
    const children = sockSizes('children');
    expect(children.map(({ name }) => name)).toContain('3–4 years');
    expect(children.find(({ name }) => name === '3–4 years')).toMatchObject({ footLengthCm: 15.5, footGirthCm: 14.4 });
  });
});

describe('what a piece has that cautions hang on', () => {
  it('is found in its rows and recipes, and added by the designer', () => {
    const sock = pieceOf(requestOf({ ...SOCK, loop: { cm: 8, yarn: 'A' }, fringe: { every: 1, strands: 1, cm: 10, yarn: 'A' } }, [measure('footGirth', 22), measure('footLength', 24), measure('legLength', 18)]));
    expect([...featuresOf(sock.pattern, sock.fabrics[0]!)].sort()).toEqual(['fringe', 'loop', 'sock']);
    expect([...featuresOf({ ...sock.pattern, piece: { features: ['hung'] } }, sock.fabrics[0]!)]).toContain('hung');
    const panel = pieceOf(requestOf({ kind: 'panel', stitch: 'sc', yarn: 'A', motif: { repeat: 0, edge: 0 }, bobbles: { every: 5, at: 0.5 }, loop: null, fringe: null }, [measure('width', 20), measure('height', 15)]));
    expect([...featuresOf(panel.pattern, panel.fabrics[0]!)]).toEqual(['bobble']);
  });
});
