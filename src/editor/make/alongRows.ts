import type { Pattern, RowKey } from '../../engine/1-pattern/pattern.ts';
import { lineOf } from '../../engine/2-construct/construct.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { rowName } from '../bench/rowEntries.ts';

/** One thing to make: a row, or a step between rows (a seam, a join). */
export interface AlongRow {
  /** Row index in the fabric. */
  readonly row: number;
  readonly key: RowKey;
  /** "Row 12", "Foundation", "Step". */
  readonly name: string;
  /** Index of its section. */
  readonly section: number;
  /** Stitches `[first, end)` in working order; none in a step that makes none. */
  readonly first: number;
  readonly end: number;
}

/** All rows and steps of one size in the order they are made. */
export function alongRows(pattern: Pattern, fabric: Fabric): AlongRow[] {
  return fabric.rows.map((row, index) => {
    const found = lineOf(pattern, row.key.line);
    return { row: index, key: row.key, name: found ? rowName(found.line, row) : 'Row', section: row.section, first: row.first, end: row.end };
  });
}
