import type { Finding } from '../notation/finding.ts';
import type { Instruction } from '../notation/instruction.ts';
import type { Program, ProgramRow } from '../2-construct/program.ts';
import { settleChains } from './chains.ts';
import { resume, rewind, takeCheckpoint, type Checkpoint, type GivenUp, type Workings } from './checkpoint.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG, type Fabric, type WorkedRow } from './fabric.ts';
import { Hook } from './hook.ts';
import { closeEdge, joinAt } from './joins.ts';
import { both, readsBack, type ReadsBack } from './readsBack.ts';
import { openRowEnds } from './rowEnds.ts';
import { checkStated, reportRow, statedMade } from './rowReport.ts';
import { MOST_STITCHES, report, type RowWork } from './rowWork.ts';
import { sameEdge } from './sameEdge.ts';
import { takeRest, type Growing } from './takeRest.ts';
import { placesInReach } from './workMeshes.ts';
import { isAsked, questioned, unsureAfter, unsureAt } from './unsureRows.ts';
import { timesThatFit } from './timesThatFit.ts';
import { workRow } from './workRow.ts';

const WORKINGS = new WeakMap<Fabric, { readonly program: Program; readonly workings: Workings }>();
/** Row starts after the last changed row where the edge is compared one after another; farther on at every doubling only. */
const COMPARED = 64;

/**
 * Works a program stitch by stitch on the edge of the fabric. With the fabric of an earlier program, rows that are the same
 * from the start on are kept and the work is taken up at the first row that differs; where the edge is as it was again, with
 * nothing but the same rows to come, the rest is kept too. Never throws for what a pattern says: what can't be worked is a
 * finding, and work goes on. Linear in stitches and places.
 */
export function work(program: Program, previous: Fabric | null = null): Fabric {
  const known = previous ? WORKINGS.get(previous) : undefined;
  if (previous && known?.program === program) return previous;
  const same = known && sameStart(known.program, program) ? sameRows(known.program.rows, program.rows) : 0;
  const from = known ? Math.min(same, known.workings.checkpoints.length - 1) : 0;
  const growing = from > 0 ? takenUp(previous!, known!.workings, from) : begun();
  const { hook, checkpoints, rows, findings, unsure, givenUp } = growing;
  const rest = from > 0 ? restFrom(known!.program.rows, program.rows, from) : null;

  let openAtEnd: Int32Array | null = null;
  for (let index = from; index < program.rows.length; index++) {
    const checkpoint = takeCheckpoint(hook, checkpoints[index - 1]);
    checkpoints.push(checkpoint);
    if (rest && index >= rest.start && isCompared(index - rest.start)) {
      openAtEnd = keptRest(growing, previous!, known!, program, from, rest.reads);
      if (openAtEnd) break;
    }
    const done = workOne(hook, program, index, rows, checkpoint, findings[index - 1] ?? []);
    const row = program.rows[index]!;
    const doubt = unsureAt(row, unsure[index] ?? false);
    unsure[index + 1] = unsureAfter(row, doubt || isAsked(done.findings), done.said !== null && done.worked === done.said);
    findings.push(questioned(done.findings, row, doubt));
    giveUpChains(rows, index, done.row.first, givenUp);
    rows.push(done.row);
  }
  if (!openAtEnd) checkpoints.push(takeCheckpoint(hook, checkpoints[checkpoints.length - 1]));
  if (from > 0) reportAnew(rows, hook, known!.workings, from);

  const fabric: Fabric = {
    ...hook.stitches.finish(),
    rows,
    sections: sectionsOf(program, rows),
    seams: hook.seams.slice(),
    closings: hook.closings.slice(),
    openAtEnd: openAtEnd ?? openOnEdge(hook),
    findings: [...program.findings, ...findings.flat()],
  };
  WORKINGS.set(fabric, { program, workings: growing });
  return fabric;
}

/** Whether a fabric is as it was worked, so that rows with the very same report in two of them are the same in all their stitches (but for yarns). */
export function isAsWorked(fabric: Fabric): boolean {
  return WORKINGS.has(fabric);
}

/** Rows before `from` whose stitches were changed by a later row, then or now, get reports of their own. */
function reportAnew(rows: WorkedRow[], hook: Hook, { hook: old, checkpoints }: Workings, from: number): void {
  const { moves } = checkpoints[from]!;
  for (const { stitches } of [hook, old]) {
    for (let i = moves; i < stitches.moves.length; i++) {
      const { stitch, row } = stitches.moves[i]!;
      for (const index of [row, stitches.rows.at(stitch)]) if (index >= 0 && index < from) rows[index] = { ...rows[index]! };
    }
  }
}

function begun(): Growing {
  return { hook: new Hook(), checkpoints: [], rows: [], findings: [], unsure: [false], givenUp: [] };
}

/** An earlier fabric as it was at the start of row `from`. */
function takenUp(previous: Fabric, workings: Workings, from: number): Growing {
  const rows = previous.rows.slice(0, from);
  for (let i = workings.givenUp.length - 1; i >= 0 && workings.givenUp[i]!.by >= from; i--) {
    const { row, was } = workings.givenUp[i]!;
    if (row < from) rows[row] = was;
  }
  return {
    hook: resume(workings.hook, workings.checkpoints[from]!), rows,
    checkpoints: workings.checkpoints.slice(0, from), findings: workings.findings.slice(0, from), unsure: workings.unsure.slice(0, from + 1),
    givenUp: workings.givenUp.filter(({ by }) => by < from),
  };
}

/** Where the rows that are the same to the end begin, and what working them looks back at; null where the rows are others or none are left. */
function restFrom(old: readonly ProgramRow[], now: readonly ProgramRow[], from: number): { readonly start: number; readonly reads: ReadsBack } | null {
  if (old.length !== now.length) return null;
  let start = now.length;
  while (start > from && sameRow(old[start - 1]!, now[start - 1]!)) start--;
  if (start === now.length) return null;
  for (let row = from; row < start; row++) if (old[row]!.section !== now[row]!.section || old[row]!.word !== now[row]!.word) return null;
  return { start: Math.max(start, from + 1), reads: now.slice(start).map(({ body }) => readsBack(body)).reduce(both) };
}

function isCompared(rows: number): boolean {
  return rows <= COMPARED || (rows & (rows - 1)) === 0;
}

/** Keeps the rest of the earlier fabric, where nothing that it was worked on has changed; null where it has. */
function keptRest(growing: Growing, previous: Fabric, { program: before, workings }: { readonly program: Program; readonly workings: Workings }, program: Program, from: number, reads: ReadsBack): Int32Array | null {
  const index = growing.rows.length;
  const leftUnsaid = (found: readonly Finding[] | undefined) => (found ?? []).some(({ rule }) => rule === 'leftUnsaid');
  const seen =
    leftUnsaid(workings.findings[index - 1]) === leftUnsaid(growing.findings[index - 1]) && (workings.unsure[index] ?? false) === (growing.unsure[index] ?? false) &&
    previous.rows[index - 1]!.round === growing.rows[index - 1]!.round && joinOf(before, index) === joinOf(program, index);
  if (!seen) return null;
  const now = { hook: growing.hook, at: growing.checkpoints[index]! };
  const joint = sameEdge({ hook: workings.hook, at: workings.checkpoints[index]! }, now, workings.checkpoints[from]!, reads);
  if (!joint || workings.hook.stitches.count + Math.max(0, joint.stitches.shift) > MOST_STITCHES * 5) return null;
  return takeRest(growing, previous, workings, joint);
}

/** Works one row; where the stated count shows that the turning chain was meant the other way, that way. */
function workOne(hook: Hook, program: Program, index: number, rows: readonly WorkedRow[], checkpoint: Checkpoint, before: readonly Finding[]): Attempt {
  const row = program.rows[index]!;
  const stated = row.stated;
  hook.stitches.settled = hook.stitches.count;
  const first = workOnce(hook, program, index, rows, false, before);
  if (!stated || first.worked === null || first.worked === first.said || !hasOpenChain(row.body)) return finish(first, stated);
  rewind(hook, checkpoint);
  const second = workOnce(hook, program, index, rows, true, before);
  if (second.worked === second.said) return finish(second, stated);
  rewind(hook, checkpoint);
  return finish(workOnce(hook, program, index, rows, false, before), stated);
}

function finish(done: Attempt, stated: ProgramRow['stated']): Attempt {
  if (stated) checkStated(done.work, stated, done.row);
  return done;
}

interface Attempt {
  readonly work: RowWork;
  readonly row: WorkedRow;
  readonly findings: Finding[];
  /** What was made in the unit of the stated count, and that count; null without one. */
  readonly worked: number | null;
  readonly said: number | null;
}

function workOnce(hook: Hook, program: Program, index: number, rows: readonly WorkedRow[], inverted: boolean, found: readonly Finding[]): Attempt {
  const row = program.rows[index]!;
  const round = isRound(program, index, hook, rows);
  const join = joinOf(program, index);
  const opening = !program.rows.slice(Math.max(0, index - 50), index).some((other) => other.section === row.section && other.word !== 'step');
  const work: RowWork = {
    hook, program, row, join, findings: [],
    reading: { hdcCounts: program.hdcTurningChainCounts, inverted },
    startsPiece: row.word === 'foundation' || hook.state.piece === NONE || (hook.state.cut && opening),
    stopped: false, leftSaid: false, group: null,
  };
  const count = hook.stitches.count;
  const pendingFrom = count - hook.state.pending;
  if (found.some(({ rule }) => rule === 'leftUnsaid')) passLeftOver(hook, program, index);
  hook.beginRow(index, round);
  faceSide(work, rows);
  workRow(work);
  if (hook.state.pending > 0 && !hook.state.pendingAtStart) settleChains(hook);
  else if (hook.state.pending > 0 && hook.placed === 0 && !hook.state.turned) settleChains(hook);
  if (hook.passedAtStart) for (let place = hook.ahead(); hook.inReach(place); place = hook.ahead()) hook.take(place);
  const piece = hook.piece;
  if (round && piece && !piece.closed && hook.placed > 0 && row.word !== 'foundation') closeEdge(hook, piece, PLACE.roundStart);
  if (!work.stopped && !work.leftSaid && hook.placed > 0 && row.word !== 'step') checkLeftOver(work);
  const first = firstStitch(hook, index, Math.min(count, pendingFrom));
  const worked = reportRow(work, first, rows, round);
  if (row.word !== 'foundation') openRowEnds(hook);
  if (row.side && worked.side !== row.side && hook.placed > 0) report(work, 'doubtful', 'sideSaid', [0, 0], { found: row.side, expected: worked.side });
  return {
    work, row: worked, findings: work.findings,
    worked: row.stated ? statedMade(hook, row.stated, worked) : null,
    said: worked.stated,
  };
}

/** The join that row `index` stands on: of the row before in its section. */
function joinOf({ rows }: Program, index: number): RowWork['join'] {
  const before = rows[index - 1];
  return before && before.section === rows[index]!.section ? (before.body.find((clause) => clause.kind === 'joinAt') ?? null) : null;
}

/** Rows labelled so, rows that say "around", and what follows them in the same section without another label. */
function isRound(program: Program, index: number, hook: Hook, rows: readonly WorkedRow[]): boolean {
  const row = program.rows[index]!;
  if (row.word === 'round' || saysAround(row.body)) return true;
  if (row.word !== 'next' && row.word !== 'setup') return false;
  return rows[index - 1]?.section === row.section && rows[index - 1]!.round && (hook.piece?.closed ?? false);
}

function saysAround(body: readonly Instruction[]): boolean {
  return body.some(
    (clause) =>
      ((clause.kind === 'work' || clause.kind === 'group') && clause.into.at === 'across' && clause.into.word === 'around') ||
      (clause.kind === 'inPattern' && clause.into.at === 'across' && clause.into.word === 'around') ||
      (clause.kind === 'spread' && clause.word === 'around') ||
      (clause.kind === 'evenly' && clause.along === 'around') ||
      (clause.kind === 'repeat' && ((clause.times.kind === 'toEnd' && clause.times.word === 'around') || saysAround(clause.body))),
  );
}

/** The side that a first row names decides how the work faces; a join is made anew for it. */
function faceSide(work: RowWork, rows: readonly WorkedRow[]): void {
  const { hook, row } = work;
  if (!row.side) return;
  const facing = row.side === 'RS' ? 1 : -1;
  if (work.join && hook.state.facing !== facing && hook.state.sameIsAhead) joinAt(work, work.join, facing);
  else if (!hook.piece?.closed && rows.every((other) => other.section !== row.section || other.word === 'foundation' || other.word === 'step')) hook.state.facing = hook.state.turned ? facing : -facing;
}

/** Stitches of the row below that the row passes over in silence: a technical editor would ask. */
function checkLeftOver(work: RowWork): void {
  const { hook, row } = work;
  if (hook.state.turned || hook.below === NONE) return;
  const rest = hook.meshes > 0 ? placesInReach(hook) : hook.reachCount('st');
  if (rest > 0) report(work, 'doubtful', 'leftUnsaid', [0, 0], { found: rest, expected: 0, params: { word: row.word, ...timesThatFit(row.body, rest, work.program.size) } });
}

/** A round that begins anew is worked on the round before: what that left in silence lies under it, and is asked about once. */
function passLeftOver(hook: Hook, { rows }: Program, index: number): void {
  if (rows[index]!.word !== 'round' || rows[index - 1]?.word !== 'round' || rows[index - 1]!.section !== rows[index]!.section) return;
  for (let place = hook.ahead(); place !== NONE && hook.edge.row.at(place) < index - 1; place = hook.ahead()) hook.take(place);
}

/** The row's first stitch: chains made earlier that now stand at its edge belong to it. */
function firstStitch(hook: Hook, index: number, count: number): number {
  let first = count;
  while (first > 0 && hook.stitches.rows.at(first - 1) === index) first--;
  for (let stitch = first; stitch < count; stitch++) hook.stitches.moveToRow(stitch, index);
  return first;
}

/** Rows before that lost their last chains to row `index` end earlier. */
function giveUpChains(rows: WorkedRow[], index: number, first: number, givenUp: GivenUp[]): void {
  for (let row = index - 1; row >= 0 && rows[row]!.end > first; row--) {
    givenUp.push({ by: index, first, row, was: rows[row]! });
    rows[row] = { ...rows[row]!, first: Math.min(rows[row]!.first, first), end: first };
  }
}

function hasOpenChain(body: readonly Instruction[]): boolean {
  return body.some((clause) => (clause.kind === 'chain' && clause.counts === null) || (clause.kind === 'work' && clause.into.at === 'fromHook'));
}

function sameStart(a: Program, b: Program): boolean {
  return a.size === b.size && a.hdcTurningChainCounts === b.hdcTurningChainCounts && a.letters.join() === b.letters.join();
}

function sameRows(a: readonly ProgramRow[], b: readonly ProgramRow[]): number {
  const most = Math.min(a.length, b.length);
  let row = 0;
  while (row < most && sameRow(a[row]!, b[row]!)) row++;
  return row;
}

function sameRow(a: ProgramRow, b: ProgramRow): boolean {
  return (
    a === b ||
    (a.body === b.body && a.section === b.section && a.word === b.word && a.number === b.number && a.side === b.side &&
      a.key.line === b.key.line && a.key.nth === b.key.nth && (a.stated === b.stated || JSON.stringify(a.stated) === JSON.stringify(b.stated)))
  );
}

function sectionsOf(program: Program, rows: readonly WorkedRow[]): Fabric['sections'] {
  return program.sections.map((section, index) => {
    const firstRow = rows.findIndex((row) => row.section === index);
    const endRow = rows.findLastIndex((row) => row.section === index) + 1;
    return { ...section, firstRow: Math.max(0, firstRow), endRow };
  });
}

/** Stitches whose tops are open when everything is worked. */
function openOnEdge(hook: Hook): Int32Array {
  const open: number[] = [];
  for (const piece of hook.pieces) {
    for (const place of hook.edge.order(piece.mark)) {
      if (!hook.edge.isMark(place) && hook.edge.what.at(place) === PLACE.top && hook.isStitch(place) && !hook.stitches.has(hook.edge.stitch.at(place), FLAG.corner)) open.push(hook.edge.stitch.at(place));
    }
  }
  return Int32Array.from(open);
}
