import { describe, expect, it } from 'vitest';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { settingsOf } from '../../../src/engine/2-construct/recipes/settingsOf.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { cautionsFor } from '../../../src/engine/craft/cautions.ts';
import { sizeReport } from '../../../src/engine/readings/sizes/sizeReport.ts';
import { allFeatures, workedFeatures } from '../../../src/editor/sizes/pieceFeatures.ts';
import { sectionOrigins } from '../../../src/editor/sizes/sectionOrigins.ts';
import { sockPattern } from './bookPiece.ts';

const pattern = sockPattern();
const fabric = work(construct(pattern, 0));
const colours = colour(pattern, fabric, 0);
const report = sizeReport(pattern, fabric, colours, 0, { swatches: [], measures: [] });

describe('where counted and measured numbers come from', () => {
  it('multiplies a section’s stitches and rows by the width and height of one', () => {
    for (const section of report.sections) {
      for (const { value, from } of [sectionOrigins(section).width, sectionOrigins(section).height]) {
        if (from.kind !== 'formula') throw new RangeError(`${from.kind} instead of formula`);
        expect(from.inputs.reduce((product, input) => product * input.value, 1)).toBeCloseTo(value, 9);
      }
    }
  });
});

describe('what a piece has', () => {
  it('knows a sock by its recipe or by its heel, and hears what else it has', () => {
    expect([...workedFeatures(pattern, settingsOf(pattern), report, fabric)]).toEqual(['sock']);
    const worked = workedFeatures(pattern, null, report, fabric);
    expect([...worked]).toEqual(['sock']);
    const cautions = cautionsFor('under3', allFeatures(worked, { features: ['button'] }));
    expect(cautions.map(({ id }) => id)).toContain('smallParts');
    expect(cautionsFor('under3', worked).map(({ id }) => id)).not.toContain('smallParts');
  });
});
