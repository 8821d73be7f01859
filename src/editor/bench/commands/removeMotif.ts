import { removal } from '../../../engine/1-pattern/removal.ts';
import type { Command } from '../benchState.ts';

/** Takes a motif out of the pattern, from every place where it lies. */
export function removeMotif(id: string): Command {
  return ({ pattern, at }) => {
    const motif = pattern.motifs.find((each) => each.id === id);
    return motif ? { label: `Take out ${motif.name}`, at, edits: removal(pattern, { kind: 'motif', motif: id }) } : null;
  };
}
