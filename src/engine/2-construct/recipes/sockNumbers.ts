import { edgeRows, type MadeEdge } from './edgeRows.ts';
import { fitCount } from './fitCount.ts';
import { gussetCounts, turnRowCount } from './flapRows.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { nearest, type Origin } from './origin.ts';
import { partRound } from './partRound.ts';
import { Reckoning } from './reckoning.ts';
import type { PieceRequest, SockSettings } from './settings.ts';
import { heelRowCount } from './shortRowHeel.ts';
import { afterthoughtPlan, toeStop } from './toePlan.ts';
import { wanted, wantedOrRefuse } from './wanted.ts';

/** All numbers of a sock in one size, with their origins. */
export interface SockNumbers {
  readonly r: Reckoning;
  readonly cuff: MadeEdge;
  readonly top: Origin;
  readonly around: Origin;
  readonly legRows: Origin;
  readonly heel: Origin;
  /** Short rows: left on each side. Flap: half of the stitches beside the middle of the turn. */
  readonly left: Origin;
  /** Rows of the flap; null for other heels. */
  readonly flap: Origin | null;
  readonly toeStop: Origin;
  readonly footRounds: Origin;
  /** Rounds of the gusset that belong to the foot. */
  readonly gussetRounds: number;
}

const even = (pinned: number) => (pinned % 2 === 0 ? null : 'an even number');

/** A number that follows from others and can't be pinned itself. */
const follows = (value: number) => (pinned: number) => (pinned === value ? null : `${value}, which follows from other numbers`);

/**
 * The numbers of a sock: round the foot by girth and gauge, to an even count and a multiple of the motif; the rest follows.
 * A short-row heel adds half of its rows to the length of the foot, a flap the rows of its turn, a heel set in afterwards as
 * many as a toe (common practice). `toeRounds` says what the toe of `around` stitches takes.
 */
export function sockNumbers(request: PieceRequest, settings: SockSettings, size: number, toeRounds: (around: number, stop: number) => number): SockNumbers {
  const r = new Reckoning(size, request.pins);
  const sc = gaugeNumbers(r, request.gauge, request.swatches, 'sc', 'plain');
  const around = aroundOf(r, request, settings, sc.stitches);
  const top = topOf(r, request, settings, sc.stitches, around);
  const cuff = edgeRows(r, request, settings.cuff, { key: 'cuff', way: settings.leg.way, begins: true, stitches: top });
  const length = wantedOrRefuse(r, request.measures, 'legLength');
  const legRows = r.reckon({
    key: 'leg.rows', says: 'rows of the leg', unit: 'rows', formula: '(length of the leg − height of the cuff) × rows in 1 cm', inputs: [length, cuff.heightCm, sc.rows],
    exact: (length.value - cuff.heightCm.value) * sc.rows.value, rounding: nearest(2),
  });
  const heel = heelOf(r, settings, around);
  const left = leftOf(r, settings, heel);
  const stop = r.reckon({
    key: 'toe.stop', says: 'stitches left at the end of the toe', unit: 'sts', formula: settings.toe.pace === 'graduated' ? 'near 8, whole decreases of 4' : 'near a quarter of the stitches, whole decreases of 4', inputs: [around],
    exact: toeStop(around.value, settings.toe.pace), rounding: nearest(4, 2),
    allows: (pinned) => ((around.value - pinned) % 4 === 0 && pinned < around.value ? null : `${around.value} less a multiple of 4`),
  });
  const foot = footOf(r, request, settings, { around, heel, left, stop, rowsPerCm: sc.rows, toeRounds: toeRounds(around.value, stop.value) });
  return { r, cuff, top, around, legRows, heel, left, toeStop: stop, ...foot };
}

function aroundOf(r: Reckoning, request: PieceRequest, { leg }: SockSettings, perCm: Origin): Origin {
  const girth = wantedOrRefuse(r, request.measures, 'footGirth');
  const exact = girth.value * perCm.value;
  const fit = fitCount(exact, 2, leg.motif, 12);
  const key = 'around';
  const says = 'stitches round the foot';
  if (leg.motif.repeat < 1 || !fit.fits) {
    return r.reckon({ key, says, unit: 'sts', formula: 'girth × stitches in 1 cm, even', inputs: [girth, perCm], exact, rounding: nearest(12, 2), allows: even });
  }
  const repeat = r.given('motif.repeat', 'stitches of a repeat of the motif', 'sts', leg.motif.repeat, 'given');
  const edge = r.given('motif.edge', 'stitches beside the repeats', 'sts', leg.motif.edge, 'given');
  const without = r.reckon({ key: 'around.withoutMotif', says: 'stitches round the foot without the motif', unit: 'sts', formula: 'girth × stitches in 1 cm, even', inputs: [girth, perCm], exact, rounding: nearest(12, 2) });
  return r.reckon({
    key, says, unit: 'sts', formula: 'girth × stitches in 1 cm, even, whole repeats and the stitches beside them', inputs: [girth, perCm, repeat, edge, without], exact,
    rounding: { how: 'nearest', step: fit.every, plus: fit.plus, least: Math.max(12, leg.motif.repeat + leg.motif.edge) }, allows: even,
  });
}

function topOf(r: Reckoning, request: PieceRequest, { leg }: SockSettings, perCm: Origin, around: Origin): Origin {
  const calf = leg.calf ? wanted(r, request.measures, 'calf') : null;
  if (!calf) return r.reckon({ key: 'top', says: 'stitches at the top', unit: 'sts', formula: 'as round the foot', inputs: [around], exact: around.value, rounding: nearest(around.value, 2), allows: even });
  return r.reckon({
    key: 'top', says: 'stitches at the top', unit: 'sts', formula: 'girth of the calf × stitches in 1 cm, an even number more than at the ankle', inputs: [calf, perCm, around],
    exact: calf.value * perCm.value, rounding: nearest(around.value, 2), allows: even,
  });
}

function heelOf(r: Reckoning, { heel }: SockSettings, around: Origin): Origin {
  const share = r.given('heel.share', 'share of the round that the heel takes', 'share', heel.share, 'given');
  return r.reckon({
    key: 'heel.stitches', says: 'stitches of the heel', unit: 'sts', formula: 'stitches round the foot × share, even', inputs: [around, share],
    exact: around.value * heel.share, rounding: nearest(6, 2), allows: (pinned) => even(pinned) ?? (pinned <= around.value - 4 ? null : `at most ${around.value - 4}`),
  });
}

function leftOf(r: Reckoning, { heel }: SockSettings, stitches: Origin): Origin {
  const step = heel.kind === 'shortRows' && heel.turn === 'stepped' ? heel.step : 1;
  const most = Math.floor((stitches.value - 2) / 2 / step) * step;
  return r.reckon({
    key: 'heel.left', says: heel.kind === 'flap' ? 'stitches on each side of the middle of the turn' : 'stitches left open on each side', unit: 'sts',
    // Rows of single crochet are nearly as tall as a stitch is wide: a published crochet tutorial turns 20 to 10, another 15 to 7.
    formula: 'a quarter of the heel’s stitches, so that about half stay in the middle', inputs: [stitches],
    exact: stitches.value / 4, rounding: nearest(step, step), allows: (pinned) => (pinned % step !== 0 ? `a multiple of ${step}` : pinned <= most ? null : `at most ${most}`),
  });
}

interface FootFacts {
  readonly around: Origin;
  readonly heel: Origin;
  readonly left: Origin;
  readonly stop: Origin;
  readonly rowsPerCm: Origin;
  readonly toeRounds: number;
}

function footOf(r: Reckoning, request: PieceRequest, settings: SockSettings, { around, heel, left, rowsPerCm, toeRounds, stop }: FootFacts): Pick<SockNumbers, 'flap' | 'footRounds' | 'gussetRounds'> {
  const length = wantedOrRefuse(r, request.measures, 'footLength');
  const toe = r.reckon({ key: 'toe.rounds', says: 'rounds of the toe', unit: 'rows', formula: 'from the pace of its decreases', inputs: [around, stop], exact: toeRounds, allows: follows(toeRounds) });
  const all = length.value * rowsPerCm.value;
  const flap = settings.heel.kind === 'flap' ? flapOf(r, length, rowsPerCm, heel) : null;
  const plan = { stitches: heel.value, rows: flap?.value ?? 0, middle: heel.value - 2 * left.value, around: around.value };
  const gusset = flap ? gussetCounts(plan).decreases : 0;
  const gussetRounds = flap ? 1 + gusset * (settings.heel.gusset === 'second' ? 2 : 1) : 0;
  const heelRows = heelLength(r, settings, heel, left);
  const shift = partRound(settings.heel.kind, around.value, heel.value, left.value);
  const footRounds = r.reckon({
    key: 'foot.rounds', says: flap ? 'rounds of the foot after the gusset' : 'rounds of the foot', unit: 'rows',
    formula: `length of the foot × rows in 1 cm − what the heel gives − rounds of the toe${flap ? ' − rounds of the gusset' : ''}`,
    inputs: [length, rowsPerCm, heelRows, toe, ...(flap ? [r.reckon({ key: 'gusset.rounds', says: 'rounds of the gusset', unit: 'rows', formula: `1 + ${settings.heel.gusset === 'second' ? '2 for' : ''} each decrease of 2; ${plan.rows} row ends picked up on each side`, inputs: [flap, around, heel], exact: gussetRounds, allows: follows(gussetRounds) })] : [])],
    exact: all - heelRows.value - toe.value - gussetRounds, rounding: nearest(flap ? (shift * 2 > around.value ? 1 : 0) : 2),
  });
  return { flap, footRounds, gussetRounds };
}

function flapOf(r: Reckoning, length: Origin, rowsPerCm: Origin, heel: Origin): Origin {
  const ratio = r.table('flap.ratio', 'height of the ankle bone to the length of the foot', 'share', 0.262, 'ANSUR II: 0.269 men, 0.255 women');
  const least = 2 * Math.max(2, Math.ceil(heel.value / 8));
  return r.reckon({
    key: 'flap.rows', says: 'rows of the heel flap', unit: 'rows', formula: 'length of the foot × ratio × rows in 1 cm, even; enough for the gusset', inputs: [length, ratio, rowsPerCm],
    exact: length.value * ratio.value * rowsPerCm.value, rounding: nearest(least, 2), allows: even,
  });
}

/** Rows that the heel gives to the length of the foot. */
function heelLength(r: Reckoning, { heel }: SockSettings, stitches: Origin, left: Origin): Origin {
  const rows = (formula: string, inputs: readonly Origin[], exact: number) => r.reckon({ key: 'heel.length', says: 'rows that the heel gives to the foot', unit: 'rows', formula, inputs, exact, allows: follows(exact) });
  switch (heel.kind) {
    case 'flap':
      return rows('rows of the turn: 2 and one for each stitch beside its middle', [stitches, left], turnRowCount({ stitches: stitches.value, middle: stitches.value - 2 * left.value }));
    case 'afterthought':
      return rows('as many as a toe of the same stitches, and one', [stitches], 1 + afterthoughtPlan(stitches.value).rounds);
    case 'shortRows':
      return rows('half of the heel’s rows', [stitches, left], heelRowCount({ leftFirst: left.value, leftSecond: left.value, step: heel.turn === 'atOnce' ? 0 : heel.step }) / 2);
  }
}
