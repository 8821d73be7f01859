import type { PublishChoices } from './publishChoices.ts';

const EIGHTHS = ['', '¼', '½', '¾'] as const;

/** A length as the choices want it: centimetres to the half (0.5), inches to the quarter, or both. */
export function lengthText(cm: number, lengths: PublishChoices['lengths']): string {
  const metric = `${Math.round(cm * 2) / 2} cm`;
  const quarters = Math.round((cm / 2.54) * 4);
  const part = EIGHTHS[quarters % 4]!;
  const whole = Math.floor(quarters / 4);
  const imperial = quarters === 0 ? `${Math.round((cm / 2.54) * 10) / 10} in` : `${whole === 0 && part !== '' ? '' : whole}${part} in`;
  return lengths === 'cm' ? metric : lengths === 'in' ? imperial : `${metric} / ${imperial}`;
}
