import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { readLine } from '../../engine/2-construct/readLine.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import type { Instruction, Stated } from '../../engine/notation/instruction.ts';
import { writeLabel } from '../../engine/notation/writeLabel.ts';
import { writeRow } from '../../engine/notation/writeRow.ts';
import type { WordStyle } from '../../engine/notation/writeWork.ts';
import { mergeNumbers } from '../../engine/readings/words/mergeSizes.ts';
import { rowCount } from '../../engine/readings/words/rowCount.ts';
import { sectionTitle } from '../piece/sectionTitle.ts';

/** A row to show a wording on. */
export interface TellingRow {
  readonly section: string;
  readonly label: string;
  readonly round: boolean;
  readonly body: readonly Instruction[];
  readonly stated: Stated | null;
}

/** More lines than this of a section are not looked at. */
const MOST_LINES = 300;
/** A row longer than this is no small thing to look at. */
const LONG = 140;
const STYLES: readonly WordStyle[] = [{ runs: 'short' }, { repeats: 'bracket' }, { count: 'dash' }];

/**
 * The row of a pattern on which most of what a designer may choose can be seen: of the section shown if it has one, a short
 * one rather than a long one. Null in a pattern without rows. `fabrics` are the pattern's, by size.
 */
export function tellingRow(pattern: Pattern, fabrics: readonly Fabric[], shown: number): TellingRow | null {
  let best: { readonly row: TellingRow; readonly worth: number } | null = null;
  pattern.sections.forEach((section, index) => {
    for (const line of section.lines.slice(0, MOST_LINES)) {
      if (line.kind !== 'row') continue;
      const { body, stated } = readLine(line, pattern);
      const at = fabrics.map((fabric) => fabric.rows.findIndex((row) => row.key.line === line.id && row.key.nth === 0));
      const number = fabrics.map((fabric, size) => fabric.rows[at[size]!]?.number ?? 0);
      const row: TellingRow = {
        section: sectionTitle(section.name), label: writeLabel(line.label, mergeNumbers(number)), round: line.label.word === 'round', body,
        stated: stated ?? countOf(fabrics, at),
      };
      const text = rowInWords(pattern, row, pattern.terms, {});
      const shows = STYLES.filter((style) => rowInWords(pattern, row, pattern.terms, style) !== text).length;
      const worth = shows * 4 + (index === shown ? 2 : 0) + (text.length <= LONG ? 1 : 0);
      if (!best || worth > best.worth) best = { row, worth };
    }
  });
  return (best as { readonly row: TellingRow } | null)?.row ?? null;
}

/** The row in the terms and the wording asked for, in all sizes. */
export function rowInWords({ sizes }: Pick<Pattern, 'sizes'>, { body, stated, round }: TellingRow, terms: Terms, style: WordStyle): string {
  return writeRow(body, stated, { terms, style, round, sizeNames: sizes });
}

/** The count of a row that states none, as the written pattern has it. */
function countOf(fabrics: readonly Fabric[], rows: readonly number[]): Stated | null {
  const counts = fabrics.map((fabric, size) => (rows[size]! < 0 ? null : rowCount(fabric, rows[size]!, null)));
  if (counts.some((count) => count === null)) return null;
  return { count: mergeNumbers(counts.map((count) => count!.made)), unit: counts[0]!.unit, of: 'row', step: null, range: [0, 0] };
}
