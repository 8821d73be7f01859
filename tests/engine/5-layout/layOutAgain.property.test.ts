import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Gauge } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { layOut, stoodRows, type LayOutOptions } from '../../../src/engine/5-layout/layOutSection.ts';
import { editedPieces, firstDifference, patternsAfter, pieceBefore } from '../editedPieces.ts';

/** Sizes that no binary fraction says. */
const GAUGES: readonly Gauge[] = [{ stitches: 17, rows: 19.3, overCm: 10, stitch: 'sc' }, { stitches: 23, rows: 26, overCm: 10, stitch: 'sc' }];
const options: fc.Arbitrary<LayOutOptions> = fc.record({ hand: fc.constantFrom('right', 'right', 'left'), tubeMargin: fc.constantFrom(0, 4), leanStitches: fc.constantFrom(0, 0, 0.25), spiral: fc.constantFrom(false, false, false, true), rounds: fc.constant('tube') });

describe('a layout made from an earlier one', () => {
  it('is, after every edit, to the last bit the layout of placing all of it', () => {
    let [made, kept] = [0, 0];
    fc.assert(
      fc.property(editedPieces, options, fc.constantFrom(...GAUGES), (piece, how, gauge) => {
        let fabric = work(construct(pieceBefore(piece), 0));
        let layout = layOut(fabric, 0, gauge, how);
        for (const pattern of patternsAfter(piece)) {
          fabric = work(construct(pattern, 0), fabric);
          const last = layout;
          layout = layOut(fabric, 0, gauge, how, last);
          expect(firstDifference(layout, layOut({ ...fabric }, 0, gauge, how))).toBeNull();
          const places = new Set(stoodRows(last)?.stood.map((row) => row.places));
          made += stoodRows(layout)?.stood.length ?? 0;
          kept += stoodRows(layout)?.stood.filter((row) => places.has(row.places)).length ?? 0;
        }
      }),
      { numRuns: 80, seed: 11 },
    );
    // Were nothing ever kept, the law would say nothing.
    expect(kept).toBeGreaterThan(made / 3);
  });
});
