import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Pattern, Placement } from '../pattern.ts';
import { placementSchema } from '../schema.ts';
import { done, motifName, placeFault, refuse, spliced, valueFault, versionName, versionOf, type EditOf } from './outcome.ts';

/** Lays a motif at place `at` of the layers. Refuses an id that is taken, a motif or row that is not there, and one that is locked from the start. */
export function applyInsertPlacement(pattern: Pattern, { at, placement }: EditOf<'insertPlacement'>): Applied {
  const fault = placementFault(pattern, placement) ?? placeFault('A placement', at, pattern.placements.length, LIMITS.placements);
  if (fault) return refuse(fault);
  if (placement.locked) return refuse('A placement is put in unlocked; lock it when it lies right.');
  if (pattern.placements.some((one) => one.id === placement.id)) return refuse(`There is a placement "${placement.id}" already.`);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 0, placement) }, { kind: 'removePlacement', placement: placement.id });
}

/**
 * Replaces the placement of the same id. Refuses a motif or row that is not there, to leave the section of a version that
 * lays it, and any change of a locked one but unlocking it. Locking is a change of its own too, so that it can be taken back.
 */
export function applySetPlacement(pattern: Pattern, { placement }: EditOf<'setPlacement'>): Applied {
  const at = pattern.placements.findIndex((one) => one.id === placement.id);
  const before = pattern.placements[at];
  if (!before) return refuse(`There is no placement "${placement.id}".`);
  const fault = placementFault(pattern, placement) ?? lockFault(pattern, before, placement);
  if (fault) return refuse(fault);
  const version = placement.section === before.section ? null : versionOf(pattern, { placement: placement.id });
  if (version) return refuse(`Version ${versionName(version)} lays ${motifName(pattern, before.motif)} in its section; take it out there first.`);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 1, placement) }, { kind: 'setPlacement', placement: before });
}

/** Lays a placement at another place of the layers. Refuses a place outside them, and a locked one. */
export function applyMovePlacement(pattern: Pattern, { placement: id, to }: EditOf<'movePlacement'>): Applied {
  const from = pattern.placements.findIndex((one) => one.id === id);
  const placement = pattern.placements[from];
  if (!placement) return refuse(`There is no placement "${id}".`);
  if (!Number.isInteger(to) || to < 0 || to >= pattern.placements.length) return refuse(`A placement can't be moved to place ${to}: there are ${pattern.placements.length}.`);
  if (placement.locked) return refuse(lockedWords(pattern, placement));
  const inverse = { kind: 'movePlacement', placement: id, to: from } as const;
  if (from === to) return done(pattern, inverse);
  return done({ ...pattern, placements: spliced(spliced(pattern.placements, from, 1), to, 0, placement) }, inverse);
}

/** Takes a placement off. Refuses a locked one, and one that a version lays. */
export function applyRemovePlacement(pattern: Pattern, { placement: id }: EditOf<'removePlacement'>): Applied {
  const at = pattern.placements.findIndex((one) => one.id === id);
  const placement = pattern.placements[at];
  if (!placement) return refuse(`There is no placement "${id}".`);
  if (placement.locked) return refuse(lockedWords(pattern, placement));
  const version = versionOf(pattern, { placement: id });
  if (version) return refuse(`Version ${versionName(version)} lays ${motifName(pattern, placement.motif)}; take it out there first.`);
  return done({ ...pattern, placements: spliced(pattern.placements, at, 1) }, { kind: 'insertPlacement', at, placement });
}

function lockFault(pattern: Pattern, before: Placement, after: Placement): string | null {
  const isLocked = before.locked ?? false;
  if (!isLocked && !after.locked) return null;
  const { locked: _, ...was } = before;
  const { locked: __, ...is } = after;
  if (isSame(was, is)) return null;
  return isLocked ? lockedWords(pattern, before) : `${motifName(pattern, before.motif)} can't be changed and locked in one step; lock it when it is changed.`;
}

function lockedWords(pattern: Pattern, placement: Placement): string {
  return `${motifName(pattern, placement.motif)} is locked where it lies; unlock it first.`;
}

/** Whether two values of a document are the same, whatever the order of their fields. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
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
