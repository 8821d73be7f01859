import type { Instruction, Stated } from '../../../src/engine/notation/instruction.ts';

/** Instructions with every range put to `[0, 0]`, for comparing what was read with what was written. */
export function withoutRanges(body: readonly Instruction[]): Instruction[] {
  return body.map((node) => {
    const bare = { ...node, range: [0, 0] as const };
    return bare.kind === 'repeat' || bare.kind === 'group' ? { ...bare, body: withoutRanges(bare.body) } : bare;
  });
}

/** A stated count with its range put to `[0, 0]`. */
export function statedWithoutRange(stated: Stated | null): Stated | null {
  return stated && { ...stated, range: [0, 0] };
}
