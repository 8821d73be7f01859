import type { StitchKind } from '../../craft/stitches.ts';
import { plainCall, type Amount, type Instruction, type StitchCall } from '../../notation/instruction.ts';

/*
 * Clauses that recipes are made of, as instructions in US terms. A count of 0 in every size drops out when a line is made.
 */

const range = [0, 0] as const;

/** `sc in next 6 sts`; a call for other loops, posts or stitches drawn together. */
export function next(stitch: StitchKind | StitchCall, count: Amount): Instruction {
  return { kind: 'work', stitch: typeof stitch === 'string' ? plainCall(stitch) : stitch, each: 1, into: { at: 'next', count, what: 'st' }, range };
}

/** `2 sc in each of next 3 sts`. */
export function nextEach(stitch: StitchKind, each: number, count: Amount): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each, into: { at: 'next', count, what: 'st' }, range };
}

/** `sc in each st across`, `… around`, `… to last 2 sts`. */
export function across(stitch: StitchKind | StitchCall, word: 'across' | 'around' | 'end' = 'across', except: Amount = 0): Instruction {
  return { kind: 'work', stitch: typeof stitch === 'string' ? plainCall(stitch) : stitch, each: 1, into: { at: 'across', except, what: 'st', word }, range };
}

/** `2 sc in each st around`. */
export function acrossEach(stitch: StitchKind, each: number, word: 'across' | 'around'): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each, into: { at: 'across', except: 0, what: 'st', word }, range };
}

/** `sc2tog` so many times: draws `together` stitches into one. */
export function together(stitch: StitchKind, count: number, times: Amount): Instruction {
  return next({ ...plainCall(stitch), together: count }, times);
}

/** `sc in same st`. */
export function same(stitch: StitchKind, each = 1): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each, into: { at: 'same' }, range };
}

/** `sc in next unworked st`: beyond the end of the row below. */
export function unworked(stitch: StitchKind, count: Amount): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'open', count, word: 'unworked' }, range };
}

/** `sl st in next st of the leg`. */
export function intoSection(stitch: StitchKind, name: string): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'section', name, count: 1 }, range };
}

/** `sc in next 8 row ends`: the side of what was worked flat. */
export function nextRowEnds(stitch: StitchKind, count: Amount): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'next', count, what: 'rowEnd' }, range };
}

/** `sl st the toe closed`: a ring laid flat and joined through both layers. */
export function closeUp(name: string, by: 'sewn' | 'slst'): Instruction {
  return { kind: 'seam', closes: { name, by }, range };
}

/** `sc in next ch-1 sp`. */
export function inSpace(stitch: StitchKind, loops: number): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'next', count: 1, what: 'sp', loops }, range };
}

/** `6 sc in ring`. */
export function inRing(stitch: StitchKind, each: Amount): Instruction {
  return { kind: 'work', stitch: plainCall(stitch), each, into: { at: 'ring' }, range };
}

/** `sc in 2nd ch from hook and in each ch across`. */
export function alongChain(stitch: StitchKind, nth: number): readonly Instruction[] {
  return [
    { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'fromHook', nth }, range },
    { kind: 'work', stitch: plainCall(stitch), each: 1, into: { at: 'across', except: 0, what: 'ch', word: 'across' }, range },
  ];
}

/** `ch 1`; what the pattern says of its counting. */
export function chain(count: Amount, counts: 'stitch' | 'no' | 'each' | null = null): Instruction {
  return { kind: 'chain', count, counts, range };
}

/** `skip next 2 sts`. */
export function skip(count: Amount, what: 'st' | 'slst' = 'st'): Instruction {
  return { kind: 'skip', count, what, range };
}

/** `(…) 2 times`. */
export function times(count: Amount, body: readonly Instruction[], style: 'paren' | 'star' = 'paren'): Instruction {
  return { kind: 'repeat', body, times: { kind: 'times', times: count }, style, range };
}

/** `*…; rep from * across`. */
export function toEnd(body: readonly Instruction[], word: 'across' | 'around' | 'end', except: Amount = 0): Instruction {
  return { kind: 'repeat', body, times: { kind: 'toEnd', except, word }, style: 'star', range };
}

/** `Leave 8 unworked`, `Leave the rest unworked`. */
export function leave(count: Amount | 'rest'): Instruction {
  return { kind: 'leave', count, range };
}

/** `with A`. */
export function withYarn(letter: string): Instruction {
  return { kind: 'yarn', letter, word: 'with', range };
}

/** `join C with a sl st in the 12th st before the seam`. */
export function joinBeforeSeam(nth: Amount, yarn: string | null): Instruction {
  return { kind: 'joinAt', nth, from: 'beforeSeam', yarn, range };
}

/** `join C with a sl st in the 1st st of the opening`. */
export function joinAtOpening(nth: Amount, yarn: string | null): Instruction {
  return { kind: 'joinAt', nth, from: 'opening', yarn, range };
}

/** Clauses without numbers: `turn`, `fasten off`, `join to form a ring` and their like. */
export function plain(kind: 'turn' | 'skipSeam' | 'ring' | 'joinRing' | 'otherSide' | 'seam' | 'fastenOff' | 'drawThrough'): Instruction {
  return { kind, range };
}

/** `join with sl st in first st`. */
export function joinRound(): Instruction {
  return { kind: 'join', at: 'first', range };
}
