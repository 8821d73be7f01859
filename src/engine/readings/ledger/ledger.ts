import type { RowKey } from '../../1-pattern/pattern.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../3-fabric/fabric.ts';

/** One line of the ledger: what a row made, used and left open. */
export interface LedgerRow {
  /** Row index in the fabric. */
  readonly row: number;
  readonly key: RowKey;
  readonly word: WorkedRow['word'];
  readonly number: number | null;
  readonly side: 'RS' | 'WS';
  readonly direction: -1 | 1;
  readonly round: boolean;
  /** Stitches that count. */
  readonly made: number;
  /** Stitches more or fewer than the row below made; null for a first row. */
  readonly change: number | null;
  /** Places taken off the edge. */
  readonly used: number;
  readonly left: WorkedRow['left'];
  readonly stated: number | null;
}

/** The numbers of a section's rows in working order, steps left out. An unknown section is a programmer's slip. */
export function ledger(fabric: Fabric, section: number): LedgerRow[] {
  const known = fabric.sections[section];
  if (!known) throw new RangeError(`section ${section} asked of ${fabric.sections.length}`);
  const lines: LedgerRow[] = [];
  for (let index = known.firstRow; index < known.endRow; index++) {
    const row = fabric.rows[index]!;
    if (row.word === 'step') continue;
    const below = row.below >= 0 ? fabric.rows[row.below] : undefined;
    lines.push({
      row: index, key: row.key, word: row.word, number: row.number, side: row.side, direction: row.direction, round: row.round,
      made: row.made,
      change: below && below.word !== 'foundation' && below.section === row.section ? row.made - below.made : null,
      used: row.used, left: row.left, stated: row.stated,
    });
  }
  return lines;
}

/** Stitches of each yarn in a row, by yarn index; `yarns` is how many the pattern has. Only stitches that count. */
export function yarnsOfRow(fabric: Fabric, row: number, yarn: Uint8Array, yarns: number): number[] {
  const worked = fabric.rows[row];
  if (!worked) throw new RangeError(`row ${row} asked of ${fabric.rows.length}`);
  const counts = new Array<number>(yarns).fill(0);
  for (let stitch = worked.first; stitch < worked.end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.counts) counts[yarn[stitch]!] = (counts[yarn[stitch]!] ?? 0) + 1;
  }
  return counts;
}

/** Yarn indices that the counted stitches of a section are worked in, ascending. An unknown section is a programmer's slip. */
export function yarnsOfSection(fabric: Fabric, section: number, yarn: Uint8Array): number[] {
  const known = fabric.sections[section];
  if (!known) throw new RangeError(`section ${section} asked of ${fabric.sections.length}`);
  const used = new Set<number>();
  const from = fabric.rows[known.firstRow]?.first ?? 0;
  const end = fabric.rows[known.endRow - 1]?.end ?? from;
  for (let stitch = from; stitch < end; stitch++) if (fabric.flags[stitch]! & FLAG.counts) used.add(yarn[stitch]!);
  return [...used].sort((a, b) => a - b);
}
