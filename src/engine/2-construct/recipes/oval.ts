import type { Instruction } from '../../notation/instruction.ts';
import { chain, next, nextEach, plain, times, withYarn } from './clauses.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { foundation, rounds, step, type MadeRow } from './madeRow.ts';
import type { MadeParts } from './madeSection.ts';
import { nearest } from './origin.ts';
import { Reckoning } from './reckoning.ts';
import type { OvalSettings, PieceRequest } from './settings.ts';
import { wantedOrRefuse } from './wanted.ts';

/**
 * A flat oval in single crochet round a foundation chain: straight along both sides, at each end half of a disc that grows
 * by six stitches a round (both ends together).
 */
export function oval(request: PieceRequest, { yarn }: OvalSettings): MadeParts {
  const reckonings: Reckoning[] = [];
  const perSize = request.sizes.map((_, size) => {
    const r = new Reckoning(size, request.pins);
    reckonings.push(r);
    const gauge = gaugeNumbers(r, request.gauge, request.swatches, 'sc', 'plain');
    const wide = wantedOrRefuse(r, request.measures, 'width');
    const long = wantedOrRefuse(r, request.measures, 'length');
    const count = r.reckon({ key: 'rounds', says: 'rounds of the oval', unit: 'rows', formula: 'half of the width × rows in 1 cm', inputs: [wide, gauge.rows], exact: (wide.value / 2) * gauge.rows.value, rounding: nearest(1) });
    const chains = r.reckon({
      key: 'chains', says: 'chains worked into', unit: 'sts', formula: '(length − twice the height of the rounds) × stitches in 1 cm, and 1', inputs: [long, count, gauge.rows, gauge.stitches],
      exact: (long.value - (2 * count.value) / gauge.rows.value) * gauge.stitches.value + 1, rounding: nearest(2),
    });
    return ovalRows(yarn, chains.value, count.value);
  });
  return { reckonings, sections: [{ role: 'oval', name: 'OVAL', remark: 'worked in a spiral round a chain', perSize, settings: { yarn } }] };
}

function ovalRows(yarn: string, chains: number, count: number): readonly MadeRow[] {
  const straight = chains - 2;
  const made: MadeRow[] = [foundation([withYarn(yarn), chain(chains + 1)])];
  for (let round = 1; round <= count; round++) {
    const body = round === 1 ? roundTheChain(straight) : [corner(round, 1), next('sc', straight), corner(round, 3), next('sc', straight), corner(round, 2)];
    made.push(rounds(`round${round}`, 1, body, 2 * chains + 2 + 6 * (round - 1)));
  }
  return [...made, step('fasten', plain('fastenOff'))];
}

/** Three stitches in the chain at the far end, and as many in the one at the hook: one at the start of the round, two at its end. */
function roundTheChain(straight: number): readonly Instruction[] {
  const range = [0, 0] as const;
  const inChain = (count: number, each: number): Instruction => ({ kind: 'work', stitch: { kind: 'sc', together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, each, into: { at: 'next', count, what: 'ch' }, range });
  return [
    { kind: 'work', stitch: { kind: 'sc', together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, each: 1, into: { at: 'fromHook', nth: 2 }, range },
    inChain(straight, 1), inChain(1, 3), plain('otherSide'), inChain(straight, 1), inChain(1, 2),
  ];
}

function corner(round: number, count: number): Instruction {
  return times(count, [next('sc', round - 2), nextEach('sc', 2, 1)]);
}
