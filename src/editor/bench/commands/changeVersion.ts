import type { SectionVersion, Version } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';
import { freshIds } from './freshIds.ts';

/** Puts a new version beside the pattern; it has everything as the pattern has it but for the sections told. */
export function addVersion(name: string, sections: readonly SectionVersion[] = []): Command {
  return ({ pattern, at }) => {
    const versions = pattern.versions ?? [];
    const used = versions.map((each) => each.id);
    const id = freshIds(pattern, 'version-', versions.length + 1).find((each) => !used.includes(each))!;
    return { label: `New version ${name}`, at, edits: [{ kind: 'insertVersion', at: versions.length, version: { id, name, sections } }] };
  };
}

/** Gives a version another name. None for an empty one. */
export function renameVersion(id: string, name: string): Command {
  return ({ pattern, at }) => {
    const before = pattern.versions?.find((each) => each.id === id);
    if (!before || name === '' || name === before.name) return null;
    return { label: `Rename version to ${name}`, at, edits: [{ kind: 'setVersion', version: { ...before, name } }] };
  };
}

export function removeVersion(id: string): Command {
  return ({ pattern, at }) => {
    const before = pattern.versions?.find((each) => each.id === id);
    return before ? { label: `Take out version ${before.name}`, at, edits: [{ kind: 'removeVersion', version: id }] } : null;
  };
}

/** What one section has in a version; null for what it has in the pattern. */
export function setSectionVersion(id: string, section: string, told: Omit<SectionVersion, 'section'> | null): Command {
  return ({ pattern, at }) => {
    const before = pattern.versions?.find((each) => each.id === id);
    const owner = pattern.sections.find((each) => each.id === section);
    if (!before || !owner) return null;
    const others = before.sections.filter((each) => each.section !== section);
    const version: Version = { ...before, sections: told ? [...others, { section, ...told }] : others };
    if (JSON.stringify(version) === JSON.stringify(before)) return null;
    return { label: `${owner.name.toLowerCase()} in ${before.name}`.replace(/^./, (first) => first.toUpperCase()), at, edits: [{ kind: 'setVersion', version }] };
  };
}
