import { across, plain, withYarn } from './clauses.ts';
import { edgeRows, type MadeEdge } from './edgeRows.ts';
import { evenRow } from './evenRow.ts';
import { loopSection } from './finishing.ts';
import { fitCount } from './fitCount.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { rounds, step, type MadeRow } from './madeRow.ts';
import type { MadeParts } from './madeSection.ts';
import { nearest, type Origin } from './origin.ts';
import { Reckoning } from './reckoning.ts';
import type { PieceRequest, TubeSettings } from './settings.ts';
import { eventRows, spreadEvenly } from './spreadEvenly.ts';
import { wanted, wantedOrRefuse } from './wanted.ts';

interface TubeNumbers {
  readonly r: Reckoning;
  readonly start: MadeEdge;
  readonly end: MadeEdge;
  readonly near: Origin;
  readonly far: Origin;
  readonly rounds: Origin;
}

const even = (pinned: number) => (pinned % 2 === 0 ? null : 'an even number');

/** A tube in a spiral with an edge at either end; where the far end is wider or narrower, some rounds change the count, spread evenly round and along. */
export function tube(request: PieceRequest, settings: TubeSettings): MadeParts {
  const numbers = request.sizes.map((_, size) => tubeNumbers(request, settings, size));
  const remark = 'worked in a spiral';
  const { start, end, motif } = settings;
  return {
    reckonings: numbers.map(({ r }) => r),
    sections: [
      { role: 'start', name: 'FIRST EDGE', remark, perSize: numbers.map((n) => n.start.rows), settings: { ...start } },
      { role: 'tube', name: 'TUBE', remark, perSize: numbers.map((n) => tubeRows(settings, n)), settings: { yarn: settings.yarn, changes: settings.changes, repeat: motif.repeat, edge: motif.edge } },
      { role: 'end', name: 'LAST EDGE', remark, perSize: numbers.map((n) => [...n.end.rows, step('fasten', plain('fastenOff'))]), settings: { ...end } },
      ...(settings.loop ? [loopSection(request, settings.loop, 'Fold the loop and sew both ends inside the last edge.')] : []),
    ],
  };
}

function tubeNumbers(request: PieceRequest, settings: TubeSettings, size: number): TubeNumbers {
  const r = new Reckoning(size, request.pins);
  const gauge = gaugeNumbers(r, request.gauge, request.swatches, 'sc', 'plain');
  const girth = wantedOrRefuse(r, request.measures, 'girth');
  const { motif } = settings;
  const exact = girth.value * gauge.stitches.value;
  const fit = fitCount(exact, 2, motif, 6);
  const without = motif.repeat > 0 ? [r.reckon({ key: 'around.withoutMotif', says: 'stitches round without the motif', unit: 'sts', formula: 'girth × stitches in 1 cm, even', inputs: [girth, gauge.stitches], exact, rounding: nearest(6, 2) })] : [];
  const near = r.reckon({
    key: 'around', says: 'stitches round', unit: 'sts', formula: motif.repeat > 0 ? `girth × stitches in 1 cm, even, a multiple of ${motif.repeat} and ${motif.edge}` : 'girth × stitches in 1 cm, even',
    inputs: [girth, gauge.stitches, ...without], exact, rounding: { how: 'nearest', step: fit.every, plus: fit.plus, least: Math.max(6, motif.repeat > 0 && fit.fits ? motif.repeat + motif.edge : 6) }, allows: even,
  });
  const farWanted = wanted(r, request.measures, 'endGirth');
  const far = farWanted
    ? r.reckon({ key: 'far', says: 'stitches round the far end', unit: 'sts', formula: 'girth of the far end × stitches in 1 cm, even', inputs: [farWanted, gauge.stitches], exact: farWanted.value * gauge.stitches.value, rounding: nearest(6, 2), allows: even })
    : near;
  const start = edgeRows(r, request, settings.start, { key: 'start', way: 'rounds', begins: true, stitches: near });
  const end = edgeRows(r, request, settings.end, { key: 'end', way: 'rounds', begins: false, stitches: far });
  const height = wantedOrRefuse(r, request.measures, 'height');
  const count = r.reckon({
    key: 'rounds', says: 'rounds between the edges', unit: 'rows', formula: '(height − heights of the edges) × rows in 1 cm', inputs: [height, start.heightCm, end.heightCm, gauge.rows],
    exact: (height.value - start.heightCm.value - end.heightCm.value) * gauge.rows.value, rounding: nearest(1),
  });
  return { r, start, end, near, far, rounds: count };
}

/** Stitches that one round of changes takes about. */
const CHANGES_A_ROUND = 6;

function tubeRows({ yarn, changes }: TubeSettings, { near, far, rounds: all }: TubeNumbers): readonly MadeRow[] {
  const difference = Math.abs(far.value - near.value);
  const events = difference === 0 ? 0 : Math.min(Math.max(1, Math.round(difference / CHANGES_A_ROUND)), all.value);
  const at = eventRows(all.value, events);
  const units = events === 0 ? [] : spreadEvenly(difference, events);
  const sign = Math.sign(far.value - near.value);
  const begun = withYarn(yarn);
  const made: MadeRow[] = [];
  let count = near.value;
  let round = 0;
  at.forEach((event, i) => {
    made.push(rounds(`even${i + 1}`, event - round, [begun, across('sc', 'around')], count));
    const to = count + sign * units[i]!;
    made.push(rounds(`change${i + 1}`, 1, [begun, ...evenRow('sc', count, to, changes === 'staggered' && i % 2 === 1 ? 'staggered' : 'stacked')], to, 'sts'));
    count = to;
    round = event + 1;
  });
  made.push(rounds('rounds', all.value - round, [begun, across('sc', 'around')], count));
  return made;
}
