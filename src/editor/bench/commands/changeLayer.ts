import { layerEdits, type LayerAct } from '../../../engine/4-colour/layers.ts';
import type { Command } from '../benchState.ts';

const LABELS: Readonly<Record<LayerAct['kind'], string>> = {
  order: 'Layer', move: 'Move', copy: 'Copy', lock: 'Lock', unlock: 'Unlock', hide: 'Hide', show: 'Show', remove: 'Take off',
};

/** Does something to a placed motif among the layers. None where there is nothing to do, and no foundation to lie on. */
export function changeLayer(id: string, act: LayerAct): Command {
  return (state) => {
    const { pattern, at } = state;
    const placement = pattern.placements.find((each) => each.id === id);
    const edits = placement ? layerEdits(pattern, state.grids[state.size]!, id, act) : null;
    if (!placement || !edits) return null;
    const name = pattern.motifs.find((motif) => motif.id === placement.motif)?.name ?? 'motif';
    return { label: `${LABELS[act.kind]} ${name}`, at, edits };
  };
}
