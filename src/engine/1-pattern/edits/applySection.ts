import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Pattern } from '../pattern.ts';
import { fieldSchemas, recipeSchema, sectionSchema } from '../schema.ts';
import { groundLetters, unknownLetter } from '../references.ts';
import { coloursOn, done, noSection, placeFault, refuse, spliced, valueFault, versionName, versionOf, withSection, type EditOf } from './outcome.ts';

/** Puts a section in. Refuses ids of section or lines that are taken, a ground of yarns that are not there, and a place outside the list. */
export function applyInsertSection(pattern: Pattern, { section, at }: EditOf<'insertSection'>): Applied {
  const fault = valueFault('The section', sectionSchema, section) ?? placeFault('A section', at, pattern.sections.length, LIMITS.sections);
  if (fault) return refuse(fault);
  if (pattern.sections.some((one) => one.id === section.id)) return refuse(`There is a section "${section.id}" already.`);
  const taken = takenLine(pattern, section.lines.map((line) => line.id));
  if (taken) return refuse(taken);
  const letter = unknownLetter(pattern, groundLetters(section.colour?.ground));
  if (letter) return refuse(`The ground of the section is of yarn ${letter}, but the pattern has no such yarn.`);
  return done({ ...pattern, sections: spliced(pattern.sections, at, 0, section) }, { kind: 'removeSection', section: section.id });
}

/** Takes a section out with its lines. Refuses while motifs or loose cells lie on it, or a version says something of it. */
export function applyRemoveSection(pattern: Pattern, { section: id }: EditOf<'removeSection'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  const colours = coloursOn(pattern, id, new Set(section.lines.map((line) => line.id)));
  if (colours) return refuse(`${section.name || 'The section'} carries ${colours}; take that off first.`);
  const version = versionOf(pattern, { section: id });
  if (version) return refuse(`Version ${versionName(version)} says how ${section.name || 'the section'} is coloured; take that out first.`);
  return done({ ...pattern, sections: spliced(pattern.sections, at, 1) }, { kind: 'insertSection', at, section });
}

/** Sets name, remark and recipe of a section; its lines stay. */
export function applySetSection(pattern: Pattern, { section: id, name, remark, recipe }: EditOf<'setSection'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  const fault =
    valueFault('The name of the section', fieldSchemas.title, name) ??
    valueFault('The remark of the section', fieldSchemas.title, remark) ??
    valueFault('The recipe of the section', recipeSchema, recipe);
  if (fault) return refuse(fault);
  return done(withSection(pattern, at, { ...section, name, remark, recipe }), {
    kind: 'setSection',
    section: id,
    name: section.name,
    remark: section.remark,
    recipe: section.recipe,
  });
}

/** Why line ids can't be used: one is there already, or comes twice; null if they can. */
export function takenLine(pattern: Pattern, ids: readonly string[]): string | null {
  const taken = new Set(pattern.sections.flatMap((section) => section.lines.map((line) => line.id)));
  for (const id of ids) {
    if (taken.has(id)) return `There is a line "${id}" already.`;
    taken.add(id);
  }
  return null;
}
