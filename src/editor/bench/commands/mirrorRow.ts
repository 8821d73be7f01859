import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import type { Instruction } from '../../../engine/notation/instruction.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { cellsOfRow } from './cellsOfRow.ts';
import { madeByClause } from './madeByClause.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine, type RowOfLine } from './rowOfLine.ts';

/**
 * Turns a row about its middle: the clauses that make stitches in the other order, its loose cells from the other end. None for
 * rows that leave stitches or go beyond the row below, that change yarns in their words, or are worked as other rows, and where nothing would change.
 */
export function mirrorRow(key: RowKey, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!section || !row || row.line.kind !== 'row' || row.line.label.word === 'foundation') return null;
    const alone = rowAlone(state.pattern, row);
    const text = mirroredText(state, row, key);
    const cells = mirroredCells(state, section.id, key, alone.line.id);
    if (text === null || (text === row.line.text && cells.length === 0)) return null;
    return { label: `Mirror ${name}`, at: state.at, edits: [...alone.edits, ...(text === row.line.text ? [] : [{ kind: 'setLine', section: section.id, line: { ...alone.line, text } } as const]), ...cells] };
  };
}

function mirroredText(state: BenchState, row: RowOfLine, key: RowKey): string | null {
  const { body, stated } = readLine(row.line, state.pattern);
  // The chains before the first stitch turn the row; those between stitches hang in it.
  const first = body.findIndex((clause) => makes(clause) && clause.kind !== 'chain');
  const end = body.findLastIndex(makes) + 1;
  const middle = body.slice(first, end);
  if (first < 0 || !middle.every(makes) || !middle.every((clause) => turns(clause)) || body.some(({ kind }) => kind === 'leave')) return null;
  if (middle.length === 1 && middle[0]!.kind === 'work') return row.line.text;
  const turned = middle.map((clause, at) => turnedClause(clause, () => takenBy(state, key, first + at))).reverse();
  if (turned.some((clause) => clause === null)) return null;
  return writeRow([...body.slice(0, first), ...(turned as Instruction[]), ...body.slice(end)], stated, { terms: state.pattern.terms, sizeNames: state.pattern.sizes });
}

function makes({ kind }: Instruction): boolean {
  return kind === 'work' || kind === 'group' || kind === 'repeat' || kind === 'skip' || kind === 'chain';
}

/** Whether a clause means the same in the other order of its row. */
function turns(clause: Instruction): boolean {
  switch (clause.kind) {
    case 'work':
    case 'group':
      return clause.into.at === 'next' || clause.into.at === 'across';
    case 'repeat':
      return clause.body.every(turns);
    case 'skip':
    case 'chain':
      return true;
    default:
      return false;
  }
}

/** The clause as it stands in the mirrored row: what went to the end of the row is told by its number. `taken`: places it takes, one number a size. */
function turnedClause(clause: Instruction, taken: () => readonly number[]): Instruction | null {
  if (clause.kind === 'repeat') {
    const body = clause.body.map((inner) => turnedClause(inner, () => [])).reverse();
    return body.some((inner) => inner === null) || clause.times.kind === 'toEnd' ? null : { ...clause, body: body as Instruction[] };
  }
  if ((clause.kind !== 'work' && clause.kind !== 'group') || clause.into.at !== 'across') return clause;
  const counts = taken();
  if (counts.length === 0 || counts.some((count) => count < 1)) return null;
  return { ...clause, into: { at: 'next', count: counts.every((count) => count === counts[0]) ? counts[0]! : counts, what: clause.into.what } };
}

/** Stitches that a clause of one each has made, by size; those that a size hasn't got are as in the size shown. */
function takenBy(state: BenchState, key: RowKey, index: number): readonly number[] {
  const made = madeByClause(state.grids, key, index).map((own) => own.length);
  return made.map((count) => (count === 0 ? (made[state.size] ?? 0) : count));
}

function mirroredCells(state: BenchState, section: string, key: RowKey, line: string): Edit[] {
  return state.pattern.sizes.flatMap((_, size): Edit[] => {
    const runs = cellsOfRow(state.pattern, section, key, size);
    const { fabric, columns } = state.grids[size]!;
    const row = fabric.rows.findIndex((each) => each.key.line === key.line && each.key.nth === key.nth && fabric.sections[each.section]?.id === section);
    if (runs.length === 0 || row < 0) return [];
    const width = columns.start[row + 1]! - columns.start[row]!;
    const turned = runs.map(({ from, letters }) => ({ from: width - from - letters.length, letters: [...letters].reverse().join('') })).filter(({ from }) => from >= 0);
    return [{ kind: 'setCells', section, row: { line, nth: 0 }, size, runs: turned.sort((a, b) => a.from - b.from) }];
  });
}
