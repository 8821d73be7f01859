const QUARTERS = ['', '¼', '½', '¾'] as const;

/** What lengths are printed in. */
export type Lengths = 'cm' | 'in' | 'both';

/**
 * A length as print has it: `24.5 cm (9¾ in)`, centimetres to a tenth, inches to the quarter, or only one of them. Less than an eighth
 * of an inch is said in centimetres, or in tenths of an inch where only inches are wanted.
 */
export function lengthWords(cm: number, lengths: Lengths = 'both'): string {
  const quarters = Math.round((cm / 2.54) * 4);
  const metric = `${Math.round(cm * 10) / 10} cm`;
  if (lengths === 'cm') return metric;
  if (quarters === 0) return lengths === 'in' ? `${Math.round((cm / 2.54) * 10) / 10} in` : metric;
  const whole = Math.floor(quarters / 4);
  const part = QUARTERS[quarters % 4]!;
  const imperial = `${whole === 0 && part !== '' ? '' : whole}${part} in`;
  return lengths === 'in' ? imperial : `${metric} (${imperial})`;
}
