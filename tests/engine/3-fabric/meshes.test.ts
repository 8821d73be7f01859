import { describe, expect, it } from 'vitest';
import { made, rules, workText } from '../workText.ts';

const ring = 'Rnd 1: ch 4, join to form a ring, ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join.\n';

describe('meshes of filet', () => {
  // Common practice: an open mesh is ch 2, skip 2, dc; a solid one 3 dc; each three stitches wide.
  const begun = 'Foundation: ch 30.\nRow 1: 10 open meshes. (10 meshes)\n';

  it('stand on three places each, open ones on chains as on stitches', () => {
    const { rows, findings } = workText(`${begun}Row 2: turn, 3 open meshes, 4 solid meshes, 3 open meshes. (10 meshes)\nRow 3: turn, 10 solid meshes. (30 dc)`);
    expect(findings).toEqual([]);
    expect(rows.map((row) => row.made)).toEqual([30, 10, 18, 30]);
    expect(rows.map((row) => row.used)).toEqual([0, 30, 30, 30]);
  });

  it.each([
    ['too many run past the row below', 'Row 2: turn, 11 open meshes.', ['wrong notEnoughPlaces']],
    ['too few leave stitches over', 'Row 2: turn, 8 open meshes, 1 solid mesh.', ['doubtful leftUnsaid']],
    ['stitches that are no whole meshes leave some over', 'Row 2: turn, 5 open meshes, 5 dc, 3 open meshes.', ['doubtful leftUnsaid']],
    ['a count of meshes that is wrong', 'Row 2: turn, 10 solid meshes. (9 meshes)', ['wrong statedCount']],
  ])('%s', (_, row, found) => {
    expect(rules(workText(begun + row).findings)).toEqual(found);
  });

  it('begin with a turning chain that stands for a stitch', () => {
    expect(rules(workText('T\nTerms: US\n\nPIECE\nFoundation: ch 32.\nRow 1: dc in 4th ch from hook, dc in each ch across. (30 dc)\nRow 2: ch 3 (counts as dc), turn, dc in next 2 sts, 9 open meshes. (9 meshes)').findings)).toEqual([]);
  });
});

describe('stitches beside picots', () => {
  const begun = 'Foundation: ch 6.\nRow 1: sc in 2nd ch from hook, (picot, sc in next ch) 4 times.\n';

  it('take no place of their own', () => {
    const { rows, findings } = workText(`${begun}Row 2: ch 1, turn, sc in next st, (sc before picot, sc after picot, sc in next st) 4 times. (13 sc)`);
    expect(findings).toEqual([]);
    expect(rows.at(-1)).toMatchObject({ made: 13, used: 5 });
  });

  it.each([
    ['a picot too many', 'Row 2: ch 1, turn, sc in next st, (sc before picot, sc after picot, sc in next st) 5 times.', ['wrong notEnoughPlaces']],
    ['picots left that are miscounted', 'Row 2: ch 1, turn, sc in next st, (sc before picot, sc after picot, sc in next st) 2 times, leave rem 3 picots unworked.', ['wrong leftCount']],
    ['picots left that are counted right', 'Row 2: ch 1, turn, sc in next st, skip 2 picots, sc in next st, leave rem 2 picots unworked.', []],
  ])('find %s', (_, row, found) => {
    expect(rules(workText(begun + row).findings)).toEqual(found);
  });
});

describe('runs to corners', () => {
  // A granny square, common practice: each round has as many more stitches on each side.
  it('stop at the chain space, and go round corner by corner', () => {
    expect(made(`${ring}Rnd 2: ch 1, sc in each st around, working (2 sc, ch 2, 2 sc) in each corner ch-2 sp, join.`)).toEqual([12, 28]);
  });

  it('say the same with a star', () => {
    expect(made(`${ring}Rnd 2: ch 1, *sc in each st to corner, (2 sc, ch 2, 2 sc) in corner ch-2 sp; rep from * around, join.`)).toEqual([12, 28]);
  });
});
