import type { Amount } from '../notation/instruction.ts';
import { describeValue, type Fault } from './fault.ts';
import type { Ground, Line, Pattern, Section } from './pattern.ts';

/**
 * The first place where the parts of a pattern don't meet: an id that is used twice, a placement or loose cell on a row
 * that is not there, a motif that is not there, a version of sections or placements that are not there, a yarn letter that
 * no yarn has, a vector that has not one number for each size. `null` if all is well. Linear in the size of the pattern. Rows beyond a line's last are allowed: they wait
 * for the line to grow again.
 */
export function referenceFault(pattern: Pattern): Fault | null {
  return repeatedId(pattern) ?? vectorFault(pattern) ?? letterFault(pattern) ?? placeFault(pattern) ?? versionFault(pattern);
}

/** The first vector that has not one entry for each size, among the placements and all sections or those given. */
export function vectorFault(pattern: Pattern, sections: readonly Section[] = pattern.sections): Fault | null {
  const sizes = pattern.sizes.length;
  for (const section of sections) {
    const at = `sections.${pattern.sections.indexOf(section)}`;
    for (const [name, setting] of Object.entries(section.recipe?.settings ?? {})) {
      if (Array.isArray(setting) && setting.length !== sizes) return vector(`${at}.recipe.settings.${name}`, setting.length, sizes);
    }
    for (const [i, line] of section.lines.entries()) {
      const bad = badVector(line, sizes);
      if (bad) return vector(`${at}.lines.${i}.label.${bad.field}`, bad.length, sizes);
    }
  }
  for (const [i, { cm }] of (pattern.piece?.measures ?? []).entries()) if (cm.length !== sizes) return vector(`piece.measures.${i}.cm`, cm.length, sizes);
  for (const [key, numbers] of Object.entries(pattern.piece?.pins ?? {})) if (numbers.length !== sizes) return vector(`piece.pins.${key}`, numbers.length, sizes);
  for (const [i, { bySize }] of pattern.placements.entries()) if (bySize && bySize.length !== sizes) return vector(`placements.${i}.bySize`, bySize.length, sizes);
  return null;
}

function vector(path: string, found: number, sizes: number): Fault {
  return { path, found: `${found} numbers`, expected: sizes === 1 ? 'one number' : `one number for each of the ${sizes} sizes` };
}

function badVector(line: Line, sizes: number): { readonly field: 'rows' | 'start'; readonly length: number } | null {
  if (line.kind !== 'row') return null;
  for (const field of ['rows', 'start'] as const) {
    const value: Amount | null = line.label[field];
    if (value !== null && typeof value !== 'number' && value.length !== sizes) return { field, length: value.length };
  }
  return null;
}

function repeatedId(pattern: Pattern): Fault | null {
  const lists: readonly (readonly [string, readonly { readonly id: string }[]])[] = [
    ['sections', pattern.sections],
    ['motifs', pattern.motifs],
    ['placements', pattern.placements],
    ['versions', pattern.versions ?? []],
  ];
  for (const [name, list] of lists) {
    const seen = new Set<string>();
    for (const [i, { id }] of list.entries()) {
      if (seen.has(id)) return { path: `${name}.${i}.id`, found: `${describeValue(id)} once more`, expected: 'an id of its own' };
      seen.add(id);
    }
  }
  const seen = new Set<string>();
  for (const [s, section] of pattern.sections.entries()) {
    for (const [i, { id }] of section.lines.entries()) {
      if (seen.has(id)) return { path: `sections.${s}.lines.${i}.id`, found: `${describeValue(id)} once more`, expected: 'an id of its own in the whole pattern' };
      seen.add(id);
    }
  }
  return null;
}

/** The first letter of `letters` that is neither `.` nor one of the pattern's yarns. */
export function unknownLetter(pattern: Pick<Pattern, 'yarns'>, letters: string): string | null {
  for (const letter of letters) if (letter !== '.' && !pattern.yarns.some((yarn) => yarn.letter === letter)) return letter;
  return null;
}

/** The yarn letters that a ground uses. */
export function groundLetters(ground: Ground | undefined): string {
  switch (ground?.kind) {
    case 'replace':
      return ground.yarns.map(({ from, to }) => from + to).join('');
    case 'stripes':
      return ground.stripes.map((stripe) => stripe.letter).join('');
    default:
      return '';
  }
}

function letterFault(pattern: Pattern): Fault | null {
  const known = `one of the pattern's yarns (${pattern.yarns.map((yarn) => yarn.letter).join(', ')})`;
  for (const [i, motif] of pattern.motifs.entries()) {
    const letter = unknownLetter(pattern, motif.cells.join(''));
    if (letter) return { path: `motifs.${i}.cells`, found: `yarn ${letter}`, expected: known };
  }
  for (const [i, run] of pattern.cells.entries()) {
    const letter = unknownLetter(pattern, run.letters);
    if (letter) return { path: `cells.${i}.letters`, found: `yarn ${letter}`, expected: known };
  }
  for (const [i, section] of pattern.sections.entries()) {
    const letter = unknownLetter(pattern, groundLetters(section.colour?.ground));
    if (letter) return { path: `sections.${i}.colour.ground`, found: `yarn ${letter}`, expected: known };
  }
  for (const [i, version] of (pattern.versions ?? []).entries()) {
    for (const [s, { ground }] of version.sections.entries()) {
      const letter = unknownLetter(pattern, groundLetters(ground));
      if (letter) return { path: `versions.${i}.sections.${s}.ground`, found: `yarn ${letter}`, expected: known };
    }
  }
  return null;
}

function placeFault(pattern: Pattern): Fault | null {
  const sectionOfRow = new Map<string, string>();
  for (const section of pattern.sections) for (const line of section.lines) if (line.kind === 'row') sectionOfRow.set(line.id, section.id);
  const motifs = new Set(pattern.motifs.map((motif) => motif.id));
  for (const [i, { section, row, motif }] of pattern.placements.entries()) {
    if (!motifs.has(motif)) return { path: `placements.${i}.motif`, found: describeValue(motif), expected: 'the id of a motif' };
    if (sectionOfRow.get(row.line) !== section) return { path: `placements.${i}.row.line`, found: describeValue(row.line), expected: 'the id of a row of its section' };
  }
  for (const [i, { section, row, size }] of pattern.cells.entries()) {
    if (sectionOfRow.get(row.line) !== section) return { path: `cells.${i}.row.line`, found: describeValue(row.line), expected: 'the id of a row of its section' };
    if (size >= pattern.sizes.length) return { path: `cells.${i}.size`, found: String(size), expected: `a size from 0 to ${pattern.sizes.length - 1}` };
  }
  return null;
}

function versionFault(pattern: Pattern): Fault | null {
  if (!pattern.versions) return null;
  const sections = new Set(pattern.sections.map((section) => section.id));
  const sectionOf = new Map(pattern.placements.map((placement) => [placement.id, placement.section]));
  for (const [i, version] of pattern.versions.entries()) {
    for (const [s, { section, placements = [] }] of version.sections.entries()) {
      const path = `versions.${i}.sections.${s}`;
      if (!sections.has(section)) return { path: `${path}.section`, found: describeValue(section), expected: 'the id of a section' };
      const odd = placements.findIndex((id) => sectionOf.get(id) !== section);
      if (odd >= 0) return { path: `${path}.placements.${odd}`, found: describeValue(placements[odd]), expected: 'the id of a placement of that section' };
    }
  }
  return null;
}
