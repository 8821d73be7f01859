import type { Instruction } from '../notation/instruction.ts';
import { NONE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';
import { amountOf, MOST_STITCHES, report, type RowWork } from './rowWork.ts';
import { putSpace, settleTurningChain } from './turningChain.ts';
import { impliedTurn, settleGroupChains } from './workStitch.ts';

type Mesh = Extract<Instruction, { kind: 'mesh' }>;

/** Places that one mesh stands on: the common mesh of double crochet and two chains (*common practice*). */
export const MESH_PLACES = 3;

/**
 * Works meshes of filet: an open one hangs two chains over two places and sets a double crochet on the third, a solid one sets
 * a double crochet on each. Chains of an open mesh below are places like any other. Runs out of places as any stitch does.
 */
export function workMeshes(work: RowWork, clause: Mesh): void {
  const { hook } = work;
  if (hook.state.piece === NONE || hook.state.cut) {
    report(work, 'wrong', 'noPiece', clause.range);
    return;
  }
  impliedTurn(work);
  if (hook.state.pending > 0 && hook.state.pendingAtStart) settleTurningChain(hook, 'dc', work.reading);
  else settleGroupChains(work);
  const count = amountOf(work, clause.count);
  if (count > MOST_STITCHES) {
    report(work, 'wrong', 'tooManyStitches', clause.range, { found: count, expected: MOST_STITCHES });
    work.stopped = true;
    return;
  }
  for (let done = 0; done < count; done++) {
    const bases: { readonly stitch: number; readonly inSpace: boolean }[] = [];
    while (bases.length < MESH_PLACES) {
      const place = hook.ahead();
      if (!hook.inReach(place)) break;
      const inSpace = hook.edge.run.at(place) !== NONE;
      bases.push({ stitch: hook.take(place), inSpace });
    }
    if (bases.length < MESH_PLACES) {
      report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: count * MESH_PLACES, found: done * MESH_PLACES + bases.length, params: { what: 'mesh' } });
      return;
    }
    hook.meshes++;
    if (clause.mesh === 'open') {
      const first = hook.make('ch', [], 0);
      hook.make('ch', [], 0);
      putSpace(hook, first, first + 2);
    }
    for (const { stitch, inSpace } of clause.mesh === 'open' ? bases.slice(-1) : bases) hook.put(hook.make('dc', [stitch], FLAG.counts | (inSpace ? FLAG.inSpace : 0)));
    hook.state.turned = false;
    hook.state.sameIsAhead = false;
    hook.state.sameBases = [bases.at(-1)!.stitch];
  }
}

const IN_MESHES = new WeakMap<readonly Instruction[], boolean>();

/** Whether a row is of meshes, so that its plain stitches stand on the grid too: one on each place, chains of spaces like stitches. */
export function isOfMeshes(body: readonly Instruction[]): boolean {
  const known = IN_MESHES.get(body);
  if (known !== undefined) return known;
  const found = body.some((node) => node.kind === 'mesh' || ((node.kind === 'repeat' || node.kind === 'forSizes') && isOfMeshes(node.body)));
  IN_MESHES.set(body, found);
  return found;
}

/** Takes the next place of the grid whatever it is; null where none is in reach. */
export function takeOfGrid(hook: Hook): { readonly stitches: readonly number[]; readonly place: number } | null {
  const place = hook.ahead();
  return hook.inReach(place) ? { place, stitches: [hook.take(place)] } : null;
}

/** Places in reach of every kind, chains of spaces one by one: what a row of meshes leaves over. Linear in them. */
export function placesInReach(hook: Hook): number {
  let count = 0;
  const first = hook.ahead();
  for (let place = first; hook.inReach(place); ) {
    count++;
    place = hook.ahead(place);
    if (place === first) break;
  }
  return count;
}

/** Whole meshes among a row's stitches [first, end): its stitches and the chains of its spaces, three to a mesh; null in a row without meshes. */
export function meshesBy(hook: Hook, first: number, end: number): number | null {
  if (hook.meshes === 0) return null;
  let stitches = 0;
  for (let stitch = first; stitch < end; stitch++) if (!hook.stitches.has(stitch, FLAG.turning) && hook.stitches.has(stitch, FLAG.counts | FLAG.space)) stitches++;
  return Math.floor(stitches / MESH_PLACES);
}
