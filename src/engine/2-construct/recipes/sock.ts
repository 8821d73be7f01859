import { across, chain, joinAtOpening, joinBeforeSeam, leave, next, nextEach, skip, withYarn } from './clauses.ts';
import { flapRows, gussetRows, turnRows, type FlapPlan } from './flapRows.ts';
import { fringeSection, loopSection } from './finishing.ts';
import { legRows } from './legRows.ts';
import { rounds, step, type MadeRow } from './madeRow.ts';
import type { MadeParts, MadeSection } from './madeSection.ts';
import { partRound } from './partRound.ts';
import type { PieceRequest, SockSettings } from './settings.ts';
import { sockNumbers, type SockNumbers } from './sockNumbers.ts';
import { heelRows } from './shortRowHeel.ts';
import { afterthoughtPlan, toeFits, toePlan, type ToePlan } from './toePlan.ts';
import { toeRows } from './toeRows.ts';

/**
 * A sock or stocking from the cuff down: cuff and leg flat and seamed at the centre back or in a spiral, one of three heels,
 * foot and toe in a spiral; and what is sewn on. In rounds, the round begins at the right side of the heel. Refuses sizes
 * without foot girth, foot length or leg length.
 */
export function sock(request: PieceRequest, settings: SockSettings): MadeParts {
  const sizes = request.sizes.map((_, size) => size);
  const own = (around: number, stop: number) => toePlan(around, stop, settings.toe).rounds;
  const first = sizes.map((size) => sockNumbers(request, settings, size, own));
  const inRounds = settings.toe.inStep ? roundsInStep(first) : null;
  const toeOf = (around: number, stop: number): ToePlan => toePlan(around, stop, settings.toe, inRounds);
  const numbers = inRounds === null ? first : sizes.map((size) => sockNumbers(request, settings, size, (around, stop) => toeOf(around, stop).rounds));
  const made = (role: string, name: string, remark: string, own: MadeSection['settings'], rowsOf: (n: SockNumbers) => readonly MadeRow[]): MadeSection => ({ role, name, remark, perSize: numbers.map(rowsOf), settings: own });
  const { cuff, leg, heel, toe } = settings;
  const flat = leg.way === 'flat';
  const legRemark = flat ? 'worked flat, then seamed' : 'worked in a spiral, from the right side of the heel';
  const heelSettings = { kind: heel.kind, share: heel.share, turn: heel.turn, step: heel.step, corners: heel.corners, gusset: heel.gusset, yarn: heel.yarn };
  return {
    reckonings: numbers.map(({ r }) => r),
    sections: [
      made('cuff', 'CUFF', flat ? 'worked flat' : 'worked in a spiral', { ...cuff }, (n) => n.cuff.rows),
      made('leg', 'LEG', legRemark, { way: leg.way, calf: leg.calf, yarn: leg.yarn, repeat: leg.motif.repeat, edge: leg.motif.edge }, (n) =>
        legRows({ way: leg.way, yarn: leg.yarn, top: n.top.value, ankle: n.around.value, rows: n.legRows.value, toCentre: n.heel.value / 2 })),
      ...heelSections(settings, made, heelSettings),
      made('foot', 'FOOT', 'worked in a spiral', { ...settings.foot }, (n) => footRows(settings, n)),
      made('toe', 'TOE', 'worked in a spiral', { pace: toe.pace, ...(toe.evens === null ? {} : { evens: toe.evens }), inStep: toe.inStep, close: toe.close, yarn: toe.yarn }, (n) =>
        toeRows(toeOf(n.around.value, n.toeStop.value), toe.close, toe.yarn)),
      ...(heel.kind === 'afterthought' ? [made('heel', 'HEEL', 'worked in a spiral into the opening', heelSettings, (n) => afterthoughtRows(n.heel.value, heel.yarn))] : []),
      ...(settings.loop ? [loopSection(request, settings.loop, 'Fold the loop and sew both ends inside the cuff at the centre back.')] : []),
      ...(settings.fringe ? [fringeSection(settings.fringe, numbers.map((n) => n.top.value), 'the cuff')] : []),
    ],
  };
}

type Made = (role: string, name: string, remark: string, own: MadeSection['settings'], rowsOf: (n: SockNumbers) => readonly MadeRow[]) => MadeSection;

/** Sections of the heel that stand between leg and foot. */
function heelSections({ heel, leg, foot }: SockSettings, made: Made, own: MadeSection['settings']): readonly MadeSection[] {
  const from = leg.way === 'flat' ? 'seam' : 'round';
  if (heel.kind === 'afterthought') return [];
  if (heel.kind === 'shortRows') {
    return [made('heel', 'HEEL', 'turned in short rows', own, (n) =>
      heelRows({ stitches: n.heel.value, leftFirst: n.left.value, leftSecond: n.left.value, step: heel.turn === 'atOnce' ? 0 : heel.step, from, corners: heel.corners, yarn: heel.yarn }))];
  }
  const plan = (n: SockNumbers): FlapPlan => ({
    stitches: n.heel.value, rows: n.flap!.value, middle: n.heel.value - 2 * n.left.value, around: n.around.value, from, gusset: heel.gusset, yarn: heel.yarn, footYarn: foot.yarn,
  });
  return [
    made('flap', 'HEEL FLAP', 'worked flat; the ends of its rows stay open for the gusset', own, (n) => flapRows(plan(n))),
    made('turn', 'HEEL TURN', 'worked flat over the middle', {}, (n) => turnRows(plan(n))),
    made('gusset', 'GUSSET', 'worked in a spiral', {}, (n) => gussetRows(plan(n))),
  ];
}

/** Rounds of the foot, and a part of a round that brings the start to the side where the toe begins. */
function footRows({ heel, foot, leg }: SockSettings, n: SockNumbers): readonly MadeRow[] {
  const around = n.around.value;
  const stitches = n.heel.value;
  const part = partRound(heel.kind, around, stitches, n.left.value);
  const whole = n.footRounds.value - (part > around / 2 ? 1 : 0);
  const begun = withYarn(foot.yarn);
  const made: MadeRow[] = [];
  if (heel.kind === 'shortRows' && heel.corners) {
    made.push(rounds('corners', 1, [begun, nextEach('sc', 2, 1), next('sc', around - stitches - 4), nextEach('sc', 2, 1), next('sc', stitches)], around));
  }
  if (heel.kind === 'afterthought') {
    if (leg.way === 'flat') made.push(step('join', joinBeforeSeam(Math.ceil(stitches / 2), foot.yarn)));
    const yarn = leg.way === 'flat' ? [] : [begun];
    made.push(rounds('opening', 1, [...yarn, chain(stitches, 'each'), skip(stitches), across('sc', 'around')], around, 'sts'));
  }
  const opened = made.some((row) => row.kind === 'row') ? 1 : 0;
  made.push(rounds('rounds', Math.max(0, whole - opened), [begun, across('sc', 'around')], around));
  if (part > 0) made.push({ kind: 'row', role: 'part', word: 'round', rows: 1, side: null, body: [begun, next('sc', part), leave('rest')], stated: { count: part, unit: 'sc', step: 0 } });
  return made;
}

/** A heel worked like a toe into the opening: first along the stitches that were skipped, then along the undersides of the chains. */
function afterthoughtRows(heel: number, yarn: string): readonly MadeRow[] {
  return [step('join', joinAtOpening(1, yarn)), rounds('first', 1, [across('sc', 'around')], 2 * heel), ...toeRows(afterthoughtPlan(heel), 'drawn', yarn)];
}

/** So many decreasing rounds that the toes of all sizes can be made in: those of the smallest, or more where larger ones need them. */
function roundsInStep(numbers: readonly SockNumbers[]): number {
  const units = numbers.map((n) => (n.around.value - n.toeStop.value) / 4);
  for (let count = Math.min(...units); ; count++) {
    if (numbers.every((n, size) => toeFits(n.around.value, n.toeStop.value, Math.min(count, units[size]!)))) return count;
  }
}
