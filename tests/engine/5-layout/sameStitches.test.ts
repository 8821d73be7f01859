import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { sameStitches } from '../../../src/engine/5-layout/sameStitches.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import { sameDrawing } from '../../../src/editor/chart/sameDrawing.ts';

const GAUGE = { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' } as const;

function worked(third: string, name = 'PIECE'): Fabric {
  const text = `Yarn A: slate #4b5a6b\nYarn B: chalk #f2efe6\n\n${name}\nFoundation: with A, ch 13.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: ch 1, turn, sc in each st across. (12 sc)\n${third}\nRow 4: ch 1, turn, sc in each st across.`;
  return work(construct(patternFromText(text).pattern!, 0));
}
const drawn = (fabric: Fabric) => draw(fabric, layOut(fabric, 0, GAUGE), { symbols: 'us', numbers: true, grid: true });
const PLAIN = 'Row 3: ch 1, turn, sc in each st across. (12 sc)';

describe('fabrics that are laid out and drawn alike', () => {
  it.each([
    ['other yarns', 'Row 3: ch 1, turn, (A sc 3, B sc 3) 2 times. (12 sc)'],
    ['other words', 'Row 3: ch 1, turn, sc in next 12 sts.'],
    ['a count that is said wrongly', 'Row 3: ch 1, turn, sc in each st across. (13 sc)'],
  ])('are those that differ in %s', (_, third) => {
    const [one, other] = [worked(PLAIN), worked(third)];
    expect(sameStitches(one, other)).toBe(true);
    expect(sameDrawing(drawn(one), drawn(other))).toBe(true);
  });

  it.each([
    ['a stitch', 'Row 3: ch 1, turn, sc in next 5 sts, hdc in next st, sc in next 6 sts.'],
    ['a loop', 'Row 3: ch 1, turn, BLO sc in each st across.'],
    ['legs', 'Row 3: ch 1, turn, sc in next 5 sts, 3-dc cluster in next st, sc in next 6 sts.'],
    ['a base', 'Row 3: ch 1, turn, 2 sc in next st, sc in next 9 sts, sc2tog.'],
    ['a turning chain', 'Row 3: turn, sc in each st across.'],
    ['stitches left open', 'Row 3: ch 1, turn, sc in next 10 sts. Leave 2 unworked.'],
    ['its number', 'Row 5: ch 1, turn, sc in each st across. (12 sc)'],
  ])('are not those that differ in %s', (_, third) => {
    expect(sameStitches(worked(PLAIN), worked(third))).toBe(false);
  });

  it('are not those that differ in a row’s side, way or stitches left open, whose bands, arrows and outlines are drawn', () => {
    const fabric = worked(PLAIN);
    const last = fabric.rows.length - 1;
    const other = (change: Partial<Fabric['rows'][number]>): Fabric => ({ ...fabric, rows: fabric.rows.map((row, r) => (r === last ? { ...row, ...change } : row)) });
    expect(sameStitches(fabric, other({}))).toBe(true);
    for (const change of [{ side: 'RS' }, { direction: -1 }, { left: { ahead: 3, behind: 0 } }, { word: 'round' }] as const) expect(sameStitches(fabric, other(change))).toBe(false);
  });

  it('are not those of sections with other names, which a chart shows', () => {
    expect(sameStitches(worked(PLAIN), worked(PLAIN, 'OTHER'))).toBe(false);
  });
});
