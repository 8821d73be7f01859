import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stitchCode } from '../../../src/engine/craft/stitches.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { alikeRows } from '../../../src/engine/5-layout/alikeRows.ts';
import { layOut, type LayOutOptions } from '../../../src/engine/5-layout/layOutSection.ts';
import { sameStitches } from '../../../src/engine/5-layout/sameStitches.ts';
import { draw, type DrawOptions } from '../../../src/engine/6-drawing/draw.ts';
import { keptItems } from '../../../src/engine/6-drawing/keptItems.ts';
import { editedPieces, firstDifference, patternsAfter, pieceBefore } from '../editedPieces.ts';

const GAUGES = [{ stitches: 17, rows: 19.3, overCm: 10, stitch: 'sc' }, { stitches: 23, rows: 26, overCm: 10, stitch: 'sc' }] as const;
const laid: fc.Arbitrary<LayOutOptions> = fc.record({ hand: fc.constantFrom('right', 'right', 'left'), tubeMargin: fc.constantFrom(0, 4), rounds: fc.constant('tube') });
const drawn: fc.Arbitrary<DrawOptions> = fc.record({ symbols: fc.constantFrom('us', 'us', 'jis', 'none'), numbers: fc.boolean(), grid: fc.boolean() });

/** The fabric as one of which nothing is known. */
function anew(fabric: Fabric): Fabric {
  return { ...fabric };
}

/** The fabric with bobbles among its single crochets, as a motif may set them. */
function dressed(fabric: Fabric, isDressed: boolean): Fabric {
  if (!isDressed) return fabric;
  const kind = fabric.kind.map((code, i) => (i % 7 === 3 && code === stitchCode('sc') ? stitchCode('bobble') : code));
  return { ...fabric, kind };
}

describe('a drawing made from an earlier one', () => {
  it('is, after every edit, to the last bit the drawing of all of it', () => {
    let [made, kept, moved] = [0, 0, 0];
    fc.assert(
      fc.property(editedPieces, laid, drawn, fc.constantFrom(...GAUGES), fc.boolean(), (piece, how, as, gauge, isDressed) => {
        let fabric = work(construct(pieceBefore(piece), 0));
        let looks = dressed(fabric, isDressed);
        let layout = layOut(fabric, 0, gauge, how);
        let drawing = draw(looks, layout, as);
        for (const pattern of patternsAfter(piece)) {
          const last = { fabric, looks, layout, drawing };
          fabric = work(construct(pattern, 0), fabric);
          looks = dressed(fabric, isDressed);
          layout = layOut(fabric, 0, gauge, how, last.layout);
          drawing = draw(looks, layout, as, last.drawing);
          const runs = keptItems(looks, layout, { ...last, fabric: last.looks })?.runs ?? [];
          made += drawing.stitches.count;
          for (const { count, from, isMoved } of runs) if (from >= 0) [kept, moved] = [kept + count, moved + (isMoved ? count : 0)];
          expect(firstDifference(drawing, draw(anew(looks), layOut(anew(fabric), 0, gauge, how), as))).toBeNull();
          // What is known of rows that were kept is what their stitches say.
          expect(sameStitches(last.fabric, fabric)).toBe(sameStitches(anew(last.fabric), anew(fabric)));
          const [known, seen] = [alikeRows(last.fabric, fabric, 0), alikeRows(anew(last.fabric), anew(fabric), 0)];
          expect([known.start, known.end]).toEqual([seen.start, seen.end]);
        }
      }),
      { numRuns: 80, seed: 12 },
    );
    // Were nothing ever kept, or nothing moved, the law would say nothing.
    expect(kept).toBeGreaterThan(made / 3);
    expect(moved).toBeGreaterThan(made / 100);
  });
});
