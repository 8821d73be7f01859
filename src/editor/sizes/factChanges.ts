import type { Measure, MeasureName, PieceFacts, Swatch, YarnSupply } from '../../engine/1-pattern/pieceFacts.ts';

/** Changes of what is known of a piece. Each gives new facts; what is not touched is shared. */
export type FactChange = (facts: PieceFacts) => PieceFacts;

/** Sets a measurement of one size; one that no size has any more and that has no ease goes. */
export function withMeasure(name: MeasureName, size: number, cm: number | null, sizes: number): FactChange {
  return (facts) => {
    const old = measureOf(facts, name, sizes);
    return withMeasures(facts, { ...old, cm: old.cm.map((one, i) => (i === size ? cm : one)) });
  };
}

/** Sets the ease of a measurement. */
export function withEase(name: MeasureName, ease: Partial<Pick<Measure, 'easePercent' | 'easeCm'>>, sizes: number): FactChange {
  return (facts) => withMeasures(facts, { ...measureOf(facts, name, sizes), ...ease });
}

/** A measurement as it is, or an empty one. */
export function measureOf(facts: PieceFacts, name: MeasureName, sizes: number): Measure {
  return facts.measures?.find((one) => one.name === name) ?? { name, cm: Array.from({ length: sizes }, () => null), easePercent: 0, easeCm: 0 };
}

function withMeasures(facts: PieceFacts, measure: Measure): PieceFacts {
  const all = facts.measures ?? [];
  const empty = measure.cm.every((cm) => cm === null) && measure.easePercent === 0 && measure.easeCm === 0;
  const there = all.some((one) => one.name === measure.name);
  const measures = empty ? all.filter((one) => one.name !== measure.name) : there ? all.map((one) => (one.name === measure.name ? measure : one)) : [...all, measure];
  return { ...facts, measures };
}

/** Puts a swatch in, or another in the place of that with its id. */
export function withSwatch(swatch: Swatch): FactChange {
  return (facts) => {
    const all = facts.swatches ?? [];
    return { ...facts, swatches: all.some((one) => one.id === swatch.id) ? all.map((one) => (one.id === swatch.id ? swatch : one)) : [...all, swatch] };
  };
}

/** Takes a swatch out. */
export function withoutSwatch(id: string): FactChange {
  return (facts) => ({ ...facts, swatches: (facts.swatches ?? []).filter((one) => one.id !== id) });
}

/** Sets a number of one size by hand, or gives it back to be reckoned (null). */
export function withPin(key: string, size: number, value: number | null, sizes: number): FactChange {
  return (facts) => {
    const old = facts.pins?.[key] ?? Array.from({ length: sizes }, () => null);
    const pinned = old.map((one, i) => (i === size ? value : one));
    const others = Object.fromEntries(Object.entries(facts.pins ?? {}).filter(([name]) => name !== key));
    return { ...facts, pins: pinned.every((one) => one === null) ? others : { ...others, [key]: pinned } };
  };
}

/** Changes what is known of a yarn as it is sold. */
export function withSupply(letter: string, change: Partial<Omit<YarnSupply, 'letter'>>): FactChange {
  return (facts) => {
    const all = facts.supplies ?? [];
    const next = { ...(all.find((one) => one.letter === letter) ?? { letter, weight: null, ballGrams: null, ballMetres: null, price: null }), ...change };
    return { ...facts, supplies: all.some((one) => one.letter === letter) ? all.map((one) => (one.letter === letter ? next : one)) : [...all, next] };
  };
}

/** An id that no swatch of the piece has. */
export function freshSwatchId(swatches: readonly Swatch[]): string {
  let number = swatches.length + 1;
  while (swatches.some((one) => one.id === `${number}`)) number++;
  return `${number}`;
}
