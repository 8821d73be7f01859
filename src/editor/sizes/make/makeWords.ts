import type { Graded, SectionChange } from '../../../engine/2-construct/recipes/gradePattern.ts';
import { sectionTitle } from '../../piece/sectionTitle.ts';

/** What another make would do, each with its words: sections by what becomes of them, then what lies on them. */
export function makeWords(graded: Graded, placements: number): readonly { readonly what: string; readonly words: string }[] {
  const named = (change: SectionChange['change']) => graded.changes.filter((one) => one.change === change).map(({ name }) => sectionTitle(name));
  const rows: readonly (readonly [SectionChange['change'], string])[] = [['new', 'New'], ['anew', 'Written anew'], ['gone', 'Taken out'], ['same', 'As it is'], ['kept', 'Left alone, changed by hand']];
  const sections = rows.flatMap(([change, what]) => (named(change).length === 0 ? [] : [{ what, words: listed(named(change)) }]));
  const stay = placements - graded.moved.length - graded.lost.length;
  const laid = [
    ...several(stay, 'motif stays on its row', 'motifs stay on their rows'), ...several(graded.moved.length, 'goes to the nearest row that is left', 'go to the nearest rows that are left'),
    ...several(graded.lost.length, 'is taken off with its section', 'are taken off with their sections'), ...several(graded.droppedRuns, 'run of loose stitches is dropped with its row', 'runs of loose stitches are dropped with their rows'),
  ];
  return laid.length === 0 ? sections : [...sections, { what: 'Motifs and colours', words: laid.join('; ') }];
}

function several(count: number, one: string, more: string): readonly string[] {
  return count === 0 ? [] : [`${count} ${count === 1 ? one : more}`];
}

/** Names in a row: `Cuff, Leg and Toe`. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
