/** Numbers of all sizes as they stand in a written row: `44 (48, 52)`; one number where all are the same. Refuses none at all. */
export function sizesText(numbers: readonly number[]): string {
  const [first, ...others] = numbers;
  if (first === undefined) throw new RangeError('0 numbers given where at least 1 size is needed');
  return others.every((other) => other === first) ? String(first) : `${first} (${others.join(', ')})`;
}

/** `1st`, `2nd`, `3rd`, `12th (13th, 14th)`. */
export function ordinalsText(numbers: readonly number[]): string {
  const parts = numbers.map(ordinal);
  const [first, ...others] = parts;
  return others.every((other) => other === first) ? String(first) : `${first} (${others.join(', ')})`;
}

function ordinal(number: number): string {
  const tens = number % 100;
  const suffix = tens >= 11 && tens <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][number % 10] ?? 'th');
  return `${number}${suffix}`;
}
