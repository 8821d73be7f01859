import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { FLAG, type Fabric } from '../../engine/3-fabric/fabric.ts';
import type { Finding } from '../../engine/notation/finding.ts';
import { rowEntries } from '../bench/rowEntries.ts';
import { sectionTitle } from '../piece/sectionTitle.ts';

/** A place that was looked for: a row, a stitch of it, or a finding with its row. */
export interface FoundPlace {
  readonly kind: 'row' | 'stitch' | 'finding';
  /** "Heel, row 9". */
  readonly name: string;
  /** The words that the place is known by: its row's text, or the finding. */
  readonly says: string;
  /** Index of the section. */
  readonly section: number;
  /** Row index in the fabric; -1 where a note or a line without rows is meant. */
  readonly row: number;
  readonly stitch: number | null;
}

/** Most places that are listed. */
export const MOST_FOUND = 60;

/**
 * Rows, stitches and findings that answer to all words of `asked`: a section's name, a row's number, words of the row, of a motif's
 * or a yarn's name, of a finding. "heel 9", "bobble", "9 5" (stitch 5 of row 9). The section shown comes first. Empty for no words.
 */
export function findPlaces(pattern: Pattern, fabric: Fabric, size: number, shown: number, findings: readonly Finding[], describe: (finding: Finding) => string, asked: string): readonly FoundPlace[] {
  const words = asked.toLowerCase().split(/[\s,;:.]+/).filter((word) => word !== '');
  if (words.length === 0) return [];
  const order = [shown, ...pattern.sections.keys()].filter((section, at, all) => section < pattern.sections.length && all.indexOf(section) === at);
  const found: { readonly place: FoundPlace; readonly isNamed: boolean }[] = [];
  for (const finding of findings) {
    const says = describe(finding);
    const section = pattern.sections.findIndex(({ id }) => id === finding.where.section);
    if (section < 0 || !holds(says.toLowerCase(), words)) continue;
    const row = fabric.rows.findIndex(({ key }) => key.line === finding.where.line && key.nth === (finding.where.nth ?? 0));
    found.push({ isNamed: false, place: { kind: 'finding', name: sectionTitle(pattern.sections[section]!.name), says, section, row, stitch: finding.where.stitch } });
  }
  for (const section of order) {
    const title = sectionTitle(pattern.sections[section]!.name);
    for (const { name, line, row, worked } of rowEntries(pattern, fabric, section, size, [])) {
      const place = { name: `${title}, ${name.toLowerCase()}`, says: line.text, section, row };
      const number = worked?.number ?? null;
      const rest = number === null ? words : words.filter((word) => word !== String(number) && !isPart(`${title} ${name}`.toLowerCase(), word));
      // The first number is the row's; a second one is a stitch of it, counted as it is worked.
      const isNamed = number !== null && words.find((word) => /^\d+$/.test(word)) === String(number);
      const nth = isNamed && rest.length === 1 ? Number(rest[0]) : Number.NaN;
      if (isNamed && rest.length === 0) found.push({ isNamed, place: { kind: 'row', ...place, stitch: null } });
      else if (Number.isInteger(nth) && worked && nth >= 1 && nth <= worked.made) found.push({ isNamed, place: { kind: 'stitch', ...place, name: `${place.name}, stitch ${nth}`, stitch: nthCounted(fabric, row, nth) } });
      else if (holds(`${title} ${name} ${line.text}`.toLowerCase(), words)) found.push({ isNamed: false, place: { kind: 'row', ...place, stitch: null } });
    }
  }
  // What is named by its number comes first, that of the section shown before others.
  const rank = ({ place, isNamed }: (typeof found)[number]): number => (isNamed ? 0 : 2) + (place.section === shown ? 0 : 1);
  return [...found].sort((a, b) => rank(a) - rank(b)).slice(0, MOST_FOUND).map(({ place }) => place);
}

/** Whether a word, no number, is part of a name. */
function isPart(name: string, word: string): boolean {
  return !/^\d+$/.test(word) && name.includes(word);
}

/** Numbers are looked for whole: 1 is not found in 12. */
function holds(text: string, words: readonly string[]): boolean {
  return words.every((word) => (/^\d+$/.test(word) ? new RegExp(`(?<!\\d)${word}(?!\\d)`).test(text) : text.includes(word)));
}

function nthCounted(fabric: Fabric, row: number, nth: number): number | null {
  const worked = fabric.rows[row];
  let counted = 0;
  for (let stitch = worked?.first ?? 0; stitch < (worked?.end ?? 0); stitch++) if (fabric.flags[stitch]! & FLAG.counts && ++counted === nth) return stitch;
  return null;
}
