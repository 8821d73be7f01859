import type { Placement, PlacementOfSize } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** Lays a placed motif otherwise, in all sizes. No step where nothing changes. */
export function setPlacement(placement: Placement): Command {
  return ({ pattern, at }) => {
    const before = pattern.placements.find((each) => each.id === placement.id);
    if (!before || JSON.stringify(before) === JSON.stringify(placement)) return null;
    const name = pattern.motifs.find((motif) => motif.id === placement.motif)?.name ?? 'motif';
    return { label: `Lay ${name} otherwise`, at, edits: [{ kind: 'setPlacement', placement }] };
  };
}

/** The placement with something otherwise in one size only. What is the same as in all sizes is not said. */
export function inOneSize(placement: Placement, sizes: number, size: number, change: PlacementOfSize): Placement {
  const { bySize, ...common } = placement;
  const told = Array.from({ length: sizes }, (_, i) => bySize?.[i] ?? null);
  const entries = Object.entries({ ...told[size], ...change }).filter(([field, value]) => value !== (field === 'leftOut' ? false : field === 'rowsUp' ? 0 : (common as Readonly<Record<string, unknown>>)[field]));
  told[size] = entries.length > 0 ? (Object.fromEntries(entries) as PlacementOfSize) : null;
  return told.some((one) => one !== null) ? { ...common, bySize: told } : common;
}
