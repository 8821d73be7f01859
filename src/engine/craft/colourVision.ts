import { converter, formatHex, wcagLuminance } from 'culori';

/** A kind of colour vision that lacks one of the three cones: red (protan), green (deutan), blue (tritan). */
export type ColourVision = 'protan' | 'deutan' | 'tritan';

/** The three, in the order in which they are told. */
export const COLOUR_VISIONS = ['protan', 'deutan', 'tritan'] as const satisfies readonly ColourVision[];

/** How colours can be looked at: as they are, as one of the three sees them, or in black and white. */
export type PaletteView = 'full' | ColourVision | 'blackAndWhite';

/**
 * Matrices for linear RGB, row by row, severity 1.0: Machado, Oliveira, Fernandes, "A physiologically-based model for
 * simulation of color vision deficiency", IEEE TVCG 15(6), 2009, 1291–1298. Every row sums to 1, so greys stay as they are.
 */
export const VISION_MATRICES: Readonly<Record<ColourVision, readonly number[]>> = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

const toLinear = converter('lrgb');

/** A colour (`#rrggbb`) as one kind of colour vision sees it: linearised, through the matrix, clamped, encoded again. */
export function seenWith(vision: ColourVision, colour: string): string {
  const linear = toLinear(colour);
  if (!linear) throw new RangeError(`"${colour}" is no colour`);
  const m = VISION_MATRICES[vision];
  const row = (at: number) => Math.min(Math.max(m[at]! * linear.r + m[at + 1]! * linear.g + m[at + 2]! * linear.b, 0), 1);
  return formatHex({ mode: 'lrgb', r: row(0), g: row(3), b: row(6) });
}

/** The grey of a colour's relative luminance (WCAG 2.2): what black and white print makes of it. */
export function greyOf(colour: string): string {
  const l = wcagLuminance(colour);
  return formatHex({ mode: 'lrgb', r: l, g: l, b: l });
}

/** Colours (`#rrggbb`) as a view shows them, in their order. */
export function viewPalette(colours: readonly string[], view: PaletteView): readonly string[] {
  if (view === 'full') return colours;
  return colours.map((colour) => (view === 'blackAndWhite' ? greyOf(colour) : seenWith(view, colour)));
}
