import type { Applied, Edit, Field } from '../edit.ts';
import type { Pattern } from '../pattern.ts';
import { fieldSchemas } from '../schema.ts';
import { groundLetters } from '../references.ts';
import { done, motifName, refuse, valueFault, versionName, type EditOf } from './outcome.ts';

const WORDS: Readonly<Record<Field, string>> = {
  title: 'The title',
  designer: 'The designer',
  terms: 'The terms',
  gauge: 'The gauge',
  hookMm: 'The hook',
  yarns: 'The yarns',
  sizes: 'The sizes',
  hdcTurningChainCounts: 'The half double turning chain',
  notes: 'The notes',
};

/**
 * Replaces one field. Refuses a value that no document may hold, yarns that lack a letter which a motif, a loose cell or
 * a ground uses, and sizes that would leave loose cells without their size. Rows may name a yarn that is not there: reading them finds it.
 */
export function applyField(pattern: Pattern, edit: EditOf<'set'>): Applied {
  const fault = valueFault(WORDS[edit.field], fieldSchemas[edit.field], edit.value) ?? reasonAgainst(pattern, edit);
  if (fault) return refuse(fault);
  const inverse = { kind: 'set', field: edit.field, value: pattern[edit.field] } as Edit;
  if (pattern[edit.field] === edit.value) return done(pattern, inverse);
  return done({ ...pattern, [edit.field]: edit.value }, inverse);
}

function reasonAgainst(pattern: Pattern, edit: EditOf<'set'>): string | null {
  if (edit.field === 'yarns') {
    const letters = new Set(edit.value.map((yarn) => yarn.letter));
    for (const { letter } of pattern.yarns) {
      if (letters.has(letter)) continue;
      const motif = pattern.motifs.find((one) => one.cells.some((row) => row.includes(letter)));
      if (motif) return `Yarn ${letter} is in use: motif ${motifName(pattern, motif.id)} is drawn with it.`;
      if (pattern.cells.some((run) => run.letters.includes(letter))) return `Yarn ${letter} is in use: loose cells are laid with it.`;
      const section = pattern.sections.find((one) => groundLetters(one.colour?.ground).includes(letter));
      if (section) return `Yarn ${letter} is in use: the ground of ${section.name || 'a section'} is of it.`;
      const version = pattern.versions?.find((one) => one.sections.some(({ ground }) => groundLetters(ground).includes(letter)));
      if (version) return `Yarn ${letter} is in use: version ${versionName(version)} has a ground of it.`;
    }
  }
  if (edit.field === 'sizes') {
    const sizes = edit.value.length;
    const orphan = pattern.cells.find((run) => run.size >= sizes);
    if (orphan) return `Size ${pattern.sizes[orphan.size] || orphan.size + 1} is in use: loose cells are laid in it.`;
  }
  return null;
}
