import { inRing, plain, withYarn } from './clauses.ts';
import { evenRow } from './evenRow.ts';
import { ballCounts } from './flatCount.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { foundation, note, rounds, step, type MadeRow } from './madeRow.ts';
import type { MadeParts } from './madeSection.ts';
import { nearest } from './origin.ts';
import { Reckoning } from './reckoning.ts';
import type { BallSettings, PieceRequest } from './settings.ts';
import { wantedOrRefuse } from './wanted.ts';

/** A ball in single crochet: the counts of its rounds follow the sine, so that it is round. Stuffed and drawn shut. */
export function ball(request: PieceRequest, { yarn }: BallSettings): MadeParts {
  const reckonings: Reckoning[] = [];
  const perSize = request.sizes.map((_, size) => {
    const r = new Reckoning(size, request.pins);
    reckonings.push(r);
    const gauge = gaugeNumbers(r, request.gauge, request.swatches, 'sc', 'plain');
    const wide = wantedOrRefuse(r, request.measures, 'across');
    const count = r.reckon({ key: 'rounds', says: 'rounds of the ball', unit: 'rows', formula: 'half of its girth (π × width ÷ 2) × rows in 1 cm', inputs: [wide, gauge.rows], exact: ((Math.PI * wide.value) / 2) * gauge.rows.value, rounding: nearest(4) });
    return ballRows(yarn, ballCounts(count.value, gauge.stitches.value / gauge.rows.value));
  });
  return { reckonings, sections: [{ role: 'ball', name: 'BALL', remark: 'worked in a spiral', perSize, settings: { yarn } }] };
}

function ballRows(yarn: string, counts: readonly number[]): readonly MadeRow[] {
  return [
    foundation([withYarn(yarn), plain('ring')]),
    ...counts.map((count, i) => rounds(`round${i + 1}`, 1, i === 0 ? [inRing('sc', count)] : evenRow('sc', counts[i - 1]!, count, i % 2 === 1 ? 'staggered' : 'stacked'), count, 'sts')),
    note('stuff', 'Stuff it firmly.'),
    step('close', plain('drawThrough')),
    step('fasten', plain('fastenOff')),
  ];
}
