import { stitchRow } from '../../craft/stitches.ts';
import { stitchWord } from '../../craft/terms.ts';
import type { Terms } from '../../craft/terms.ts';
import type { Instruction, StitchCall } from '../../notation/instruction.ts';
import { writeStitch } from '../../notation/writeStitch.ts';

/** A stitch of several parts as the rows name it, and how it is made. */
export interface SpecialWords {
  readonly name: string;
  readonly meaning: string;
}

/** How stitches of several legs are made (*common practice*); null for those that need no words. */
function meaningOf(call: StitchCall, terms: Terms): string | null {
  const row = stitchRow(call.kind);
  const legKind = call.legKind ?? row.legKind;
  const leg = legKind === null ? '' : stitchWord(legKind, terms);
  const ss = stitchWord('slst', terms);
  switch (call.kind) {
    case 'bobble':
      return `${call.legs} ${leg} worked together at their tops, all in one st`;
    case 'cluster':
      return `${call.legs} ${leg} worked together at their tops`;
    case 'popcorn':
      return `${call.legs} ${leg} in one st; drop the loop, put the hook through the first of them, take up the loop and draw it through`;
    case 'puff':
      return `yarn over and draw up a long loop ${call.legs} times in one st; yarn over and draw through all loops`;
    case 'shell':
      return `${call.legs} ${leg} all in one place`;
    case 'vst':
      return `${leg}, 1 chain and ${leg} all in one place`;
    case 'picot':
      return `${call.legs} chains closed by a ${ss} in the top of the st just made`;
    default:
      return null;
  }
}

/** The special stitches that rows use, each once, in the order in which they come. */
export function specialWords(bodies: readonly (readonly Instruction[])[], terms: Terms): readonly SpecialWords[] {
  const found = new Map<string, string>();
  const visit = (body: readonly Instruction[]): void => {
    for (const node of body) {
      if (node.kind === 'repeat' || node.kind === 'group' || node.kind === 'forSizes') visit(node.body);
      if (node.kind !== 'work') continue;
      const call: StitchCall = { ...node.stitch, loop: 'both', post: 'none', spike: 0 };
      const meaning = meaningOf(call, terms);
      if (meaning !== null) found.set(writeStitch(call, terms), meaning);
    }
  };
  bodies.forEach(visit);
  return [...found].map(([name, meaning]) => ({ name, meaning }));
}
