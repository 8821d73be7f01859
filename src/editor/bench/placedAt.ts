import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { ColourGrid } from '../../engine/4-colour/colourGrid.ts';
import { placementsAt } from '../../engine/4-colour/placementsAt.ts';

/** The placed motifs that lie over a stitch, the top one first, each with words to reach it by: "Adjust Puffins …". */
export function placedAt(pattern: Pattern, grid: ColourGrid, size: number, stitch: number): readonly { readonly placement: string; readonly says: string }[] {
  const ids = placementsAt(pattern, grid, size, stitch).flatMap((layer) => (layer.kind === 'placement' ? [layer] : []));
  const nameOf = (id: string) => pattern.motifs.find((motif) => motif.id === id)?.name ?? 'the motif';
  return ids.map(({ placement, motif }, i) => {
    const above = ids.slice(0, i).filter((other) => nameOf(other.motif) === nameOf(motif)).length;
    return { placement, says: `Adjust ${nameOf(motif)}${above > 0 ? `, ${above} below` : ''} …` };
  });
}
