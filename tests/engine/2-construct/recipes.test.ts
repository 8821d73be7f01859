import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { startPattern, type Construction, type StartSettings } from '../../../src/engine/2-construct/recipes/startPattern.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { heelChecks } from '../../../src/engine/readings/checks/heelChecks.ts';

const SETTINGS: StartSettings = {
  title: 'New piece', hookMm: 4, gauge: { stitches: 18, rows: 20, overCm: 10, stitch: 'sc' },
  sizes: [{ name: 'S', girthCm: 25, heightCm: 24, footCm: 23 }, { name: 'M', girthCm: 29, heightCm: 26, footCm: 25.5 }],
  yarns: [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' }],
};
const CONSTRUCTIONS: Construction[] = ['bootSock', 'legWarmer', 'flatPanel', 'disc', 'empty'];

describe('starting a pattern', () => {
  it.each(CONSTRUCTIONS)('%s works without findings, for any sensible gauge and measurements', (construction) => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 32, noNaN: true }), fc.double({ min: 10, max: 36, noNaN: true }), fc.double({ min: 16, max: 42, noNaN: true }), fc.double({ min: 10, max: 45, noNaN: true }), fc.double({ min: 14, max: 31, noNaN: true }), (stitches, rows, girthCm, heightCm, footCm) => {
        const settings = { ...SETTINGS, gauge: { ...SETTINGS.gauge, stitches, rows }, sizes: [{ name: 'S', girthCm, heightCm, footCm }, { name: 'M', girthCm: girthCm + 3, heightCm: heightCm + 2, footCm: footCm + 2 }] };
        const pattern = startPattern(construction, settings);
        pattern.sizes.forEach((_, size) => {
          const fabric = work(construct(pattern, size));
          expect([...fabric.findings, ...heelChecks(fabric)]).toEqual([]);
          expect(fabric.count).toBeGreaterThan(20);
        });
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  it('sizes a boot sock by the gauge, to an even count', () => {
    const pattern = startPattern('bootSock', SETTINGS);
    const around = pattern.sizes.map((_, size) => work(construct(pattern, size)).rows.find((row) => row.word === 'row')!.made);
    // 25 cm and 29 cm at 1.8 stitches a cm are 45 and 52.2.
    expect(around).toEqual([46, 52]);
  });

  it('leaves about half of a crocheted heel in the middle', () => {
    // Published crochet heels: 20 narrowed to 10 (a tutorial), 15 to 7 (a maker's page).
    for (const girthCm of [16, 20, 22.2, 26, 30]) {
      const pattern = startPattern('bootSock', { ...SETTINGS, sizes: [{ name: '', girthCm, heightCm: 24, footCm: 24 }] });
      const fabric = work(construct(pattern, 0));
      const heel = fabric.rows.filter((row) => fabric.sections[row.section]!.name === 'HEEL' && row.word === 'row').map((row) => row.made);
      expect(Math.abs(Math.min(...heel) - heel[0]! / 2)).toBeLessThanOrEqual(1);
      if (heel[0] === 20) expect(Math.min(...heel)).toBe(10);
    }
  });

  it('keeps the measurements that it was made to', () => {
    expect(startPattern('bootSock', SETTINGS).piece!.measures!.map(({ name, cm }) => [name, cm])).toEqual([['footGirth', [25, 29]], ['legLength', [24, 26]], ['footLength', [23, 25.5]]]);
    expect(startPattern('empty', SETTINGS).piece).toBeUndefined();
  });

  it('refuses what the form must not let through', () => {
    expect(() => startPattern('flatPanel', { ...SETTINGS, sizes: [] })).toThrow(RangeError);
    expect(() => startPattern('flatPanel', { ...SETTINGS, gauge: { ...SETTINGS.gauge, rows: 0 } })).toThrow(RangeError);
  });
});
