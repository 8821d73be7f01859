import { alongChain, chain, plain, withYarn } from './clauses.ts';
import { gaugeOf } from './gaugeBook.ts';
import { foundation, note, rows, step } from './madeRow.ts';
import type { MadeSection } from './madeSection.ts';
import type { FringeSettings, LoopSettings, PieceRequest } from './settings.ts';

/** A hanging loop: a strip of one row of single crochet, twice as long as the loop is deep, to be folded and sewn on. */
export function loopSection(request: PieceRequest, loop: LoopSettings, sewing: string): MadeSection {
  const { stitchesPerCm } = gaugeOf(request.gauge, request.swatches, 'sc', 'plain');
  const count = Math.max(4, Math.round(loop.cm * stitchesPerCm));
  const made = [
    foundation([withYarn(loop.yarn), chain(count + 1)]),
    rows('row1', 1, alongChain('sc', 2), count),
    step('fasten', plain('fastenOff')),
    note('sew', sewing),
  ];
  return { role: 'loop', name: 'LOOP', remark: 'folded and sewn on', perSize: request.sizes.map(() => made), settings: { cm: loop.cm, yarn: loop.yarn } };
}

/** Bunches of strands knotted along an edge of `stitches` (one number a size). */
export function fringeSection(fringe: FringeSettings, stitches: readonly number[], edge: string): MadeSection {
  const bunches = stitches.map((count) => fringeBunches(count, fringe.every));
  return {
    role: 'fringe', name: 'FRINGE', remark: 'knotted on',
    perSize: bunches.map((count) => [
      note('cut', 'Cut ', count * fringe.strands, ` strands of ${fringe.yarn}, ${fringe.cm} cm long. Knot them along ${edge} in `, count, ` bunches of ${fringe.strands}, folded in half, one in every ${fringe.every === 1 ? '' : `${ordinal(fringe.every)} `}stitch.`),
    ]),
    settings: { every: fringe.every, strands: fringe.strands, cm: fringe.cm, yarn: fringe.yarn, bunches },
  };
}

/** Bunches of a fringe with one in every `every`th stitch, the first in the first. */
export function fringeBunches(stitches: number, every: number): number {
  return Math.floor((stitches - 1) / every) + 1;
}

function ordinal(number: number): string {
  return `${number}${number === 2 ? 'nd' : number === 3 ? 'rd' : 'th'}`;
}
