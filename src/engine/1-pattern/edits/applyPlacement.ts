import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Pattern, Placement } from '../pattern.ts';
import { placementSchema } from '../schema.ts';
import { done, placeFault, refuse, spliced, valueFault, type EditOf } from './outcome.ts';

/** Lays a motif at place `at` of the layers. Refuses an id that is taken, and a motif or row that is not there. */
export function applyInsertPlacement(pattern: Pattern, { at, placement }: EditOf<'insertPlacement'>): Applied {
  const fault = placementFault(pattern, placement) ?? placeFault('A placement', at, pattern.placements.length, LIMITS.placements);
  if (fault) return refuse(fault);
  if (pattern.placements.some((one) => one.id === placement.id)) return refuse(`There is a placement "${placement.id}" already.`);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 0, placement) }, { kind: 'removePlacement', placement: placement.id });
}

/** Replaces the placement of the same id. Refuses a motif or row that is not there. */
export function applySetPlacement(pattern: Pattern, { placement }: EditOf<'setPlacement'>): Applied {
  const at = pattern.placements.findIndex((one) => one.id === placement.id);
  const before = pattern.placements[at];
  if (!before) return refuse(`There is no placement "${placement.id}".`);
  const fault = placementFault(pattern, placement);
  if (fault) return refuse(fault);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 1, placement) }, { kind: 'setPlacement', placement: before });
}

/** Takes a placement off. */
export function applyRemovePlacement(pattern: Pattern, { placement: id }: EditOf<'removePlacement'>): Applied {
  const at = pattern.placements.findIndex((one) => one.id === id);
  const placement = pattern.placements[at];
  if (!placement) return refuse(`There is no placement "${id}".`);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 1) }, { kind: 'insertPlacement', at, placement });
}

function placementFault(pattern: Pattern, placement: Placement): string | null {
  const fault = valueFault('The placement', placementSchema, placement);
  if (fault) return fault;
  if (!pattern.motifs.some((motif) => motif.id === placement.motif)) return `There is no motif "${placement.motif}" to place.`;
  const section = pattern.sections.find((one) => one.id === placement.section);
  if (!section) return `There is no section "${placement.section}" to place a motif on.`;
  if (!section.lines.some((line) => line.kind === 'row' && line.id === placement.row.line)) return `There is no row "${placement.row.line}" in ${section.name || 'the section'} to place a motif on.`;
  return null;
}
