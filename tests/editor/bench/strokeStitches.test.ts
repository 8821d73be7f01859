import { describe, expect, it } from 'vitest';
import { runOfYarn, straightRun, wholeRow } from '../../../src/editor/bench/strokeStitches.ts';
import { layYarn } from '../../../src/editor/bench/commands/layYarn.ts';
import { after, benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const state = benchOf(LEG);
const row2 = stitchesOfRow(state, 2);
const row3 = stitchesOfRow(state, 3);

describe('stitches of a stroke', () => {
  it('go straight along the row of the first, whatever lies between', () => {
    expect(straightRun(state.fabric, [row2[5]!, row3[1]!, row2[2]!])).toEqual(row2.slice(2, 6));
    expect(straightRun(state.fabric, [row2[5]!, row3[1]!])).toEqual([row2[5]]);
    expect(straightRun(state.fabric, [])).toEqual([]);
  });

  it('fill the run of one yarn on a double press', () => {
    const laid = benchOf(after(LEG, layYarn(row2.slice(4, 7), 'B')(state)));
    expect(runOfYarn(laid.fabric, laid.colours.yarn, row2[5]!)).toEqual(row2.slice(4, 7));
    expect(runOfYarn(laid.fabric, laid.colours.yarn, row2[8]!)).toEqual(row2.slice(7));
  });

  it('are all that count in a whole row', () => {
    expect(wholeRow(state.fabric, 2)).toEqual(row2.slice(1));
    expect(wholeRow(state.fabric, 99)).toEqual([]);
  });
});
