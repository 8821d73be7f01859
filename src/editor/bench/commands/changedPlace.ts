import type { Instruction } from '../../../engine/notation/instruction.ts';
import { stitchRow } from '../../../engine/craft/stitches.ts';
import { countStitches } from '../../../engine/readings/words/countStitches.ts';
import type { Refused } from './isolateStitch.ts';
import { callOf, type StitchChange } from './stitchChange.ts';

type Work = Extract<Instruction, { kind: 'work' }>;
type Placed = Extract<Instruction, { kind: 'work' | 'group' }>;

/** The clauses in the place of one, and by how many stitches they are more; `'next'` where the next place is needed too. */
export interface ChangedPlace {
  readonly clauses: readonly Instruction[];
  readonly more: number;
}

/** Changes the stitch number `inside` of one place. */
export function changedPlace(one: Placed, inside: number, change: StitchChange): ChangedPlace | Refused | 'next' {
  if (one.kind === 'work' && one.stitch.together > 1) return changedTogether(one, change);
  const stitches = one.kind === 'work' ? [{ ...one, into: { at: 'same' } } as const] : one.body;
  let at = inside;
  const index = stitches.findIndex((part) => {
    const count = countStitches(part, 0)!;
    if (at < count) return true;
    at -= count;
    return false;
  });
  const part = stitches[index];
  if (part?.kind !== 'work') return { reason: 'Only stitches can be changed here, not the chains between them.' };
  const all = stitches.reduce((sum, each) => sum + (each.kind === 'work' ? Number(each.each) : 0), 0);
  if (change.kind === 'decrease' && all === 1) return one.kind === 'work' ? 'next' : { reason: 'The place holds this one stitch and chains: write it in the row’s words.' };
  const made = changedPart(part, at, change);
  return { clauses: [inPlace([...stitches.slice(0, index), ...made, ...stitches.slice(index + 1)], one)], more: sum(made) - Number(part.each) };
}

function changedPart(part: Work, at: number, change: StitchChange): readonly Instruction[] {
  const each = Number(part.each);
  const run = (count: number): readonly Instruction[] => (count > 0 ? [{ ...part, each: count }] : []);
  switch (change.kind) {
    case 'increase':
      return run(each + 1);
    case 'decrease':
      return run(each - 1);
    case 'replace':
      return [...run(at), { ...part, stitch: callOf(change.stitch, change.hook), each: 1 }, ...run(each - at - 1)];
    case 'group': {
      const single: Work = { ...part, stitch: callOf(change.stitch, 'both'), each: 1 };
      const chain: Instruction = { kind: 'chain', count: 1, counts: null, range: [0, 0] };
      const set = change.chained ? Array.from({ length: change.count * 2 - 1 }, (_, i) => (i % 2 === 0 ? single : chain)) : [{ ...single, each: change.count }];
      return [...run(at), ...set, ...run(each - at - 1)];
    }
  }
}

/** Stitches in one place as a clause: several of a kind are told as such. */
function inPlace(stitches: readonly Instruction[], one: Placed): Instruction {
  const [only] = stitches;
  if (stitches.length === 1 && only?.kind === 'work') return { ...only, into: one.into };
  return { kind: 'group', body: stitches, into: one.into, range: [0, 0] };
}

function sum(clauses: readonly Instruction[]): number {
  return clauses.reduce((total, clause) => total + countStitches(clause, 0)!, 0);
}

/** Places that are drawn together: one less together and one by itself; another stitch over the same places. */
function changedTogether(one: Work, change: StitchChange): ChangedPlace | Refused | 'next' {
  const { stitch, into } = one;
  if (Number(one.each) !== 1 || into.at !== 'next') return { reason: 'The place is worked in twice, drawn together: write it in the row’s words.' };
  switch (change.kind) {
    case 'increase': {
      const single: Work = { ...one, stitch: { ...stitch, together: 1 } };
      if (stitch.together === 2) return { clauses: [{ ...single, into: { ...into, count: 2 } }], more: 1 };
      return { clauses: [{ ...one, stitch: { ...stitch, together: stitch.together - 1 } }, single], more: 1 };
    }
    case 'decrease':
      return 'next';
    case 'replace':
      if (stitchRow(change.stitch).legs > 0) return { reason: 'That stitch can’t draw several together: take the decrease back first.' };
      return { clauses: [{ ...one, stitch: { ...callOf(change.stitch, change.hook), together: stitch.together } }], more: 0 };
    case 'group':
      return { reason: 'Several places are drawn together here: take the decrease back first.' };
  }
}

/** Two places drawn together to one stitch. */
export function drawnTogether(one: Placed, other: Placed): ChangedPlace | Refused {
  const plain = one.kind === 'work' && other.kind === 'work' && Number(one.each) === 1 && Number(other.each) === 1 && one.into.at === 'next' && other.into.at === 'next' && one.into.what === other.into.what;
  if (!plain || one.stitch.legs > 0) return { reason: 'The next one is no plain stitch in a place of its own, so that the two can’t be worked together.' };
  const { together: first, ...call } = one.stitch;
  const { together: second, ...otherCall } = other.stitch;
  if (JSON.stringify(call) !== JSON.stringify(otherCall)) return { reason: 'The next one is another stitch, so that the two can’t be worked together.' };
  return { clauses: [{ ...one, stitch: { ...one.stitch, together: first + second } }], more: -1 };
}
