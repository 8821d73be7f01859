import { describe, expect, it } from 'vitest';
import { CAUTIONS, CAUTION_GUIDANCE, cautionsFor, FEATURES, WEARERS } from '../../../src/engine/craft/cautions.ts';
import { ADULT_FEET, CHILD_FEET, FOOT_BANDS, FOOT_RATIOS } from '../../../src/engine/craft/feet.ts';
import { HOOKS, hookWords } from '../../../src/engine/craft/hooks.ts';
import { childShoeSize, CHILD_SHOES, footOfShoeSize, SHOE_SIZE_SOURCES, SHOE_SIZE_WARNING, shoeSize } from '../../../src/engine/craft/shoeSizes.ts';
import { YARN_PER_WIDTH, YARN_RATIO } from '../../../src/engine/craft/yarnPerStitch.ts';
import { inSpan, metresPer100gOfYardsPerPound, weightsOfGauge, YARN_WEIGHTS } from '../../../src/engine/craft/yarnWeights.ts';

describe('yarn weights', () => {
  // Craft Yarn Council table as reprinted in Crochet World, October 2018, p. 64.
  it.each([
    [1, 'Super Fine', 21, 32, 2.25, 3.5], [2, 'Fine', 16, 20, 3.5, 4.5], [3, 'Light', 12, 17, 4.5, 5.5], [4, 'Medium', 11, 14, 5.5, 6.5], [5, 'Bulky', 8, 11, 6.5, 9], [6, 'Super Bulky', 6, 9, 9, 16],
  ])('%i %s: %i to %i sc in 10 cm, hook %f to %f mm', (number, name, least, most, hookLeast, hookMost) => {
    expect(YARN_WEIGHTS[number]).toMatchObject({ number, name, gaugeStitch: 'sc', stitches: { least, most }, hookMm: { least: hookLeast, most: hookMost } });
  });

  it('overlap: 12 to 14 are Light and Medium, 11 is Medium and Bulky, and lace is counted in double crochet', () => {
    expect([12, 13, 14].map((gauge) => weightsOfGauge(gauge).map(({ number }) => number))).toEqual([[3, 4], [3, 4], [3, 4]]);
    expect(weightsOfGauge(11).map(({ number }) => number)).toEqual([4, 5]);
    expect(weightsOfGauge(40)).toEqual([]);
    expect(YARN_WEIGHTS[0]!.gaugeStitch).toBe('dc');
    expect(inSpan(17, YARN_WEIGHTS[7]!.hookMm)).toBe(true);
  });

  it.each([[2401, 484], [1900, 383], [1200, 242], [901, 182], [900, 181], [600, 121], [401, 81]])('%i yards of a pound are %i m of 100 g', (yards, metres) => {
    expect(metresPer100gOfYardsPerPound(yards)).toBeCloseTo(metres, -0.4);
  });
});

describe('hooks', () => {
  it('come in order of their millimetres, which are printed first', () => {
    expect(HOOKS.map(({ mm }) => mm)).toEqual([...HOOKS.map(({ mm }) => mm)].sort((a, b) => a - b));
    expect(hookWords(4.5)).toBe('4.5 mm (US 7)');
    expect(hookWords(7)).toBe('7 mm');
    expect(hookWords(4.3)).toBe('4.3 mm');
  });

  // Several published conversion charts agree (matifs.com, two shops’ charts, cdhp.org).
  it.each([[2.25, 'B-1', '13'], [3.5, 'E-4', '9'], [5, 'H-8', '6'], [6.5, 'K-10½', '3'], [9, 'M/N-13', '00']])('%f mm is US %s, UK %s', (mm, us, uk) => {
    expect(HOOKS.find((hook) => hook.mm === mm)).toEqual({ mm, us, uk });
  });
});

describe('feet', () => {
  it('have the ratios of ANSUR II in their means', () => {
    for (const who of ['women', 'men'] as const) {
      const { footLength, ballGirth, heelDiagonal, ankle, calf } = ADULT_FEET[who];
      expect(ballGirth.mean / footLength.mean).toBeCloseTo(FOOT_RATIOS.ballToLength, 2);
      expect(heelDiagonal.mean / ballGirth.mean).toBeCloseTo(FOOT_RATIOS.diagonalToBall, 2);
      expect(ankle.mean / ballGirth.mean).toBeCloseTo(FOOT_RATIOS.ankleToBall[who], 2);
      expect(calf.mean / ballGirth.mean).toBeCloseTo(FOOT_RATIOS.calfToBall[who], 1);
    }
  });

  it('grow in every girth with their length, in bands of 10 mm', () => {
    for (const bands of Object.values(FOOT_BANDS)) {
      for (const [i, band] of bands.entries()) {
        if (i === 0) continue;
        expect(band.from - bands[i - 1]!.from).toBe(10);
        expect(band.ballGirth).toBeGreaterThan(bands[i - 1]!.ballGirth);
        expect(band.heelDiagonal / band.ballGirth).toBeCloseTo(1.36, 1);
      }
    }
  });

  it.each([
    // ANSUR II, means by band of foot length (mm): ball, heel and ankle, ankle, calf.
    ['women', 220, 216, 290, 204, 351], ['women', 250, 233, 318, 220, 380], ['women', 270, 244, 338, 231, 403], ['men', 240, 238, 319, 215, 369], ['men', 270, 254, 347, 232, 396], ['men', 300, 272, 377, 247, 416],
  ] as const)('of %s from %i mm are %i round the ball, %i over heel and ankle, %i at the ankle, %i at the calf', (who, from, ballGirth, heelDiagonal, ankle, calf) => {
    expect(FOOT_BANDS[who].find((band) => band.from === from)).toEqual({ from, ballGirth, heelDiagonal, ankle, calf });
    // Girth about 0.93 of the length in the middle of the band (long feet are slimmer, r = 0.6: 0.887 at 27 cm), heel and ankle 1.36 of the girth within a standard deviation.
    expect(Math.abs(ballGirth / (from + 5) - FOOT_RATIOS.ballToLength)).toBeLessThan(0.045);
    expect(Math.abs(heelDiagonal / ballGirth - FOOT_RATIOS.diagonalToBall)).toBeLessThan(0.05);
  });

  it('of three-year-olds have the means that were measured: boys 15.6 and girls 15.3 cm (Cheng et al., n = 2829, in PMC9139892)', () => {
    const { leastCm, mostCm } = CHILD_FEET.find(({ age }) => age === '3–4 years')!;
    for (const mean of [15.6, 15.3]) expect(mean).toBeGreaterThan(leastCm);
    for (const mean of [15.6, 15.3]) expect(mean).toBeLessThan(mostCm);
  });

  it('of children follow one another by age', () => {
    for (const [i, foot] of CHILD_FEET.entries()) if (i > 0) expect(foot.leastCm).toBe(CHILD_FEET[i - 1]!.mostCm);
  });
});

describe('shoe sizes', () => {
  // Check values reckoned from the published formulas: foot mm → EU with 15 mm, US men, US women.
  it.each([[230, 36.75, 5.17, 6.17], [240, 38.25, 6.35, 7.35], [250, 39.75, 7.53, 8.53], [260, 41.25, 8.71, 9.71], [270, 42.75, 9.89, 10.89], [280, 44.25, 11.07, 12.07]])(
    'a foot of %i mm is EU %f, US men %f, US women %f', (mm, eu, men, women) => {
      expect(shoeSize('eu', mm)).toBeCloseTo(eu, 2);
      expect(shoeSize('usMen', mm)).toBeCloseTo(men, 2);
      expect(shoeSize('usWomen', mm)).toBeCloseTo(women, 2);
    },
  );

  it('come back to the foot they are of', () => {
    for (const system of ['eu', 'usMen', 'usWomen'] as const) expect(footOfShoeSize(system, shoeSize(system, 254))).toBeCloseTo(254, 9);
    // Brannock: men’s size 1 is 7⅔ in.
    expect(footOfShoeSize('usMen', 1)).toBeCloseTo((7 + 2 / 3) * 25.4, 6);
    expect(() => shoeSize('eu', 0)).toThrow(RangeError);
  });

  it('say that makers differ by a size either way', () => {
    expect(SHOE_SIZE_WARNING).toMatch(/about one size either way.*foot length first/);
    for (const source of Object.values(SHOE_SIZE_SOURCES)) expect(source).toMatch(/published|Brannock/);
  });

  it('in Paris points are 41¼ for a foot of 26 cm and its allowance of 1.5 (a published table: 27.5 cm are 41.25), ⅔ cm apart', () => {
    expect(shoeSize('eu', 260)).toBeCloseTo(41.25, 9);
    expect(footOfShoeSize('eu', 42) - footOfShoeSize('eu', 41)).toBeCloseTo(20 / 3, 9);
    // A barleycorn is a third of an inch.
    expect(footOfShoeSize('usMen', 9) - footOfShoeSize('usMen', 8)).toBeCloseTo(8.4667, 4);
  });

  it('of children stand in a table of 20 (mirrorinfo.online)', () => {
    expect(CHILD_SHOES).toHaveLength(20);
    expect([95, 128, 150, 225, 226].map(childShoeSize)).toEqual([16, 21, 24, 35, null]);
  });
});

describe('yarn in a stitch', () => {
  // windchilde.com: inches of yarn for an inch of one row; foundation chain 4.8 to 5.1.
  it.each([['hdc', 15.7], ['dc', 20.4], ['ch', 4.95]] as const)('%s takes as much more than a single crochet as was measured', (kind, inches) => {
    expect(YARN_RATIO[kind]).toBeCloseTo(inches / 10.6, 2);
    expect(YARN_PER_WIDTH).toBe(10.6);
  });
});

describe('cautions', () => {
  it('have a source each, and one line that says they are guidance', () => {
    for (const { source, says, features, wearers } of CAUTIONS) {
      expect(source).not.toBe('');
      expect(says).toMatch(/\.$/);
      expect(features.every((feature) => FEATURES.includes(feature))).toBe(true);
      expect(wearers.every((wearer) => WEARERS.includes(wearer))).toBe(true);
    }
    expect(CAUTION_GUIDANCE).toMatch(/guidance.*rules of the place/);
  });

  it('apply by what the piece has and who wears it', () => {
    const ids = (wearer: Parameters<typeof cautionsFor>[0], ...features: (typeof FEATURES)[number][]) => cautionsFor(wearer, new Set(features)).map(({ id }) => id);
    expect(ids('adult', 'sock')).toEqual(['slip', 'flameWorn', 'hands']);
    expect(ids('young', 'sock', 'loop')).toEqual(['slip', 'fixedLoops', 'flameWorn', 'hands']);
    expect(ids('under3', 'fringe', 'button')).toEqual(['nooses', 'smallParts', 'hands']);
    expect(ids('older', 'cord')).toEqual(['cordsOlder', 'waistCords', 'hands']);
    expect(ids('object', 'sock', 'hung')).toEqual(['flameHung', 'hands']);
    expect(ids(null)).toEqual([]);
  });

  it('give the figures of the cited standards', () => {
    const says = (id: string) => CAUTIONS.find((one) => one.id === id)!.says;
    // EN 71-1 5.4: 220 and 380 mm; small parts cylinder 31.7 by 25.4 to 57.1 mm; EN 14682: 75 and 140 mm.
    expect(says('nooses')).toMatch(/220 mm.*380 mm.*1\.5 mm/);
    expect(says('smallParts')).toMatch(/31\.7 mm.*25\.4 to 57\.1 mm/);
    expect(says('waistCords')).toMatch(/140 mm/);
    expect(says('fixedLoops')).toMatch(/75 mm/);
  });
});
