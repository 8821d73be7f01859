import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern, RowKey } from '../../../engine/1-pattern/pattern.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { cellsOfRow } from './cellsOfRow.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

type Row = Extract<Line, { kind: 'row' }>;

/**
 * Moves a row past the one after it (`by` 1) or before it (−1): the two change places with their loose cells and the motifs
 * that begin on them. None at the ends of a section, past a foundation, a step or a note, and between rows and rounds.
 */
export function swapRows(key: RowKey, by: 1 | -1, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const other = section && neighbour(state, section.id, key, by);
    if (!section || !other) return null;
    const first = rowOfLine(state.pattern, section.id, key, state.size);
    if (!first || first.line.kind !== 'row' || first.line.label.word === 'foundation') return null;
    const one = rowAlone(state.pattern, first);
    // The neighbour may have stood on the same line, so it is looked for in what the first cut has left.
    const next = neighbourAfter(one.pattern, section.id, one.line.id, by);
    const second = next && rowOfLine(one.pattern, section.id, next, 0);
    if (!second || second.line.kind !== 'row' || second.line.label.word === 'foundation' || one.line.kind !== 'row' || second.line.label.word !== one.line.label.word) return null;
    const two = rowAlone(one.pattern, second);
    const { pattern } = two;
    const [a, b] = [lineOf(pattern, section.id, one.line.id), two.line];
    if (a?.kind !== 'row' || b.kind !== 'row' || !sameRows(a, b)) return null;
    const edits: Edit[] = [...one.edits, ...two.edits, { kind: 'setLine', section: section.id, line: { ...a, text: b.text } }, { kind: 'setLine', section: section.id, line: { ...b, text: a.text } }, ...swappedColours(pattern, section.id, a.id, b.id)];
    return { label: `Move ${name} ${by === 1 ? 'up' : 'down'}`, at: state.at, edits };
  };
}

function neighbour(state: BenchState, section: string, key: RowKey, by: 1 | -1): RowKey | null {
  const row = rowOfLine(state.pattern, section, key, state.size);
  if (!row) return null;
  if (by === 1 ? row.nth + 1 < row.rows : row.nth > 0) return { line: key.line, nth: key.nth + by };
  const line = row.section.lines[row.at + by];
  return line?.kind === 'row' && line.label.word !== 'foundation' ? { line: line.id, nth: 0 } : null;
}

function neighbourAfter(pattern: Pattern, section: string, line: string, by: 1 | -1): RowKey | null {
  const lines = pattern.sections.find((each) => each.id === section)?.lines ?? [];
  const next = lines[lines.findIndex((each) => each.id === line) + by];
  if (next?.kind !== 'row') return null;
  const rows = typeof next.label.rows === 'number' ? next.label.rows : Math.min(...next.label.rows);
  return rows < 1 ? null : { line: next.id, nth: by === 1 ? 0 : rows - 1 };
}

function lineOf(pattern: Pattern, section: string, line: string): Line | undefined {
  return pattern.sections.find((each) => each.id === section)?.lines.find((each) => each.id === line);
}

/** A row that some sizes haven't got may only change places with one that the same sizes have. */
function sameRows(a: Row, b: Row): boolean {
  return JSON.stringify(a.label.rows) === JSON.stringify(b.label.rows);
}

/** Loose cells and motifs' beginnings of two rows that stand alone, changed over. */
function swappedColours(pattern: Pattern, section: string, a: string, b: string): Edit[] {
  const other = (line: string): string => (line === a ? b : a);
  const cells = pattern.sizes.flatMap((_, size) => {
    const on = (line: string) => cellsOfRow(pattern, section, { line, nth: 0 }, size);
    const [ofA, ofB] = [on(a), on(b)];
    if (ofA.length === 0 && ofB.length === 0) return [];
    const set = (line: string, next: typeof ofA): Edit => ({ kind: 'setCells', section, row: { line, nth: 0 }, size, runs: next });
    return [set(a, ofB), set(b, ofA)];
  });
  const placed = pattern.placements.filter((each) => each.section === section && (each.row.line === a || each.row.line === b)).map((placement): Edit => ({ kind: 'setPlacement', placement: { ...placement, row: { line: other(placement.row.line), nth: 0 } } }));
  return [...cells, ...placed];
}

