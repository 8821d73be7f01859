import type { Fault } from './fault.ts';
import { LIMITS } from './limits.ts';
import type { Pattern } from './pattern.ts';

/**
 * Whether a pattern stands for more rows than a pattern may, in any size: a line says in a few characters how many rows it
 * stands for, so that a small file could ask for more work than any device does. Linear in lines.
 */
export function rowsFault({ sections, sizes }: Pick<Pattern, 'sections' | 'sizes'>): Fault | null {
  const rows = new Float64Array(sizes.length);
  for (const [s, section] of sections.entries()) {
    for (const [l, line] of section.lines.entries()) {
      if (line.kind !== 'row') continue;
      const { rows: amount } = line.label;
      for (let size = 0; size < rows.length; size++) {
        rows[size]! += typeof amount === 'number' ? amount : (amount[size] ?? 0);
        if (rows[size]! > LIMITS.rows) return { path: `sections.${s}.lines.${l}.label.rows`, found: `${rows[size]} rows up to here`, expected: `at most ${LIMITS.rows} rows in the whole pattern` };
      }
    }
  }
  return null;
}
