import { STITCHES, stitchRow, type StitchKind } from '../../../engine/craft/stitches.ts';
import { stitchWord, type Terms } from '../../../engine/craft/terms.ts';
import { plainCall, type StitchCall } from '../../../engine/notation/instruction.ts';

/** Where the hook goes into the stitch below. */
export type HookPlace = 'both' | 'frontLoop' | 'backLoop' | 'frontPost' | 'backPost';

/** What is made in the place of a stitch. */
export type StitchChange =
  /** One more in its place; where several places are drawn together, one less together. */
  | { readonly kind: 'increase' }
  /** It and the next together; where several stand in its place, one less there. */
  | { readonly kind: 'decrease' }
  | { readonly kind: 'replace'; readonly stitch: StitchKind; readonly hook: HookPlace }
  /** So many stitches in its place; `chained`: a chain between each two. */
  | { readonly kind: 'group'; readonly stitch: StitchKind; readonly count: number; readonly chained: boolean };

/** Most stitches of a group in one place. */
export const MOST_IN_PLACE = 20;

/** What a stitch can be replaced by: all of the catalogue that take a place and stand on it. */
export const REPLACEMENTS: readonly StitchKind[] = STITCHES.map(({ kind }) => kind).filter((kind) => kind !== 'ring' && kind !== 'ch' && kind !== 'slst' && kind !== 'picot');

/** Whether the hook can go in elsewhere than under both loops: in plain stitches only. */
export function takesHook(stitch: StitchKind): boolean {
  return stitchRow(stitch).legs === 0;
}

/** The stitch that a change makes. */
export function callOf(stitch: StitchKind, hook: HookPlace): StitchCall {
  const call = plainCall(stitch, stitchRow(stitch).legs);
  const own = takesHook(stitch) ? hook : 'both';
  return {
    ...call,
    loop: own === 'frontLoop' ? 'front' : own === 'backLoop' ? 'back' : 'both',
    post: own === 'frontPost' ? 'front' : own === 'backPost' ? 'back' : 'none',
  };
}

const HOOKS: Readonly<Record<HookPlace, (word: string) => string>> = {
  both: (word) => word,
  frontLoop: (word) => `${word} in the front loop`,
  backLoop: (word) => `${word} in the back loop`,
  frontPost: (word) => `FP${word}`,
  backPost: (word) => `BP${word}`,
};

/** A change as a name: "Increase", "Set FPdc", "Set 5 dc in one place". */
export function changeName(change: StitchChange, terms: Terms): string {
  switch (change.kind) {
    case 'increase':
      return 'Increase';
    case 'decrease':
      return 'Decrease';
    case 'replace':
      return `Set ${HOOKS[takesHook(change.stitch) ? change.hook : 'both'](stitchWord(change.stitch, terms))}`;
    case 'group':
      return `Set ${change.count} ${stitchWord(change.stitch, terms)} in one place${change.chained ? ', a chain between' : ''}`;
  }
}
