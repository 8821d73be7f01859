import type { Yarn } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** Gives the pattern these yarns in the place of its own. No step where they are the same. */
export function setYarns(yarns: readonly Yarn[], label: string): Command {
  return ({ pattern, at }) => {
    if (JSON.stringify(yarns) === JSON.stringify(pattern.yarns)) return null;
    return { label, at, edits: [{ kind: 'set', field: 'yarns', value: yarns }] };
  };
}
