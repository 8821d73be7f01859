/** A row's number that may be shown: on which side of the chart, and how far down. */
export interface StandingNumber {
  /** Null: a name that is no number, which is always wanted. */
  readonly number: number | null;
  readonly side: 'left' | 'right';
  readonly y: number;
}

/** The numbers that are shown, by index, and every how many that is. */
export interface ChosenNumbers {
  readonly chosen: readonly number[];
  readonly step: number;
}

/** Every second is every second of its side: rows worked back and forth have their odd numbers on one side and their even ones on the other. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/**
 * Which row numbers are shown where numbers of one side must stand `gap` apart: all where there is room; else every second, every fifth,
 * every tenth … on both sides alike, and always the first and the last. The few that stand too near another for another
 * reason (the leaders of turned rows) are left out alone. n log n.
 */
export function chosenNumbers(numbers: readonly StandingNumber[], gap: number): ChosenNumbers {
  const numbered = numbers.flatMap(({ number }, i) => (number === null ? [] : [{ i, number }])).sort((a, b) => a.number - b.number);
  const names = numbers.flatMap(({ number }, i) => (number === null ? [i] : []));
  const ends = numbered.length === 0 ? [] : [numbered[0]!.i, numbered.at(-1)!.i];
  const most = Math.max(2, Math.floor(numbered.length / 5));
  for (const step of STEPS) {
    const seen = { left: 0, right: 0 };
    const regular = numbered.filter(({ i, number }) => (step === 2 ? seen[numbers[i]!.side]++ % 2 === 0 : number % step === 0)).map(({ i }) => i);
    if (regular.length - apart(numbers, regular, [], gap).size > (step <= 2 ? most : 0)) continue;
    const chosen = apart(numbers, [...names, ...ends, ...regular], [...names, ...ends], gap);
    return { chosen: [...chosen].sort((a, b) => a - b), step };
  }
  return { chosen: [...apart(numbers, [...names, ...ends], [...names, ...ends], gap)], step: Infinity };
}

/** What must be there may stand a little nearer. */
const NEARER = 0.8;

/** As many of them, in their order, as stand far enough from those before; ones in the very same place count as one. `dear`: those that must be there. */
function apart(numbers: readonly StandingNumber[], wanted: readonly number[], dear: readonly number[], gap: number): Set<number> {
  const taken: Record<'left' | 'right', number[]> = { left: [], right: [] };
  const chosen = new Set<number>();
  const isDear = new Set(dear);
  for (const i of wanted) {
    if (chosen.has(i)) continue;
    const least = isDear.has(i) ? NEARER * gap : gap;
    const { side, y } = numbers[i]!;
    const places = taken[side];
    let [low, high] = [0, places.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (places[middle]! < y) low = middle + 1;
      else high = middle;
    }
    const clear = (other: number | undefined): boolean => other === undefined || other === y || Math.abs(other - y) >= least - 1e-6;
    if (!clear(places[low - 1]) || !clear(places[low])) continue;
    places.splice(low, 0, y);
    chosen.add(i);
  }
  return chosen;
}
