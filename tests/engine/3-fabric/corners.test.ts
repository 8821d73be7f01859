import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeFinding } from '../../../src/engine/readings/checks/prose.ts';
import { made, rules, workText } from '../workText.ts';

/** A square of double crochet begun in a ring, its corners chain spaces (common practice). */
const SQUARE = 'Rnd 1: magic ring, (3 dc in ring, ch 2) 4 times. (12 dc)\n';
/** A granny square: clusters in the spaces, two clusters with a space between at each corner (common practice; counted by hand: 12, 24, 36). */
const GRANNY = `${SQUARE}Rnd 2: *(3 dc, ch 2, 3 dc) in next corner sp, ch 1; rep from * around. (24 dc)
Rnd 3: *(3 dc, ch 2, 3 dc) in next corner, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around. (36 dc)\n`;
/** A border of 3 sc at each corner of an oblong of 4 by 6 (counted by hand). */
const BORDER = 'Foundation: ch 20, join to form a ring.\nRnd 1: ch 1, *sc in next 3 chs, 3 sc in next ch, sc in next 5 chs, 3 sc in next ch; rep from * around. (28 sc)\n';

describe('corners known from the round below', () => {
  it.each([
    ['chain spaces of a first round', SQUARE, 'Rnd 2: sc in each st around, 3 sc in each corner.', 24],
    ['chain spaces between two clusters in one place, not those between clusters', GRANNY, 'Rnd 4: sc in each st around, (sc, ch 2, sc) in each corner.', 44],
    ['the same, the corners named first', GRANNY, 'Rnd 4: (sc, ch 2, sc) in each corner, sc in each st around.', 44],
    ['the same, told with a star', GRANNY, 'Rnd 4: *sc in each st to next corner, (sc, ch 2, sc) in corner ch-2 sp; rep from * around, sc in each st to end.', 44],
    ['middle stitches of three in one place', BORDER, 'Rnd 2: sc in each st around, 3 sc in each corner st.', 36],
    ['the same, as the center st of each corner', BORDER, 'Rnd 2: sc in each st around, working 3 sc in center st of each corner.', 36],
    ['the same, without a word for the place', BORDER, 'Rnd 2: sc in each st around, 3 sc in each corner.', 36],
    ['the same, so many times', BORDER, 'Rnd 2: (sc in each st to corner, 3 sc in corner st) 4 times, sc in each st around.', 36],
    ['middle stitches that plain rounds were worked on', `${BORDER}Rnds 2-3: sc in each st around.\n`, 'Rnd 4: sc in each st around, 3 sc in each corner.', 36],
    ['the chain space in the middle stitch', BORDER, 'Rnd 2: sc in each st around, (sc, ch 2, sc) in each corner.', 32],
  ])('are %s', (_, before, round, count) => {
    const { rows, findings } = workText(before + round);
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)!.made).toBe(count);
  });

  it('leave no chain at the end of the round below: it lies under the run after the last corner', () => {
    const { rows } = workText(`${GRANNY}Rnd 4: sc in each st around, 3 sc in each corner.\nRnd 5: sc in each st around.`);
    // 36 stitches, four corners of two chains, eight single chains between clusters: 36 + 8 + 8 places; then 36 + 4 × 3 stitches.
    expect(rows.slice(-2).map(({ used, made: own }) => [used, own])).toEqual([[52, 48], [48, 48]]);
  });

  it('grow the round by as much each time, however often it is worked', () => {
    // 28 and 8 more a round: 36, 44, 52 (counted by hand).
    expect(made(`${BORDER}Rnds 2-4: sc in each st around, 3 sc in each corner.`).slice(1)).toEqual([28, 36, 44, 52]);
  });

  it('are known in flat rows too, before and after the turn: a mitred square grows by 2 a row', () => {
    const square = `Foundation: ch 10.\nRow 1: sc in 2nd ch from hook, sc in next 3 chs, 3 sc in next ch, sc in each ch across. (11 sc)
Rows 2-5: ch 1, turn, sc in each st to corner, 3 sc in corner st, sc in each st across. (2 more sts in each row, ending with 19 sc)`;
    const { rows, findings, fabric } = workText(square);
    expect(rules(findings)).toEqual([]);
    expect(rows.map((row) => row.made)).toEqual([10, 11, 13, 15, 17, 19]);
    // The three of every row stand on the middle one of the row below.
    const last = fabric.rows.at(-1)!;
    const middle = last.first + Math.floor((last.end - last.first) / 2) + (last.end - last.first - last.made) / 2;
    const base = (stitch: number) => fabric.bases[fabric.baseStart[stitch]!]!;
    expect([middle - 1, middle + 1].map(base)).toEqual([base(middle), base(middle)]);
  });

  it.each([
    ['nothing could be one', 'Rnd 1: magic ring, 12 sc in ring.\nRnd 2: sc in each st around.', '3 sc in each corner', 'it has no chain space and no group of stitches in one place that could be one'],
    ['groups have no middle', 'Rnd 1: magic ring, 12 sc in ring.\nRnd 2: 2 sc in each st around.', '3 sc in each corner', 'its groups are of an even number of stitches, so that none is in the middle'],
    ['the groups are of several sizes', `${BORDER}Rnd 2: *sc in next 6 sts, 3 sc in next st, 5 sc in next st, sc in next 6 sts; rep from * around.`, '3 sc in each corner', '4 places could be, and they are not all alike'],
    ['there are more than a figure has', 'Foundation: ch 26, join to form a ring.\nRnd 1: *3 sc in next ch, sc in next ch; rep from * around.', '3 sc in each corner st', '13 places could be, more than the corners of a figure'],
    ['stitches are asked for where they are spaces', `${SQUARE}Rnd 2: *(3 dc, ch 2, 3 dc) in next corner sp; rep from * around. (24 dc)`, '3 sc in each corner st', 'the words ask for stitches, and its corners are chain spaces'],
    ['spaces are asked for where they are stitches', BORDER, '3 sc in each corner ch-2 sp', 'the words ask for chain spaces, and its groups have none'],
  ])('are a question, and nothing is worked in them, where %s', (_, before, corner, why) => {
    const last = Number(before.match(/(?<=Rnd )\d+/g)!.at(-1));
    const { rows, findings } = workText(`${before.trim()}\nRnd ${last + 1}: sc in each st around, ${corner}. (99 sc)\nRnd ${last + 2}: sc in next 300 sts.`);
    const asked = findings.find(({ rule }) => rule === 'cornersUnsure');
    expect(asked && describeFinding(asked)).toContain(why);
    // What hangs on the question is no fault.
    expect(rules(findings)).toEqual(['doubtful cornersUnsure', 'doubtful statedCount', 'doubtful notEnoughPlaces']);
    expect(rows.at(-2)!.made).toBe(rows.at(-3)!.made);
  });

  it('never cost a stitch: a round with k in each of c corners makes all others and k a corner', () => {
    const side = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(fc.array(side, { minLength: 2, maxLength: 8 }), fc.constantFrom(3, 5), fc.integer({ min: 1, max: 4 }), fc.constantFrom('corner', 'corner st'), (sides, grown, each, word) => {
        const around = sides.reduce((sum, one) => sum + one, 0) + sides.length;
        const first = sides.map((one) => `sc in next ${one} chs, ${grown} sc in next ch`).join(', ');
        const { rows, findings } = workText(`Foundation: ch ${around}, join to form a ring.\nRnd 1: ${first}.\nRnd 2: sc in each st around, ${each} sc in each ${word}.`);
        expect(rules(findings)).toEqual([]);
        expect(rows.map((row) => row.made).slice(1)).toEqual([around + sides.length * (grown - 1), around + sides.length * (grown - 1 + each - 1)]);
      }),
      { numRuns: 60, seed: 31 },
    );
  });
});
