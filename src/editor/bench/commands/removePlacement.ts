import { removal } from '../../../engine/1-pattern/removal.ts';
import type { Command } from '../benchState.ts';

/** Takes a placed motif off, out of the versions that lay it too; the motif itself stays with the pattern. */
export function removePlacement(id: string): Command {
  return ({ pattern, at }) => {
    const placement = pattern.placements.find((each) => each.id === id);
    if (!placement) return null;
    const name = pattern.motifs.find((motif) => motif.id === placement.motif)?.name ?? 'motif';
    return { label: `Take ${name} off`, at, edits: removal(pattern, { kind: 'placement', placement: id }) };
  };
}
