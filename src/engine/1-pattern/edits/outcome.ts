import * as v from 'valibot';
import type { Applied, Edit } from '../edit.ts';
import { faultOfIssue } from '../fault.ts';
import type { CellPlace } from '../canonicalCells.ts';
import type { Line, Pattern, RowKey, Section, Version } from '../pattern.ts';

/** An edit of one kind. */
export type EditOf<K extends Edit['kind']> = Extract<Edit, { kind: K }>;

/** The edit is made. */
export function done(pattern: Pattern, inverse: Edit): Applied {
  return { ok: true, pattern, inverse };
}

/** The edit is not made, and why. */
export function refuse(reason: string): Applied {
  return { ok: false, reason };
}

/** Why a value can't stand in a document, in a sentence that begins with `what`; null if it can. */
export function valueFault(what: string, schema: v.GenericSchema, value: unknown): string | null {
  const result = v.safeParse(schema, value, { abortEarly: true });
  if (result.success) return null;
  const fault = faultOfIssue(result.issues[0]);
  return `${what}${fault.path && `, ${fault.path.replaceAll('.', ' ')}`}: found ${fault.found}, expected ${fault.expected}.`;
}

/** Why `more` items can't be put into a list at a place: it is outside the list, or the list would pass its limit; null if they can. */
export function placeFault(what: string, at: number, length: number, limit: number, more = 1): string | null {
  if (!Number.isInteger(at) || at < 0 || at > length) return `${what} can't be put in at place ${at}: there are ${length}.`;
  return length + more > limit ? `${what} can't be put in: there are ${length}, and ${limit} is the most.` : null;
}

export function noSection(id: string): Applied {
  return refuse(`There is no section "${id}".`);
}

/** How a line is named in a refusal: section and the start of its text. */
export function lineWords(section: Section, line: Line): string {
  const text = line.text.length > 30 ? `${line.text.slice(0, 30)}…` : line.text;
  return `“${text}” in ${section.name || 'the section'}`;
}

/** A list with `count` items from `at` on replaced by `items`. */
export function spliced<T>(list: readonly T[], at: number, count: number, ...items: readonly T[]): readonly T[] {
  return [...list.slice(0, at), ...items, ...list.slice(at + count)];
}

/** The pattern with one section replaced. */
export function withSection(pattern: Pattern, at: number, section: Section): Pattern {
  return { ...pattern, sections: spliced(pattern.sections, at, 1, section) };
}

/** What lies on the rows of some lines, in words; null if nothing does. */
export function coloursOn(pattern: Pattern, section: string, lines: ReadonlySet<string>): string | null {
  const on = (place: { readonly section: string; readonly row: RowKey }) => place.section === section && lines.has(place.row.line);
  const placed = pattern.placements.find(on);
  if (placed) return `motif ${motifName(pattern, placed.motif)}`;
  return pattern.cells.some((cell: CellPlace) => on(cell)) ? 'loose cells' : null;
}

/** The name of a motif for a sentence. */
export function motifName(pattern: Pattern, id: string): string {
  const name = pattern.motifs.find((motif) => motif.id === id)?.name;
  return name ? `“${name}”` : `"${id}"`;
}

/** The name of a version for a sentence. */
export function versionName(version: Version): string {
  return version.name ? `“${version.name}”` : `"${version.id}"`;
}

/** The first version that says something of a section, or lays a placement. */
export function versionOf(pattern: Pattern, { section, placement }: { readonly section?: string; readonly placement?: string }): Version | null {
  const isNamed = (version: Version) => version.sections.some((one) => one.section === section || (placement !== undefined && one.placements?.includes(placement)));
  return pattern.versions?.find(isNamed) ?? null;
}
