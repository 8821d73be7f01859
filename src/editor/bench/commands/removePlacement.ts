import type { Command } from '../benchState.ts';

/** Takes a placed motif off; the motif itself stays with the pattern. */
export function removePlacement(id: string): Command {
  return ({ pattern, at }) => {
    const placement = pattern.placements.find((each) => each.id === id);
    if (!placement) return null;
    const name = pattern.motifs.find((motif) => motif.id === placement.motif)?.name ?? 'motif';
    return { label: `Take ${name} off`, at, edits: [{ kind: 'removePlacement', placement: id }] };
  };
}
