import * as v from 'valibot';
import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Pattern } from '../pattern.ts';
import { lineSchema } from '../schema.ts';
import { takenLine } from './applySection.ts';
import { coloursOn, done, lineWords, noSection, placeFault, refuse, spliced, valueFault, withSection, type EditOf } from './outcome.ts';

const linesSchema = v.array(lineSchema);

/** Replaces the line of the same id. Refuses to make a step or note of a row that motifs or loose cells lie on. */
export function applySetLine(pattern: Pattern, { section: id, line }: EditOf<'setLine'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  const place = section.lines.findIndex((one) => one.id === line.id);
  const before = section.lines[place];
  if (!before) return refuse(`There is no line "${line.id}" in ${section.name || 'the section'}.`);
  const fault = valueFault('The line', lineSchema, line);
  if (fault) return refuse(fault);
  if (line.kind !== 'row') {
    const colours = coloursOn(pattern, id, new Set([line.id]));
    if (colours) return refuse(`${lineWords(section, before)} carries ${colours}, so it has to stay a row; take that off first.`);
  }
  return done(withSection(pattern, at, { ...section, lines: spliced(section.lines, place, 1, line) }), { kind: 'setLine', section: id, line: before });
}

/** Puts lines in before place `at`. Refuses ids that are taken, an empty list and a place outside the section. */
export function applyInsertLines(pattern: Pattern, { section: id, at: place, lines }: EditOf<'insertLines'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  if (lines.length === 0) return refuse('There are no lines to put in.');
  const ids = lines.map((line) => line.id);
  const fault = valueFault('The lines', linesSchema, lines) ?? placeFault('Lines', place, section.lines.length, LIMITS.lines, lines.length) ?? takenLine(pattern, ids);
  if (fault) return refuse(fault);
  return done(withSection(pattern, at, { ...section, lines: spliced(section.lines, place, 0, ...lines) }), { kind: 'removeLines', section: id, lines: ids });
}

/** Takes out lines that stand one after another. Refuses while motifs or loose cells lie on them. */
export function applyRemoveLines(pattern: Pattern, { section: id, lines: ids }: EditOf<'removeLines'>): Applied {
  const at = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[at];
  if (!section) return noSection(id);
  if (ids.length === 0) return refuse('There are no lines to take out.');
  const place = section.lines.findIndex((line) => line.id === ids[0]);
  for (const [i, line] of ids.entries()) {
    if (!section.lines.some((one) => one.id === line)) return refuse(`There is no line "${line}" in ${section.name || 'the section'}.`);
    if (section.lines[place + i]?.id !== line) return refuse(`The lines to take out don't stand one after another: "${line}" is out of place.`);
  }
  const lines = section.lines.slice(place, place + ids.length);
  const colours = coloursOn(pattern, id, new Set(ids));
  if (colours) return refuse(`${lines.length === 1 ? lineWords(section, lines[0]!) : `${lines.length} lines of ${section.name || 'the section'}`} can't be taken out: ${colours} would lose its row.`);
  return done(withSection(pattern, at, { ...section, lines: spliced(section.lines, place, ids.length) }), { kind: 'insertLines', section: id, at: place, lines });
}
