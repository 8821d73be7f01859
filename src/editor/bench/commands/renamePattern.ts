import type { Command } from '../benchState.ts';

/** Gives the pattern another title. An empty title or the same one is no step. */
export function renamePattern(title: string): Command {
  return ({ pattern, at }) => {
    const name = title.trim();
    if (name === '' || name === pattern.title) return null;
    return { label: `Rename to ${name}`, at, edits: [{ kind: 'set', field: 'title', value: name }] };
  };
}
