import type { Motif } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** Takes a motif into the pattern. None where it has one of that id already. */
export function addMotif(motif: Motif): Command {
  return ({ pattern, at }) => {
    if (pattern.motifs.some((each) => each.id === motif.id)) return null;
    return { label: `New motif ${motif.name}`, at, edits: [{ kind: 'insertMotif', at: pattern.motifs.length, motif }] };
  };
}
