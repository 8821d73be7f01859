import { applyTransaction } from '../1-pattern/applyTransaction.ts';
import type { Edit } from '../1-pattern/edit.ts';
import type { Pattern, Section } from '../1-pattern/pattern.ts';
import { removal } from '../1-pattern/removal.ts';
import { construct } from '../2-construct/construct.ts';
import { fingerprint } from '../2-construct/recipes/fingerprint.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { work } from '../3-fabric/work.ts';
import { textInOtherYarn } from './textInOtherYarn.ts';

/** The edits that put one yarn in the place of another everywhere and take it out, or the line whose words can't follow. */
export type YarnReplaced = { readonly ok: true; readonly edits: readonly Edit[] } | { readonly ok: false; readonly line: string | null };

/**
 * Takes a yarn out of a pattern: rows, steps, motifs, loose cells, grounds and settings of recipes name `to` instead. The
 * rows are worked anew in every size, and nothing is changed unless each stitch comes out as it was, in the yarn that is
 * left. `fabrics` by size index, of this pattern.
 */
export function replaceYarn(pattern: Pattern, fabrics: readonly Fabric[], letter: string, to: string): YarnReplaced {
  if (fabrics.length !== pattern.sizes.length) throw new RangeError(`${fabrics.length} fabrics given for ${pattern.sizes.length} sizes`);
  const edits: Edit[] = [];
  for (const section of pattern.sections) {
    const lines = section.lines.map((line) => ({ line, text: textInOtherYarn(line, pattern, letter, to) }));
    const odd = lines.find(({ text }) => text === null);
    if (odd) return { ok: false, line: odd.line.id };
    const next = lines.map(({ line, text }) => (text === line.text ? line : { ...line, text: text! }));
    next.forEach((line, i) => {
      if (line !== section.lines[i]) edits.push({ kind: 'setLine', section: section.id, line });
    });
    const recipe = recipeIn(section, { ...section, lines: next }, letter, to);
    if (recipe !== section.recipe) edits.push({ kind: 'setSection', section: section.id, name: section.name, remark: section.remark, recipe });
  }
  edits.push(...removal(pattern, { kind: 'yarn', letter, to }));
  // Rows that name no yarn are worked in the first one, so what takes the first one's place becomes the first.
  const yarns = pattern.yarns.flatMap((yarn, i) => (yarn.letter === letter ? (i === 0 ? pattern.yarns.filter((each) => each.letter === to) : []) : pattern.yarns[0]?.letter === letter && yarn.letter === to ? [] : [yarn]));
  const all: readonly Edit[] = edits.map((edit) => (edit.kind === 'set' && edit.field === 'yarns' ? { ...edit, value: yarns } : edit));
  const now = applyTransaction(pattern, { label: '', at: 0, edits: all });
  if (!now.ok) return { ok: false, line: null };
  const index = new Map(yarns.map((yarn, i) => [yarn.letter, i]));
  const become = pattern.yarns.map((yarn) => index.get(yarn.letter === letter ? to : yarn.letter) ?? -1);
  for (const [size, fabric] of fabrics.entries()) {
    const other = work(construct(now.pattern, size));
    const row = fabric.rows.find(({ first, end }, r) => {
      if (other.rows[r]?.first !== first || other.rows[r]?.end !== end) return true;
      for (let i = first; i < end; i++) if (other.kind[i] !== fabric.kind[i] || other.yarn[i] !== become[fabric.yarn[i]!]) return true;
      return false;
    });
    if (row) return { ok: false, line: row.key.line };
  }
  return { ok: true, edits: all };
}

/** The settings of a section's recipe with the yarn replaced; a section that was as its recipe made it stays so. */
function recipeIn(section: Section, next: Section, letter: string, to: string): Section['recipe'] {
  const { recipe } = section;
  if (!recipe) return recipe;
  const isMade = recipe.settings['written'] === fingerprint(section.lines);
  const settings = Object.fromEntries(Object.entries(recipe.settings).map(([key, value]) => [key, /yarn$/i.test(key) && value === letter ? to : key === 'written' && isMade ? fingerprint(next.lines) : value]));
  return JSON.stringify(settings) === JSON.stringify(recipe.settings) ? recipe : { ...recipe, settings };
}
