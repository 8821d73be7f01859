import type { Gauge } from '../../engine/1-pattern/pattern.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { flatness, type FlatnessRow } from '../../engine/readings/flatness/flatness.ts';
import { ledger, type LedgerRow } from '../../engine/readings/ledger/ledger.ts';

/** A row of the ledger, and for rounds that grow from a ring how they lie. */
export interface LedgerLine extends LedgerRow {
  readonly lies: { readonly word: FlatnessRow['lies']; readonly says: string } | null;
}

/** The ledger of a section by row index in the fabric. */
export function ledgerLines(fabric: Fabric, section: number, gauge: Gauge): ReadonlyMap<number, LedgerLine> {
  const lying = new Map(flatness(fabric, section, gauge).map((row) => [row.row, row]));
  return new Map(ledger(fabric, section).map((row) => [row.row, { ...row, lies: liesOf(lying.get(row.row)) }]));
}

/** Rounds without increases are left alone: even sides are meant to go straight up. */
function liesOf(row: FlatnessRow | undefined): LedgerLine['lies'] {
  if (!row || row.increases <= 0) return null;
  const flat = Math.round(row.flatIncreases * 10) / 10;
  return { word: row.lies, says: `${row.increases} more than the round below; about ${flat} more would lie flat at this gauge` };
}
