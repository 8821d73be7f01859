import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, RowKey } from '../../../engine/1-pattern/pattern.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import type { Terms } from '../../../engine/craft/terms.ts';
import { readRow } from '../../../engine/notation/readRow.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { cellsOfRow } from './cellsOfRow.ts';
import { freshIds } from './freshIds.ts';
import { rowOfLine } from './rowOfLine.ts';

/** Rows that were copied, to be put elsewhere in this pattern or in another: words, and loose cells of the size they were copied in. */
export interface RowClip {
  readonly terms: Terms;
  /** Names of the sizes that the words are for. */
  readonly sizes: readonly string[];
  readonly rows: readonly {
    readonly word: 'row' | 'round';
    readonly text: string;
    /** The row's words for the size it was copied in, for patterns of other sizes. */
    readonly plain: string;
    readonly runs: readonly { readonly from: number; readonly letters: string }[];
  }[];
}

/** Copies rows of the section shown; null where one of them is no row, or a foundation. */
export function copyRows(state: BenchState, keys: readonly RowKey[]): RowClip | null {
  const section = sectionShown(state);
  const { pattern, size } = state;
  const rows = keys.map((key) => {
    const row = section && rowOfLine(pattern, section.id, key, size);
    if (!section || row?.line.kind !== 'row' || row.line.label.word === 'foundation') return null;
    const { body, stated } = readLine(row.line, pattern);
    return { word: row.line.label.word === 'round' ? 'round' : 'row', text: row.line.text, plain: writeRow(body, stated, { terms: pattern.terms, size }), runs: cellsOfRow(pattern, section.id, key, size) } as const;
  });
  return rows.length === 0 || rows.some((row) => row === null) ? null : { terms: pattern.terms, sizes: pattern.sizes, rows: rows as RowClip['rows'] };
}

/** Puts copied rows after a row, in the terms of this pattern; for other sizes than theirs in the numbers of the size they were copied in. Their loose cells come along in the size shown. */
export function pasteRows(clip: RowClip, after: RowKey, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, after, state.size);
    if (!section || !row || clip.rows.length === 0) return null;
    const { pattern } = state;
    const isSameSizes = clip.sizes.length === pattern.sizes.length;
    const inside = row.line.kind === 'row' && row.nth + 1 < row.rows;
    const [cut, ...ids] = freshIds(pattern, 'line-', clip.rows.length + 1) as [string, ...string[]];
    const lines = clip.rows.map((one, n): Line => ({ kind: 'row', id: ids[n]!, label: { word: one.word, rows: 1, start: null, side: null }, text: inTerms(isSameSizes ? one.text : one.plain, isSameSizes ? clip.sizes.length : 1, clip.terms, pattern.terms) }));
    const known = new Set(pattern.yarns.map(({ letter }) => letter));
    const cells = clip.rows.flatMap(({ runs }, n): Edit[] => {
      const own = runs.map(({ from, letters }) => ({ from, letters: [...letters].map((letter) => (known.has(letter) ? letter : '.')).join('') }));
      return own.length === 0 ? [] : [{ kind: 'setCells', section: section.id, row: { line: ids[n]!, nth: 0 }, size: state.size, runs: own }];
    });
    const edits: Edit[] = [
      ...(inside ? [{ kind: 'splitLine', section: section.id, line: row.line.id, at: row.nth + 1, newId: cut } as const] : []),
      { kind: 'insertLines', section: section.id, at: row.at + 1, lines },
      ...cells,
    ];
    return { label: `Put ${clip.rows.length} ${clip.rows.length === 1 ? 'row' : 'rows'} after ${name}`, at: state.at, edits };
  };
}

/** Words read in one set of terms and written in the other; the same words where the terms are the same. */
function inTerms(text: string, sizes: number, from: Terms, to: Terms): string {
  if (from === to) return text;
  const { body, stated } = readRow(text, { terms: from, sizes });
  return writeRow(body, stated, { terms: to });
}
