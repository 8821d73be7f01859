/** A hook size under its names. Millimetres are the size; letters and numbers differ between makers. */
export interface HookSize {
  readonly mm: number;
  readonly us: string | null;
  /** Old number of the United Kingdom and Canada for hooks; needle numbers differ at 3.5 to 3.75 mm. */
  readonly uk: string | null;
}

/**
 * Regular hooks as several published conversion charts agree on them. Where makers differ (B-1 is sold as 2, 2.25 and
 * 2.5 mm; M and N both as 9 mm) the usual one is given: always print millimetres first.
 */
export const HOOKS: readonly HookSize[] = [
  { mm: 2, us: null, uk: '14' },
  { mm: 2.25, us: 'B-1', uk: '13' },
  { mm: 2.5, us: null, uk: null },
  { mm: 2.75, us: 'C-2', uk: '12' },
  { mm: 3, us: null, uk: null },
  { mm: 3.25, us: 'D-3', uk: '10' },
  { mm: 3.5, us: 'E-4', uk: '9' },
  { mm: 3.75, us: 'F-5', uk: null },
  { mm: 4, us: 'G-6', uk: '8' },
  { mm: 4.25, us: 'G', uk: null },
  { mm: 4.5, us: '7', uk: '7' },
  { mm: 5, us: 'H-8', uk: '6' },
  { mm: 5.5, us: 'I-9', uk: '5' },
  { mm: 6, us: 'J-10', uk: '4' },
  { mm: 6.5, us: 'K-10½', uk: '3' },
  { mm: 7, us: null, uk: null },
  { mm: 8, us: 'L-11', uk: '0' },
  { mm: 9, us: 'M/N-13', uk: '00' },
  { mm: 10, us: 'N/P-15', uk: '000' },
  { mm: 11.5, us: 'P-16', uk: null },
  { mm: 12, us: null, uk: null },
  { mm: 15, us: 'P/Q', uk: null },
  { mm: 16, us: 'Q', uk: null },
  { mm: 19, us: 'S', uk: null },
];

/** The hook of exactly that size; null where no chart has it. */
export function hookOf(mm: number): HookSize | null {
  return HOOKS.find((hook) => Math.abs(hook.mm - mm) < 0.005) ?? null;
}

/** A hook in print: `4.5 mm (US 7)`, millimetres first. */
export function hookWords(mm: number): string {
  const us = hookOf(mm)?.us ?? null;
  return us === null ? `${mm} mm` : `${mm} mm (US ${us})`;
}
