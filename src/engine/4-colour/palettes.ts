import { seenWith, viewPalette, type ColourVision, type PaletteView } from '../craft/colourVision.ts';
import { colourDifference, labOf, toneContrast } from '../craft/colourDifference.ts';
import type { Edit } from '../1-pattern/edit.ts';
import type { Pattern, Yarn } from '../1-pattern/pattern.ts';

/** The least that two yarns of a section should differ, if a pattern says nothing: CIEDE2000, the project's own choice (about 1 can just be seen side by side). */
export const LEAST_DIFFERENCE = 15;

/**
 * The least contrast of two yarns of a section in light and dark, if a pattern says nothing: the project's own choice.
 * WCAG 2.2 asks 3 to 1 of graphics (1.4.11), which three yarns can't all have of one another unless the extremes have 9 to 1.
 */
export const LEAST_CONTRAST = 1.5;

/** How two yarns can be told apart. */
export interface YarnPair {
  /** Yarn indices, the lower first. */
  readonly one: number;
  readonly other: number;
  /** CIEDE2000 to a full eye, and to each kind of colour vision. */
  readonly difference: number;
  readonly seen: Readonly<Record<ColourVision, number>>;
  /** Contrast in light and dark, 1 to 21 (WCAG): what is left in black and white. */
  readonly contrast: number;
}

/** Every pair of yarns with how far they differ, in the order of the yarns. */
export function yarnPairs(yarns: readonly Pick<Yarn, 'colour'>[]): readonly YarnPair[] {
  const full = yarns.map((yarn) => labOf(yarn.colour));
  const seen = eachVision((vision) => yarns.map((yarn) => labOf(seenWith(vision, yarn.colour))));
  return yarns.flatMap((_, one) =>
    yarns.slice(one + 1).map((__, after) => {
      const other = one + 1 + after;
      return {
        one,
        other,
        difference: colourDifference(full[one]!, full[other]!),
        seen: eachVision((vision) => colourDifference(seen[vision][one]!, seen[vision][other]!)),
        contrast: toneContrast(yarns[one]!.colour, yarns[other]!.colour),
      };
    }),
  );
}

function eachVision<T>(value: (vision: ColourVision) => T): Readonly<Record<ColourVision, T>> {
  return { protan: value('protan'), deutan: value('deutan'), tritan: value('tritan') };
}

/** The edit that changes two yarns over: name, colour, mark and all else go to the other letter, so that every motif and row shows it. Refuses letters that no yarn has. */
export function swapYarns(pattern: Pick<Pattern, 'yarns'>, one: string, other: string): Edit {
  const find = (letter: string): Yarn => {
    const found = pattern.yarns.find((yarn) => yarn.letter === letter);
    if (!found) throw new RangeError(`yarn "${letter}" asked of ${pattern.yarns.map((yarn) => yarn.letter).join(', ')}`);
    return found;
  };
  const [a, b] = [find(one), find(other)];
  return { kind: 'set', field: 'yarns', value: pattern.yarns.map((yarn) => (yarn === a ? { ...b, letter: one } : yarn === b ? { ...a, letter: other } : yarn)) };
}

/** The pattern in other colours, by letter (`#rrggbb`); yarns that are not named keep theirs. To be looked at; `paletteEdit` keeps it. */
export function withPalette(pattern: Pattern, colours: Readonly<Record<string, string>>): Pattern {
  return { ...pattern, yarns: recoloured(pattern.yarns, colours) };
}

/** The edit that gives yarns other colours, by letter. */
export function paletteEdit(pattern: Pick<Pattern, 'yarns'>, colours: Readonly<Record<string, string>>): Edit {
  return { kind: 'set', field: 'yarns', value: recoloured(pattern.yarns, colours) };
}

/** The pattern as a kind of colour vision sees it, or in black and white: for previews only, its yarns are not those that the maker buys. */
export function patternInView(pattern: Pattern, view: PaletteView): Pattern {
  if (view === 'full') return pattern;
  const colours = viewPalette(pattern.yarns.map((yarn) => yarn.colour), view);
  return { ...pattern, yarns: pattern.yarns.map((yarn, i) => ({ ...yarn, colour: colours[i]! })) };
}

function recoloured(yarns: readonly Yarn[], colours: Readonly<Record<string, string>>): readonly Yarn[] {
  return yarns.map((yarn) => (colours[yarn.letter] === undefined ? yarn : { ...yarn, colour: colours[yarn.letter]! }));
}
