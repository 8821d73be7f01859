import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fabric } from '../../../src/engine/3-fabric/fabric.ts';
import { placeOf } from '../../../src/engine/3-fabric/workEvenly.ts';
import { describeFinding } from '../../../src/engine/readings/checks/prose.ts';
import { rules, workText } from '../workText.ts';

const panel = (rows: number) => `Foundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)\n${rows > 1 ? `Rows 2-${rows}: ch 1, turn, sc in each st across. (10 sc)\n` : ''}`;

/** Rows of the stitches that the last row's own stand on, in working order. */
function rowsBelow(fabric: Fabric): readonly number[] {
  const { first, end } = fabric.rows.at(-1)!;
  const found: number[] = [];
  for (let stitch = first; stitch < end; stitch++) if (fabric.baseStart[stitch + 1]! > fabric.baseStart[stitch]!) found.push(fabric.row[fabric.bases[fabric.baseStart[stitch]!]!]!);
  return found;
}

describe('stitches worked evenly', () => {
  it('go one into each row end where they are as many', () => {
    const { fabric, findings, rows } = workText(`${panel(8)}Row 9: ch 1, work 8 sc evenly along row ends. (8 sc)`);
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)!.made).toBe(8);
    expect(rowsBelow(fabric)).toEqual([8, 7, 6, 5, 4, 3, 2, 1]);
  });

  it('pass over row ends, each at the middle of its part, where they are fewer', () => {
    // 8 row ends in 4 parts of 2, counted from the last row down: the second of each (placeOf: 1, 3, 5, 7).
    expect(rowsBelow(workText(`${panel(8)}Row 9: ch 1, pick up 4 sc evenly along the side.`).fabric)).toEqual([7, 5, 3, 1]);
    expect(rowsBelow(workText(`${panel(9)}Row 10: ch 1, pick up 3 sc along side edge.`).fabric)).toEqual([8, 5, 2]);
  });

  it('go several into one where they are more', () => {
    const { fabric, rows } = workText(`${panel(4)}Row 5: ch 1, work 6 sc evenly down the left edge.`);
    expect(rows.at(-1)!.made).toBe(6);
    expect(rowsBelow(fabric)).toEqual([4, 3, 3, 2, 1, 1]);
  });

  it('keep to one side of the piece', () => {
    const { rows, findings } = workText(`${panel(8)}Rnd 9: ch 1, turn, sc in each st across, work 6 sc evenly along row ends, pick up 12 sc evenly along the side, join. (28 sc)`);
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)).toMatchObject({ made: 28, ring: true });
  });

  it.each([
    [24, 'work 24 sc evenly around'],
    [10, 'work 10 sc evenly around'],
    [31, 'sc 31 evenly around'],
  ])('make %i of the stitches of the round below: %s', (count, words) => {
    const { rows, findings } = workText(`Foundation: ch 20, join to form a ring.\nRnd 1: sc in each st around. (20 sc)\nRnd 2: ${words}. (${count} sc)\nRnd 3: sc in each st around. (${count} sc)`);
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)!.made).toBe(count);
  });

  it('are one to each row of single crochet where no number is said (common practice)', () => {
    const { rows, findings } = workText(`${panel(7)}Row 8: ch 1, sc evenly along row ends.`);
    expect(rules(findings)).toEqual([]);
    expect(rows.at(-1)!.made).toBe(7);
  });

  it('are as many as taller rows are high, which is asked about unless a count settles it (common practice: two to a row of double crochet)', () => {
    const tall = 'Foundation: ch 12.\nRow 1: dc in 4th ch from hook and in each ch across. (10 dc)\nRows 2-4: ch 3, turn, dc in next st and in each st across. (10 dc)\nRow 5: ch 1, sc evenly along row ends.';
    const { rows, findings } = workText(tall);
    expect(rows.at(-1)!.made).toBe(8);
    expect(findings.map(describeFinding)).toEqual(["How many are worked evenly is not said; by the heights of the rows it would be 8. Give the number, or the row's count."]);
    expect(rules(workText(`${tall} (8 sc)`).findings)).toEqual([]);
    expect(rules(workText(`${tall} (9 sc)`).findings)).toEqual(['wrong statedCount']);
  });

  it('find that there are no row ends to work into', () => {
    expect(rules(workText('Rnd 1: magic ring, 6 sc in ring.\nRnd 2: work 10 sc evenly along row ends.').findings)).toContain('wrong notEnoughPlaces');
  });

  it('are spread as evenly as whole places allow: the same from either end but for halves, no two parts differing by more than one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }), (count, places) => {
        const taken = Array.from({ length: count }, (_, nth) => placeOf(nth, count, places));
        expect(taken.every((place, i) => place >= 0 && place < places && (i === 0 || place >= taken[i - 1]!))).toBe(true);
        const steps = taken.slice(1).map((place, i) => place - taken[i]!);
        if (steps.length > 0) expect(Math.max(...steps) - Math.min(...steps)).toBeLessThanOrEqual(1);
        taken.forEach((place, i) => expect(Math.abs(place + taken[count - 1 - i]! - (places - 1))).toBeLessThanOrEqual(1));
      }),
      { numRuns: 200, seed: 5 },
    );
  });
});
