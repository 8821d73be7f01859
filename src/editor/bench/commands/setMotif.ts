import type { Motif } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** Draws a motif of the pattern otherwise, wherever it is placed. No step where nothing changes. */
export function setMotif(motif: Motif, label: string): Command {
  return ({ pattern, at }) => {
    const before = pattern.motifs.find((each) => each.id === motif.id);
    if (!before || JSON.stringify(before) === JSON.stringify(motif)) return null;
    return { label: `${label} ${before.name}`, at, edits: [{ kind: 'setMotif', motif }] };
  };
}
