import { describe, expect, it } from 'vitest';
import { shortRowHeel } from '../../../../src/engine/2-construct/recipes/shortRowHeel.ts';
import { heelChecks, sidesLeft } from '../../../../src/engine/readings/checks/heelChecks.ts';
import { workText } from '../../workText.ts';

const LEG = 'LEG\nFoundation: ch 41.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, sc in each st across.\nFasten off.\nSeam the side edges.\n';

function heel(text: string) {
  const { fabric } = workText(`Heel\n\n${LEG}\n${text}`);
  return { fabric, found: heelChecks(fabric) };
}

const GOOD = shortRowHeel('Heel', { stitches: [20], leftFirst: [5], leftSecond: [5], yarn: null });

describe('checks of a heel turned in short rows', () => {
  it('says nothing of a heel that closes, centred on the seam', () => {
    expect(heel(GOOD).found).toEqual([]);
  });

  it('finds a heel that stops before it is closed, with what is open on either side', () => {
    const { found } = heel(GOOD.replace('Rows 4-13', 'Rows 4-10'));
    expect(found.map(({ degree, rule, found: open, params }) => [degree, rule, open, params])).toEqual([['wrong', 'heelOpen', 3, { ahead: 1, behind: 2 }]]);
  });

  it.each([[5, 5, []], [6, 5, []], [5, 6, []], [7, 5, ['openSidesUnequal']], [4, 7, ['openSidesUnequal']]])('leaving %i and %i: %j', (first, second, rules) => {
    const { found, fabric } = heel(shortRowHeel('Heel', { stitches: [20], leftFirst: [first], leftSecond: [second], yarn: null }));
    expect(found.filter((one) => one.rule === 'openSidesUnequal').map((one) => one.rule)).toEqual(rules);
    const rows = fabric.rows.filter((row) => row.section === 1 && row.word === 'row');
    expect(sidesLeft(fabric, rows)).toMatchObject({ first, second });
  });

  it.each([[10, []], [9, ['heelOffCentre']], [12, ['heelOffCentre']]])('joined in stitch %i before the seam of a heel of 20: %j', (nth, rules) => {
    const text = GOOD.replace('10th st', `${nth}th st`).replace('sc in next 9 sts, skip the seam, sc in next 10 sts', `sc in next ${nth - 1} sts, skip the seam, sc in next ${20 - nth} sts`);
    expect(heel(text).found.map((one) => one.rule)).toEqual(rules);
  });

  it('lets a heel of odd count lie half a stitch off', () => {
    expect(heel(shortRowHeel('Heel', { stitches: [21], leftFirst: [5], leftSecond: [5], yarn: null })).found).toEqual([]);
  });

  it('knows a heel by what its rows do, whatever it is called', () => {
    expect(heel(GOOD.replace('HEEL', 'POCKET').replace('Rows 4-13', 'Rows 4-12')).found.map((one) => one.rule)).toEqual(['heelOpen']);
  });

  it('counts a side that lies on the leg, where the heel is begun on it', () => {
    // Turned short rows over 20 stitches of a leg, 5 left on either side (common practice): row 1 leaves stitches of the leg.
    const begun = 'Heel on a leg\n\nLEG\nFoundation: ch 20, join to form a ring.\nRnd 1: ch 1, sc in each ch around, join.\n\nHEEL\nRow 1: ch 1, turn, sc in next 15 sts. Leave the rest unworked.\nRow 2: ch 1, turn, sc in next 10 sts. Leave 5 unworked.\nRows 3-12: ch 1, turn, sc in each st across, sc in next unworked st.\n';
    const { fabric } = workText(begun);
    expect(sidesLeft(fabric, fabric.rows.filter(({ section, word }) => section === 1 && word === 'row'))).toMatchObject({ first: 5, second: 5 });
    expect(heelChecks(fabric).map(({ rule }) => rule)).toEqual([]);
  });
});
