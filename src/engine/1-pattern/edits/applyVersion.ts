import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Pattern, Version } from '../pattern.ts';
import { groundLetters, unknownLetter } from '../references.ts';
import { versionSchema } from '../schema.ts';
import { done, placeFault, refuse, spliced, valueFault, versionName, type EditOf } from './outcome.ts';

/** Puts a version in. Refuses an id that is taken, and sections, placements and yarns that are not there. */
export function applyInsertVersion(pattern: Pattern, { at, version }: EditOf<'insertVersion'>): Applied {
  const versions = pattern.versions ?? [];
  const fault = versionFault(pattern, version) ?? placeFault('A version', at, versions.length, LIMITS.versions);
  if (fault) return refuse(fault);
  if (versions.some((one) => one.id === version.id)) return refuse(`There is a version "${version.id}" already.`);
  return done({ ...pattern, versions: spliced(versions, at, 0, version) }, { kind: 'removeVersion', version: version.id });
}

/** Replaces the version of the same id. Refuses sections, placements and yarns that are not there. */
export function applySetVersion(pattern: Pattern, { version }: EditOf<'setVersion'>): Applied {
  const versions = pattern.versions ?? [];
  const at = versions.findIndex((one) => one.id === version.id);
  const before = versions[at];
  if (!before) return refuse(`There is no version "${version.id}".`);
  const fault = versionFault(pattern, version);
  if (fault) return refuse(fault);
  return done({ ...pattern, versions: spliced(versions, at, 1, version) }, { kind: 'setVersion', version: before });
}

/** Takes a version out. A pattern without versions has no list of them. */
export function applyRemoveVersion(pattern: Pattern, { version: id }: EditOf<'removeVersion'>): Applied {
  const versions = pattern.versions ?? [];
  const at = versions.findIndex((one) => one.id === id);
  const version = versions[at];
  if (!version) return refuse(`There is no version "${id}".`);
  const { versions: _, ...rest } = pattern;
  const left = spliced(versions, at, 1);
  return done(left.length > 0 ? { ...rest, versions: left } : rest, { kind: 'insertVersion', at, version });
}

function versionFault(pattern: Pattern, version: Version): string | null {
  const fault = valueFault('The version', versionSchema, version);
  if (fault) return fault;
  for (const { section, placements = [], ground } of version.sections) {
    if (!pattern.sections.some((one) => one.id === section)) return `There is no section "${section}" for version ${versionName(version)}.`;
    const missing = placements.find((id) => !pattern.placements.some((one) => one.id === id && one.section === section));
    if (missing !== undefined) return `There is no placement "${missing}" in that section for version ${versionName(version)} to lay.`;
    const letter = unknownLetter(pattern, groundLetters(ground));
    if (letter) return `The ground of version ${versionName(version)} is of yarn ${letter}, but the pattern has no such yarn.`;
  }
  return null;
}
