import { stitchCode, stitchRow, type StitchKind } from '../craft/stitches.ts';
import { NONE } from './edge.ts';
import { FLAG } from './fabric.ts';
import type { Hook } from './hook.ts';

/** How chains at the start of a row are meant where the pattern doesn't say. */
export interface ChainReading {
  readonly hdcCounts: boolean;
  /** Turns the rule round for this row: tried when the stated count asks for it. */
  readonly inverted: boolean;
}

/**
 * Whether `chains` chains before a first stitch of `kind` count as a stitch: what the pattern says, else never before single
 * crochet, before half double crochet as set, before taller stitches when they reach its height (published lessons of a
 * crochet guild, 1997).
 */
export function turningChainCounts(kind: StitchKind, chains: number, said: 'stitch' | 'no' | 'each' | null, reading: ChainReading): boolean {
  if (said === 'stitch') return true;
  if (said === 'no' || said === 'each') return false;
  const row = stitchRow(kind);
  if (row.turningChainCounts === 'no' || chains < 2) return false;
  const rule = chains >= row.turningChains && (row.turningChainCounts === 'yes' || reading.hdcCounts);
  return rule !== reading.inverted;
}

/**
 * Decides what the pending chains at a row's start are, now that the first stitch (`kind`) is known: a turning chain that
 * counts takes its base and puts its top on the edge; one that doesn't is no place. Chains beyond the stitch's height hang
 * as a chain space. Returns whether the chain counts as a stitch.
 */
export function settleTurningChain(hook: Hook, kind: StitchKind, reading: ChainReading): boolean {
  const { state, stitches } = hook;
  const chains = state.pending;
  if (chains === 0) return false;
  const first = stitches.count - chains;
  const counts = turningChainCounts(kind, chains, state.pendingCounts, reading);
  const height = Math.min(chains, Math.max(1, stitchRow(kind).turningChains));
  state.pending = 0;
  for (let chain = first; chain < first + height; chain++) stitches.mark(chain, FLAG.turning);
  if (counts) {
    const base = hook.takeNext('st');
    state.sameBases = base ? base.stitches : [];
    state.sameIsAhead = false;
    const top = first + height - 1;
    stitches.mark(top, FLAG.counts);
    if (base) stitches.standOn(top, base.stitches[0]!);
    hook.put(top);
  }
  if (chains > height && state.pendingCounts !== 'stitch') putSpace(hook, first + height, first + chains);
  return counts;
}

/** Puts chains [first, end) on the edge as one chain space. */
export function putSpace(hook: Hook, first: number, end: number): void {
  let run = spaceGoingOn(hook, first);
  for (let chain = first; chain < end; chain++) {
    hook.stitches.mark(chain, FLAG.space);
    const place = hook.put(chain, undefined, run);
    if (run === NONE) {
      run = place;
      hook.edge.run.set(place, run);
    }
  }
}

/** The space that chains from `first` on belong to already: the one before a picot that hangs in its middle; else NONE. */
function spaceGoingOn({ stitches, edge, state, lastPut, row }: Hook, first: number): number {
  let before = first - 1;
  while (before >= 0 && stitches.code(before) === stitchCode('picot')) before--;
  if (before < 0 || before === first - 1 || lastPut === NONE || state.behind !== lastPut || edge.stitch.at(lastPut) !== before) return NONE;
  return stitches.rows.at(before) === row ? edge.run.at(lastPut) : NONE;
}
