import { stitchRow, type StitchKind } from '../../craft/stitches.ts';
import { plainCall, type Instruction } from '../../notation/instruction.ts';
import { across, alongChain, chain, next, nextEach, plain, together, withYarn } from './clauses.ts';
import { evenRow, spreadChanges } from './evenRow.ts';
import { fringeSection, loopSection } from './finishing.ts';
import { fitCount } from './fitCount.ts';
import { foundationChains } from './foundationChains.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { foundation, rows, step, type MadeRow } from './madeRow.ts';
import type { MadeParts } from './madeSection.ts';
import { nearest, type Origin } from './origin.ts';
import { Reckoning } from './reckoning.ts';
import type { PanelSettings, PieceRequest } from './settings.ts';
import { eventRows, spreadEvenly } from './spreadEvenly.ts';
import { wanted, wantedOrRefuse } from './wanted.ts';

interface PanelNumbers {
  readonly r: Reckoning;
  readonly width: Origin;
  readonly far: Origin;
  readonly rows: Origin;
  readonly bobbleRow: number | null;
  readonly bobbles: number;
}

/**
 * A flat panel in one stitch, worked from its lower edge; where the far edge is wider or narrower, shaped at both edges evenly
 * over its rows. A row of bobbles stands on a wrong side row, from which bobbles push to the right side (common practice).
 */
export function panel(request: PieceRequest, settings: PanelSettings): MadeParts {
  const numbers = request.sizes.map((_, size) => panelNumbers(request, settings, size));
  const { bobbles, motif } = settings;
  return {
    reckonings: numbers.map(({ r }) => r),
    sections: [
      {
        role: 'panel', name: 'PANEL', remark: 'worked flat', perSize: numbers.map((n) => panelRows(settings, n)),
        settings: { stitch: settings.stitch, yarn: settings.yarn, repeat: motif.repeat, edge: motif.edge, ...(bobbles ? { bobblesEvery: bobbles.every, bobblesAt: bobbles.at } : {}) },
      },
      ...(settings.loop ? [loopSection(request, settings.loop, 'Fold the loop and sew both ends behind the middle of the last row.')] : []),
      ...(settings.fringe ? [fringeSection(settings.fringe, numbers.map((n) => n.far.value), 'the last row')] : []),
    ],
  };
}

function panelNumbers(request: PieceRequest, settings: PanelSettings, size: number): PanelNumbers {
  const r = new Reckoning(size, request.pins);
  const { stitch, motif, bobbles } = settings;
  const gauge = gaugeNumbers(r, request.gauge, request.swatches, stitch, 'plain');
  const wide = wantedOrRefuse(r, request.measures, 'width');
  const exact = wide.value * gauge.stitches.value;
  const fit = fitCount(exact, 1, motif, 2);
  const without = motif.repeat > 0 ? [r.reckon({ key: 'width.withoutMotif', says: 'stitches across without the motif', unit: 'sts', formula: 'width × stitches in 1 cm', inputs: [wide, gauge.stitches], exact, rounding: nearest(2) })] : [];
  const width = r.reckon({
    key: 'width.stitches', says: 'stitches across', unit: 'sts', formula: motif.repeat > 0 ? `width × stitches in 1 cm, a multiple of ${motif.repeat} and ${motif.edge}` : 'width × stitches in 1 cm',
    inputs: [wide, gauge.stitches, ...without], exact, rounding: { how: 'nearest', step: fit.every, plus: fit.plus, least: Math.max(2, motif.repeat > 0 ? motif.repeat + motif.edge : 2) },
  });
  const height = wantedOrRefuse(r, request.measures, 'height');
  const count = r.reckon({ key: 'rows', says: 'rows', unit: 'rows', formula: 'height × rows in 1 cm', inputs: [height, gauge.rows], exact: height.value * gauge.rows.value, rounding: nearest(bobbles ? 3 : 2) });
  const farWanted = wanted(r, request.measures, 'topWidth');
  // A row can decrease a quarter of its stitches at each edge: with so many rows, the far edge can't be narrower.
  const narrowest = Math.ceil(width.value / (count.value - (bobbles ? 1 : 0))) + 2;
  const far = farWanted
    ? r.reckon({
      key: 'far.stitches', says: 'stitches across the far edge', unit: 'sts', formula: 'width of the far edge × stitches in 1 cm, differing from the near edge by an even number', inputs: [farWanted, gauge.stitches, width],
      exact: farWanted.value * gauge.stitches.value, rounding: nearest(Math.min(narrowest, width.value), 2, width.value % 2), allows: (pinned) => (pinned % 2 === width.value % 2 ? null : `an ${width.value % 2 === 0 ? 'even' : 'odd'} number`),
    })
    : width;
  const bobbleRow = bobbles ? Math.min(Math.floor(count.value / 2) * 2, Math.max(2, 2 * Math.round((count.value * bobbles.at) / 2))) : null;
  return { r, width, far, rows: count, bobbleRow, bobbles: bobbles ? Math.max(1, Math.round(width.value / bobbles.every)) : 0 };
}

function panelRows(settings: PanelSettings, n: PanelNumbers): readonly MadeRow[] {
  const { stitch, yarn } = settings;
  const { chains, nth } = foundationChains(stitch, n.width.value, false);
  const unit = stitchRow(stitch).us;
  const turning = turningOf(stitch);
  const made: MadeRow[] = [foundation([withYarn(yarn), chain(chains)]), rows('first', 1, alongChain(stitch, nth), n.width.value, unit, 'RS')];
  const bobbleRow = n.bobbleRow ?? n.rows.value + 1;
  const below = shaped(settings, n, 2, bobbleRow, n.width.value, 'lower');
  made.push(...below.rows);
  if (n.bobbleRow === null) return [...made, step('fasten', plain('fastenOff'))];
  const bobbles = Math.min(n.bobbles, below.count);
  made.push(rows('bobbles', 1, [...turning, ...spreadChanges(below.count, bobbles, 'staggered', (some) => next(stitch, some), next(plainCall('bobble', 5), 1))], below.count, 'sts'));
  return [...made, ...shaped(settings, n, bobbleRow + 1, n.rows.value + 1, below.count, 'upper').rows, step('fasten', plain('fastenOff'))];
}

/** Rows [from, end) with the changes that fall on them, and the count after them. */
function shaped({ stitch }: PanelSettings, n: PanelNumbers, from: number, end: number, count: number, part: string): { readonly rows: readonly MadeRow[]; readonly count: number } {
  const unit = stitchRow(stitch).us;
  const turning = turningOf(stitch);
  const made: MadeRow[] = [];
  let done = from;
  for (const [row, change] of shaping(n)) {
    if (row < from || row >= end) continue;
    const nth = made.length / 2 + 1;
    made.push(rows(`${part}Even${nth}`, row - done, [...turning, across(stitch)], count, unit));
    made.push(rows(`${part}Shape${nth}`, 1, [...turning, ...atBothEdges(stitch, count, change)], count + 2 * change, 'sts'));
    count += 2 * change;
    done = row + 1;
  }
  made.push(rows(part, end - done, [...turning, across(stitch)], count, unit));
  return { rows: made, count };
}

/** Stitches more (or fewer) at each edge, by row: spread over the rows, none on the bobbles’. */
function shaping({ width, far, rows: count, bobbleRow }: PanelNumbers): ReadonlyMap<number, number> {
  const pairs = Math.abs(far.value - width.value) / 2;
  if (pairs === 0) return new Map();
  const free = Array.from({ length: count.value - 1 }, (_, i) => i + 2).filter((row) => row !== bobbleRow);
  const events = Math.min(pairs, free.length);
  const units = spreadEvenly(pairs, events);
  const sign = far.value > width.value ? 1 : -1;
  return new Map(eventRows(free.length, events).map((at, i) => [free[at]!, sign * units[i]!]));
}

/** `change` stitches more (or fewer) at each edge of `count`; spread over the row where the edges have no room. */
function atBothEdges(stitch: StitchKind, count: number, change: number): readonly Instruction[] {
  if (-4 * change >= count) return evenRow(stitch, count, count + 2 * change, 'staggered', 'across');
  if (change > 0) return [nextEach(stitch, change + 1, 1), across(stitch, 'end', 1), nextEach(stitch, change + 1, 1)];
  return [together(stitch, 2, -change), across(stitch, 'end', -2 * change), together(stitch, 2, -change)];
}

/** Turn with a chain that doesn't count, so that both edges can be shaped alike. */
function turningOf(stitch: StitchKind): readonly Instruction[] {
  const { turningChains } = stitchRow(stitch);
  return [chain(turningChains, turningChains > 1 ? 'no' : null), plain('turn')];
}
