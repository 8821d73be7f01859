import type { Origin } from '../../engine/2-construct/recipes/origin.ts';

/** A number of the piece in every size. */
export interface NumberRow {
  readonly key: string;
  readonly says: string;
  /** One a size; null where a size has no such number. */
  readonly origins: readonly (Origin | null)[];
}

/** The whole numbers that rows are made of, in the order they are reckoned: these can be set by hand. Lengths, gauges and ratios stand in their trees. */
export function numberRows(numbers: readonly ReadonlyMap<string, Origin>[]): readonly NumberRow[] {
  const keys = new Set(numbers.flatMap((size) => [...size.values()].filter(isWhole).map((origin) => origin.key)));
  return [...keys].map((key) => {
    const origins = numbers.map((size) => size.get(key) ?? null);
    return { key, says: origins.find((origin) => origin !== null)!.says, origins };
  });
}

function isWhole({ from, unit, key }: Origin): boolean {
  if (unit !== 'sts' && unit !== 'rows') return false;
  if (key.endsWith('.withoutMotif')) return false;
  return from.kind === 'pinned' || (from.kind === 'formula' && from.rounding !== null);
}
