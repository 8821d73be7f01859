const QUARTERS = ['', '¼', '½', '¾'] as const;

/** Centimetres and inches as print has them: `24.5 cm (9¾ in)`, centimetres to a tenth, inches to the quarter; less than an eighth of an inch in centimetres only. */
export function lengthWords(cm: number): string {
  const quarters = Math.round((cm / 2.54) * 4);
  const metric = `${Math.round(cm * 10) / 10} cm`;
  if (quarters === 0) return metric;
  const whole = Math.floor(quarters / 4);
  const part = QUARTERS[quarters % 4]!;
  return `${metric} (${whole === 0 && part !== '' ? '' : whole}${part} in)`;
}
