import type { Finding } from '../notation/finding.ts';
import type { Instruction } from '../notation/instruction.ts';
import type { Program, ProgramRow } from '../2-construct/program.ts';
import { settleChains } from './chains.ts';
import { resume, takeCheckpoint, type Checkpoint, type Workings } from './checkpoint.ts';
import { NONE, PLACE } from './edge.ts';
import { FLAG, type Fabric, type WorkedRow } from './fabric.ts';
import { Hook } from './hook.ts';
import { closeEdge, joinAt } from './joins.ts';
import { openRowEnds } from './rowEnds.ts';
import { checkStated, reportRow, statedMade } from './rowReport.ts';
import { report, type RowWork } from './rowWork.ts';
import { placesInReach } from './workMeshes.ts';
import { questioned, unsureAfter, unsureAt } from './unsureRows.ts';
import { timesThatFit } from './timesThatFit.ts';
import { workRow } from './workRow.ts';

const WORKINGS = new WeakMap<Fabric, { readonly program: Program; readonly workings: Workings }>();

/**
 * Works a program stitch by stitch on the edge of the fabric. With the fabric of an earlier program, rows that are the same
 * from the start on are kept and the work is taken up at the first row that differs. Never throws for what a pattern says:
 * what can't be worked is a finding, and work goes on. Linear in stitches and places.
 */
export function work(program: Program, previous: Fabric | null = null): Fabric {
  const known = previous ? WORKINGS.get(previous) : undefined;
  if (previous && known?.program === program) return previous;
  const same = known && sameStart(known.program, program) ? sameRows(known.program.rows, program.rows) : 0;
  const from = known ? Math.min(same, known.workings.checkpoints.length - 1) : 0;
  const start = known && from > 0 ? known.workings.checkpoints[from]! : null;

  const hook = start ? resume(known!.workings.hook, start, from) : new Hook();
  const checkpoints: Checkpoint[] = start ? known!.workings.checkpoints.slice(0, from) : [];
  const findings: (readonly Finding[])[] = start ? known!.workings.findings.slice(0, from) : [];
  const rows: WorkedRow[] = start ? previous!.rows.slice(0, from) : [];
  if (start?.lastRow) rows[from - 1] = start.lastRow;
  const unsure: boolean[] = start ? known!.workings.unsure.slice(0, from + 1) : [false];

  let worker = hook;
  for (let index = from; index < program.rows.length; index++) {
    const checkpoint = takeCheckpoint(worker, checkpoints[index - 1], rows[index - 1] ?? null);
    checkpoints.push(checkpoint);
    const done = workOne(worker, program, index, rows, checkpoint, findings[index - 1] ?? []);
    worker = done.hook;
    const row = program.rows[index]!;
    const doubt = unsureAt(row, unsure[index] ?? false);
    unsure[index + 1] = unsureAfter(row, doubt, done.said !== null && done.worked === done.said);
    findings.push(questioned(done.findings, row, doubt));
    giveUpChains(rows, index, done.row.first);
    rows.push(done.row);
  }
  checkpoints.push(takeCheckpoint(worker, checkpoints[checkpoints.length - 1], rows[rows.length - 1] ?? null));

  const fabric: Fabric = {
    ...worker.stitches.finish(),
    rows,
    sections: sectionsOf(program, rows),
    seams: worker.seams.slice(),
    closings: worker.closings.slice(),
    openAtEnd: openAtEnd(worker),
    findings: [...program.findings, ...findings.flat()],
  };
  WORKINGS.set(fabric, { program, workings: { hook: worker, checkpoints, findings, unsure } });
  return fabric;
}

/** Works one row; where the stated count shows that the turning chain was meant the other way, that way. */
function workOne(hook: Hook, program: Program, index: number, rows: readonly WorkedRow[], checkpoint: Checkpoint, before: readonly Finding[]): Attempt {
  const row = program.rows[index]!;
  const stated = row.stated;
  const first = workOnce(hook, program, index, rows, false, before);
  if (!stated || first.worked === null || first.worked === first.said || !hasOpenChain(row.body)) return finish(first, stated);
  const second = workOnce(resume(hook, checkpoint, index), program, index, rows, true, before);
  return finish(second.worked === second.said ? second : first, stated);
}

function finish(done: Attempt, stated: ProgramRow['stated']): Attempt {
  if (stated) checkStated(done.work, stated, done.row);
  return done;
}

interface Attempt {
  readonly hook: Hook;
  readonly work: RowWork;
  readonly row: WorkedRow;
  readonly findings: Finding[];
  /** What was made in the unit of the stated count, and that count; null without one. */
  readonly worked: number | null;
  readonly said: number | null;
}

function workOnce(hook: Hook, program: Program, index: number, rows: readonly WorkedRow[], inverted: boolean, found: readonly Finding[]): Attempt {
  const row = program.rows[index]!;
  const before = program.rows[index - 1];
  const round = isRound(program, index, hook, rows);
  const join = before && before.section === row.section ? (before.body.find((clause) => clause.kind === 'joinAt') ?? null) : null;
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
    hook, work, row: worked, findings: work.findings,
    worked: row.stated ? statedMade(hook, row.stated, worked) : null,
    said: worked.stated,
  };
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
  for (let stitch = first; stitch < count; stitch++) hook.stitches.rows.set(stitch, index);
  return first;
}

/** Rows before that lost their last chains to row `index` end earlier. */
function giveUpChains(rows: WorkedRow[], index: number, first: number): void {
  for (let row = index - 1; row >= 0 && rows[row]!.end > first; row--) rows[row] = { ...rows[row]!, first: Math.min(rows[row]!.first, first), end: first };
}

function hasOpenChain(body: readonly Instruction[]): boolean {
  return body.some((clause) => (clause.kind === 'chain' && clause.counts === null) || (clause.kind === 'work' && clause.into.at === 'fromHook'));
}

function sameStart(a: Program, b: Program): boolean {
  return a.size === b.size && a.hdcTurningChainCounts === b.hdcTurningChainCounts && a.letters.join() === b.letters.join();
}

function sameRows(a: readonly ProgramRow[], b: readonly ProgramRow[]): number {
  const most = Math.min(a.length, b.length);
  for (let i = 0; i < most; i++) {
    const [x, y] = [a[i]!, b[i]!];
    const same =
      x === y ||
      (x.body === y.body && x.section === y.section && x.word === y.word && x.number === y.number && x.side === y.side &&
        x.key.line === y.key.line && x.key.nth === y.key.nth && JSON.stringify(x.stated) === JSON.stringify(y.stated));
    if (!same) return i;
  }
  return most;
}

function sectionsOf(program: Program, rows: readonly WorkedRow[]): Fabric['sections'] {
  return program.sections.map((section, index) => {
    const firstRow = rows.findIndex((row) => row.section === index);
    const endRow = rows.findLastIndex((row) => row.section === index) + 1;
    return { ...section, firstRow: Math.max(0, firstRow), endRow };
  });
}

/** Stitches whose tops are open when everything is worked. */
function openAtEnd(hook: Hook): Int32Array {
  const open: number[] = [];
  for (const piece of hook.pieces) {
    for (const place of hook.edge.order(piece.mark)) {
      if (!hook.edge.isMark(place) && hook.edge.what.at(place) === PLACE.top && hook.isStitch(place) && !hook.stitches.has(hook.edge.stitch.at(place), FLAG.corner)) open.push(hook.edge.stitch.at(place));
    }
  }
  return Int32Array.from(open);
}
