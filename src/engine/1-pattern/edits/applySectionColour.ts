import type { Applied } from '../edit.ts';
import { groundLetters, unknownLetter } from '../references.ts';
import type { Pattern, Section } from '../pattern.ts';
import { colourLimitsSchema, sectionColourSchema } from '../schema.ts';
import { done, noSection, refuse, valueFault, withSection, type EditOf } from './outcome.ts';

/** Says how the colours of a section are worked. Refuses letters that no yarn has. */
export function applySectionColour(pattern: Pattern, { section: id, colour }: EditOf<'setSectionColour'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  const fault = colour && valueFault('The colours of the section', sectionColourSchema, colour);
  if (fault) return refuse(fault);
  const letter = unknownLetter(pattern, groundLetters(colour?.ground));
  if (letter) return refuse(`The ground is of yarn ${letter}, but the pattern has no such yarn.`);
  const { colour: before, ...rest } = section;
  const after: Section = colour ? { ...rest, colour } : rest;
  return done(withSection(pattern, at, after), { kind: 'setSectionColour', section: id, colour: before ?? null });
}

/** Says from where on the checks of colour ask. */
export function applyColourLimits(pattern: Pattern, { limits }: EditOf<'setColourLimits'>): Applied {
  const fault = limits && valueFault('The limits of colour', colourLimitsSchema, limits);
  if (fault) return refuse(fault);
  const { colourLimits: before, ...rest } = pattern;
  return done(limits ? { ...rest, colourLimits: limits } : rest, { kind: 'setColourLimits', limits: before ?? null });
}
