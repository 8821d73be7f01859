import type { RowKey } from '../1-pattern/pattern.ts';
import type { Fabric } from '../3-fabric/fabric.ts';

/** Finds the rows of a fabric by their keys, and the rows above them that a motif goes up through. */
export interface ColourRows {
  /** Row index of a key; -1 if that row is not there in this size. */
  readonly indexOf: (section: string, key: RowKey) => number;
  /** Row indices of a section that carry colour, bottom first: rows and rounds, not foundations and steps. */
  readonly of: (section: string) => readonly number[];
}

/** Indexes the rows of a fabric. Linear in rows. */
export function colourRows(fabric: Fabric): ColourRows {
  const bySection = new Map<string, { readonly byLine: Map<string, number[]>; readonly rows: number[] }>();
  for (const [r, row] of fabric.rows.entries()) {
    const id = fabric.sections[row.section]?.id;
    if (id === undefined) continue;
    let entry = bySection.get(id);
    if (!entry) bySection.set(id, (entry = { byLine: new Map(), rows: [] }));
    let line = entry.byLine.get(row.key.line);
    if (!line) entry.byLine.set(row.key.line, (line = []));
    line[row.key.nth] ??= r;
    if (row.word !== 'foundation' && row.word !== 'step') entry.rows.push(r);
  }
  return {
    indexOf: (section, { line, nth }) => bySection.get(section)?.byLine.get(line)?.[nth] ?? -1,
    of: (section) => bySection.get(section)?.rows ?? [],
  };
}
