import { describe, expect, it } from 'vitest';
import { FLAG } from '../../../src/engine/3-fabric/fabric.ts';
import { made, rules, workText } from '../workText.ts';

const FLAT = 'Foundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\n';

describe('rows on the edge', () => {
  it('works a flat piece to and fro, right side first', () => {
    const { rows, findings } = workText(`${FLAT}Rows 2-4: ch 1, turn, sc in each st across. (10 sc)`);
    expect(rows.map((row) => [row.side, row.direction, row.made, row.used])).toEqual([
      ['WS', 1, 11, 0], ['RS', -1, 10, 10], ['WS', 1, 10, 10], ['RS', -1, 10, 10], ['WS', 1, 10, 10],
    ]);
    expect(findings).toEqual([]);
  });

  it('takes the turn for granted where a flat row does not say it', () => {
    expect(made(`${FLAT}Row 2: ch 1, sc in each st across.`)).toEqual([11, 10, 10]);
  });

  it('skips: nothing can be worked into a skipped place later', () => {
    expect(made(`${FLAT}Row 2: ch 1, turn, (sc in next st, sk 1 st) 5 times.\nRow 3: ch 1, turn, sc in each st across.`)).toEqual([11, 10, 5, 5]);
  });

  it('leaves stitches unworked on the edge, and finds them again', () => {
    const { rows, findings } = workText(`${FLAT}Row 2: ch 1, turn, sc in next 6 sts. Leave 4 unworked. (6 sc)\nRow 3: ch 1, turn, sc in each st across. (6 sc)\nRow 4: ch 1, turn, sc in each st across, sc in next 4 unworked sts. (10 sc)`);
    expect(rows.slice(2).map((row) => [row.made, row.left])).toEqual([[6, { ahead: 4, behind: 0 }], [6, { ahead: 0, behind: 4 }], [10, { ahead: 0, behind: 0 }]]);
    expect(findings).toEqual([]);
  });

  it('draws open stitches beyond the row below together', () => {
    const { rows, findings } = workText(`${FLAT}Row 2: ch 1, turn, sc in next 6 sts. Leave 4 unworked.\nRow 3: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc in each st across, sc2tog over next 2 unworked sts, sc in next 2 unworked sts. (9 sc)`);
    expect(rows.at(-1)).toMatchObject({ made: 9, used: 10, left: { ahead: 0, behind: 0 } });
    expect(findings).toEqual([]);
  });

  it('begins a round in a magic ring with a chain', () => {
    expect(made('Rnd 1: magic ring, ch 3 (does not count), 12 dc in ring, join.\nRnd 2: ch 3 (does not count), 2 dc in each st around, join.')).toEqual([12, 24]);
  });

  it('draws together and works twice into one', () => {
    expect(made(`${FLAT}Row 2: ch 1, turn, sc2tog, sc in next 6 sts, sc2tog.\nRow 3: ch 1, turn, 2 sc in next st, sc in next 6 sts, 2 sc in last st.`)).toEqual([11, 10, 8, 10]);
  });

  it('hangs chains between stitches into a ring as spaces; those before the first are its height', () => {
    const { rows, findings, fabric } = workText(`Rnd 1: ch 4, join to form a ring, ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc)
Rnd 2: ch 3, dc in next 2 sts, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 sts; rep from * 2 times more, (2 dc, ch 2, 2 dc) in next ch-2 sp, join with sl st in top of ch-3. (28 dc)`);
    expect(rows.map((row) => row.made)).toEqual([12, 28]);
    expect([...fabric.flags.slice(0, rows[0]!.end)].filter((flags) => flags & FLAG.space)).toHaveLength(8);
    expect(findings).toEqual([]);
  });

  it('works groups into one place, and into chain spaces', () => {
    const { rows, fabric } = workText(`${FLAT}Row 2: ch 1, turn, sc in next st, *ch 2, sk 2 sts, sc in next st; rep from * to end.\nRow 3: ch 1, turn, sc in next st, *(sc, ch 1, sc) in next ch-2 sp, sc in next sc; rep from * to end.`);
    expect(rows.slice(2).map((row) => row.made)).toEqual([4, 10]);
    const inSpace = [...fabric.flags].filter((flags) => flags & FLAG.inSpace);
    expect(inSpace).toHaveLength(6);
  });

  it('counts a turning chain of three before double crochet and takes the base under it', () => {
    const { rows, fabric } = workText('Foundation: ch 12.\nRow 1: dc in 4th ch from hook and in each ch across. (10 dc)\nRow 2: ch 3, turn, dc in next 9 sts. (10 dc)');
    expect(rows.map((row) => row.made)).toEqual([12, 10, 10]);
    const top = rows[2]!.first + 2;
    expect(fabric.flags[top]! & FLAG.turning).toBeTruthy();
    expect(fabric.baseStart[top + 1]! - fabric.baseStart[top]!).toBe(1);
  });

  it('works round both sides of a foundation chain', () => {
    // Rib slipper vamp: ch 11, 9 + 3 + 9 = 21 (we-s04, Handbook of Wool Knitting and Crochet, 1918).
    expect(made('Foundation: ch 11.\nRow 1: sc in 2nd ch from hook, sc in next 8 chs, 3 sc in last ch, working along other side of the chain, sc in next 9 chs.\nRow 2: ch 1, turn, sc in next 10 sts, 3 sc in next st, sc in next 10 sts.')).toEqual([11, 21, 23]);
    const { fabric } = workText('Foundation: ch 11.\nRow 1: sc in 2nd ch from hook, sc in next 8 chs, 3 sc in last ch, working along other side of the chain, sc in next 9 chs.');
    expect([...fabric.flags].filter((flags) => flags & FLAG.otherSide)).toHaveLength(9);
  });

  it('works rounds in a ring, joined or in a spiral', () => {
    expect(made('Rnd 1: magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 3: *sc in next st, 2 sc in next st; rep from * around.')).toEqual([6, 12, 18]);
    expect(made('Foundation: ch 4, join to form a ring.\nRnd 1: ch 3 (counts as dc), 11 dc in ring, join with sl st in first st.\nRnd 2: ch 3 (counts as dc), dc in same st, 2 dc in each st around, join.')).toEqual([4, 12, 24]);
    expect(workText('Rnd 1: ch 4, join to form a ring, ch 3, 11 dc in ring, join.').rows.map((row) => [row.side, row.made])).toEqual([['RS', 12]]);
  });

  it('closes a foundation chain to a tube', () => {
    const { rows, findings } = workText('Foundation: ch 20, join to form a ring.\nRnds 1-3: sc in each st around. (20 sc)');
    expect(rows.map((row) => [row.made, row.ring])).toEqual([[20, true], [20, true], [20, true], [20, true]]);
    expect(findings).toEqual([]);
  });

  it('sews a seam and joins before and after it, facing the seam and away from it', () => {
    const leg = `${FLAT}Row 2: ch 1, turn, sc in each st across.\nFasten off.\nSeam the side edges.\n`;
    const before = workText(`S\n\nLEG\n${leg}\nHEEL\nJoin with a sl st in the 3rd st before the seam.\nRow 1 (RS): ch 1, sc in same st, sc in next 2 sts, skip the seam, sc in next 3 sts. Leave the rest unworked. (6 sc)`);
    expect(before.findings).toEqual([]);
    const heel = before.rows.at(-1)!;
    const bases = [...before.fabric.bases].slice(before.fabric.baseStart[heel.first]!, before.fabric.baseStart[heel.end]!);
    const seam = before.fabric.seams[0]!;
    expect(bases[2]).toBe(seam.before);
    expect(bases[3]).toBe(seam.after);
    const after = workText(`S\n\nLEG\n${leg}\nHEEL\nJoin with a sl st in the 3rd st after the seam.\nRow 1 (RS): ch 1, sc in same st, sc in next 2 sts. Leave the rest unworked.`);
    const row = after.rows.at(-1)!;
    const base = after.fabric.bases[after.fabric.baseStart[row.first + 1]!]!;
    expect(base - after.fabric.seams[0]!.after).toBe(-2);
  });
});

describe('what cannot be worked', () => {
  it.each([
    ['Row 2: ch 1, turn, sc in next 12 sts.', ['wrong notEnoughPlaces']],
    ['Row 2: ch 1, turn, sc in each st across. (11 sc)', ['wrong statedCount']],
    ['Row 2: ch 1, turn, *sc in next 2 sts, sk 1 st; rep from * across.', ['wrong repeatUneven', 'doubtful leftUnsaid']],
    ['Row 2: ch 1, turn, sc in next 6 sts. Leave 3 unworked.', ['wrong leftCount']],
    ['Row 2: ch 1, turn, sc in each st across, sc in next unworked st.', ['wrong notEnoughPlaces']],
    ['Row 2: ch 1, turn, sc in next 8 sts.', ['doubtful leftUnsaid']],
    ['Row 2: ch 1, turn, sc in next 5 sts, 2 sc in last st.', ['wrong lastNotNext']],
    ['Row 2: ch 1, turn, 6 sc in ring.', ['wrong noRing']],
    ['Row 2: rep row 7.', ['wrong noSuchRow']],
    ['Join B with a sl st in the 2nd st before the seam.', ['wrong noSeam']],
  ])('finds what is wrong in “%s”', (row, expected) => {
    expect(rules(workText(FLAT + row).findings)).toEqual(expected);
  });

  it('refuses monstrous numbers and goes on', () => {
    const { findings, rows } = workText(`${FLAT}Row 2: ch 1, turn, sc in next 99999999 sts.\nRow 3: ch 1, turn, sc in each st across.`);
    expect(rules(findings)).toContain('wrong tooManyStitches');
    expect(rows).toHaveLength(4);
  });
});
