import type { Edit } from '../1-pattern/edit.ts';
import type { Pattern, Placement } from '../1-pattern/pattern.ts';
import { removal } from '../1-pattern/removal.ts';
import type { ColourGrid } from './colourGrid.ts';

/** Something to do with one placement among the layers. */
export type LayerAct =
  /** Over or under the next layer of its section, or over or under all of them. */
  | { readonly kind: 'order'; readonly to: 'up' | 'down' | 'top' | 'bottom' }
  | { readonly kind: 'move'; readonly rowsUp: number; readonly stitchesRight: number }
  /** A copy that lies moved, right over the original. */
  | { readonly kind: 'copy'; readonly newId: string; readonly rowsUp: number; readonly stitchesRight: number }
  | { readonly kind: 'lock' }
  | { readonly kind: 'unlock' }
  | { readonly kind: 'hide' }
  | { readonly kind: 'show' }
  | { readonly kind: 'remove' };

/**
 * The edits that do something with a placement; null where there is nothing to do: no such placement, no layer to pass, no
 * row to go to, locked already. What is locked is left to the edits to refuse, with their reason.
 */
export function layerEdits(pattern: Pattern, grid: ColourGrid, id: string, act: LayerAct): readonly Edit[] | null {
  const at = pattern.placements.findIndex((one) => one.id === id);
  const placement = pattern.placements[at];
  if (!placement) return null;
  const { locked, hidden, ...open } = placement;
  const set = (one: Placement): readonly Edit[] => [{ kind: 'setPlacement', placement: one }];
  switch (act.kind) {
    case 'order': {
      const to = layerTo(pattern, at, act.to);
      return to === null ? null : [{ kind: 'movePlacement', placement: id, to }];
    }
    case 'move': {
      const moved = movedPlacement(placement, grid, act.rowsUp, act.stitchesRight);
      return moved && (act.rowsUp !== 0 || act.stitchesRight !== 0) ? set(moved) : null;
    }
    case 'copy': {
      const moved = movedPlacement(open, grid, act.rowsUp, act.stitchesRight);
      return moved && [{ kind: 'insertPlacement', at: at + 1, placement: { ...moved, id: act.newId } }];
    }
    case 'lock':
      return locked ? null : set({ ...placement, locked: true });
    case 'unlock':
      return locked ? set(hidden ? { ...open, hidden } : open) : null;
    case 'hide':
      return hidden ? null : set({ ...placement, hidden: true });
    case 'show':
      return hidden ? set(locked ? { ...open, locked } : open) : null;
    case 'remove':
      return removal(pattern, { kind: 'placement', placement: id });
  }
}

/** The place that a layer goes to; layers of other sections are passed over. Null where it is there already. */
function layerTo(pattern: Pattern, at: number, to: 'up' | 'down' | 'top' | 'bottom'): number | null {
  const { section } = pattern.placements[at]!;
  const layers = pattern.placements.flatMap((one, i) => (one.section === section ? [i] : []));
  const own = layers.indexOf(at);
  const next = to === 'up' ? layers[own + 1] : to === 'down' ? layers[own - 1] : to === 'top' ? layers.at(-1) : layers[0];
  return next === undefined || next === at ? null : next;
}

/** A placement moved up and to the right as seen on the right side; null where there is no row to go to. */
function movedPlacement(placement: Placement, grid: ColourGrid, rowsUp: number, stitchesRight: number): Placement | null {
  const rows = grid.rows.of(placement.section);
  const at = rows.indexOf(grid.rows.indexOf(placement.section, placement.row));
  const row = at < 0 ? undefined : rows[at + rowsUp];
  if (row === undefined) return null;
  const isInward = placement.align === 'right' && (placement.anchor ?? 'row') === 'row';
  return { ...placement, row: grid.fabric.rows[row]!.key, offset: placement.offset + (isInward ? -stitchesRight : stitchesRight) };
}
