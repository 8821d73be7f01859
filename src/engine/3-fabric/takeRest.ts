import type { Finding } from '../notation/finding.ts';
import { rewind, type Checkpoint, type GivenUp, type Workings } from './checkpoint.ts';
import type { Fabric, WorkedRow } from './fabric.ts';
import type { Hook, Piece } from './hook.ts';
import type { Renumbered } from './sameEdge.ts';

/** All that is known of a fabric while it is worked, row by row. */
export interface Growing {
  readonly hook: Hook;
  readonly checkpoints: Checkpoint[];
  readonly rows: WorkedRow[];
  readonly findings: (readonly Finding[])[];
  readonly unsure: boolean[];
  readonly givenUp: GivenUp[];
}

/**
 * Takes the rest of an old fabric over, from the row on that `growing` has come to, with its numbers as they are now. Returns
 * the stitches that are open at the end; null, with everything as before, where the rest names what is not there any more.
 */
export function takeRest(growing: Growing, old: Fabric, workings: Workings, { stitches, places }: Renumbered): Int32Array | null {
  const { hook } = growing;
  const index = growing.rows.length;
  const [was, now] = [workings.checkpoints[index]!, growing.checkpoints[index]!];
  hook.stitches.addFrom(workings.hook.stitches, was.stitches, was.moves, stitches.of);
  hook.edge.addFrom(workings.hook.edge, was.places, stitches.of, places.of);
  for (const seam of workings.hook.seams.slice(was.seams)) hook.seams.push({ row: seam.row, before: stitches.of(seam.before), after: stitches.of(seam.after) });
  for (const { row, pairs } of workings.hook.closings.slice(was.closings)) hook.closings.push({ row, pairs: pairs.map(([a, b]) => [stitches.of(a), stitches.of(b)] as const) });
  for (const { chains, skipped } of workings.hook.openings.slice(was.openings)) hook.openings.push({ chains: chains.map(stitches.of), skipped: skipped.map(stitches.of) });
  const givenUp = workings.givenUp.filter(({ by }) => by >= index);
  const stays = stitches.stays;
  const ofRow = (row: WorkedRow): WorkedRow =>
    stays ? row : { ...row, first: stitches.of(row.first), end: row.end < was.stitches ? stitches.of(row.end) : row.end + stitches.shift };
  const rows = old.rows.slice(index).map(ofRow);
  const checkpoints = restOfCheckpoints(workings.checkpoints.slice(index), now, { stitches, places });
  const openAtEnd = stays ? old.openAtEnd : old.openAtEnd.map(stitches.of);
  const taken = givenUp.map((given) => ({ ...given, first: stitches.of(given.first), was: given.row < index ? given.was : ofRow(given.was) }));
  if (stitches.lost || places.lost) {
    rewind(hook, now);
    return null;
  }
  for (const given of taken) {
    const report = given.row < index ? growing.rows[given.row]! : given.was;
    growing.givenUp.push({ ...given, was: report });
    if (given.row < index) growing.rows[given.row] = { ...report, first: Math.min(report.first, given.first), end: given.first };
  }
  growing.rows.push(...rows);
  growing.checkpoints.push(...checkpoints);
  growing.unsure.push(...workings.unsure.slice(index + 1));
  growing.findings.push(...workings.findings.slice(index).map((found) => (stitches.shift === 0 || found.length === 0 ? found : found.map((one) => renumbered(one, stitches.shift)))));
  const last = checkpoints[checkpoints.length - 1] ?? now;
  Object.assign(hook, { state: { ...last.state }, pieces: last.pieces.map((piece) => ({ ...piece })) });
  return openAtEnd;
}

/** The checkpoints after the first of `old`, which is `now` in the new fabric. */
function restOfCheckpoints([first, ...rest]: readonly Checkpoint[], now: Checkpoint, { stitches, places }: Renumbered): Checkpoint[] {
  const orders = new Map<Int32Array, Int32Array>(first!.orders.map((order, i) => [order, now.orders[i]!]));
  const sameRings = places.stays;
  const stays = sameRings && stitches.stays;
  const ring = (order: Int32Array): Int32Array => {
    if (sameRings) return order;
    const known = orders.get(order);
    const made = known ?? order.map(places.of);
    if (!known) orders.set(order, made);
    return made;
  };
  return rest.map(({ state, pieces, ...old }) => ({
    state: stays ? state : { ...state, behind: places.of(state.behind), marker: places.of(state.marker), thread: stitches.of(state.thread), sameBases: state.sameBases.map(stitches.of) },
    pieces: stays ? pieces : pieces.map((piece): Piece => {
      const start = stitches.of(piece.foundation[0]);
      return { ...piece, mark: places.of(piece.mark), centre: stitches.of(piece.centre), foundation: [start, start + piece.foundation[1] - piece.foundation[0]] };
    }),
    orders: old.orders.map(ring),
    stitches: old.stitches + stitches.shift,
    moves: old.moves - first!.moves + now.moves,
    places: old.places + places.shift,
    seams: old.seams - first!.seams + now.seams,
    closings: old.closings - first!.closings + now.closings,
    openings: old.openings - first!.openings + now.openings,
  }));
}

function renumbered(found: Finding, shift: number): Finding {
  return found.where.stitch === null ? found : { ...found, where: { ...found.where, stitch: found.where.stitch + shift } };
}
