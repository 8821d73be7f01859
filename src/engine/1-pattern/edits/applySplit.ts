import type { Amount } from '../../notation/instruction.ts';
import { compareCells } from '../canonicalCells.ts';
import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Line, Pattern, RowKey, Section } from '../pattern.ts';
import { takenLine } from './applySection.ts';
import { done, lineWords, noSection, placeFault, refuse, spliced, withSection, type EditOf } from './outcome.ts';

type Row = Extract<Line, { kind: 'row' }>;

/**
 * Cuts a row line before its row `at`. Where sizes differ, each size keeps its own rows: a size with no more than `at`
 * rows has none in the second part. The second part follows on: it states neither a first number nor a side. Row keys
 * from `at` on move to the second part. Refuses an `at` that would leave a part without rows in every size.
 */
export function applySplitLine(pattern: Pattern, { section: id, line, at, newId }: EditOf<'splitLine'>): Applied {
  const found = rowOf(pattern, id, line);
  if ('ok' in found) return found;
  const { section, index, place, row } = found;
  const most = mostRows(row.label.rows);
  if (!Number.isInteger(at) || at < 1 || at >= most) return refuse(`${lineWords(section, row)} has ${most} rows and can't be cut before row ${at + 1} of them.`);
  const taken = newId === '' ? 'The new line needs an id.' : (takenLine(pattern, [newId]) ?? placeFault('A line', place, section.lines.length, LIMITS.lines));
  if (taken) return refuse(taken);
  const [first, second] = parts(row, at, newId);
  const split = withSection(pattern, index, { ...section, lines: spliced(section.lines, place, 1, first, second) });
  const move = (key: RowKey): RowKey => (key.line === line && key.nth >= at ? { line: newId, nth: key.nth - at } : key);
  return done(rekeyed(split, id, move), { kind: 'joinLines', section: id, line });
}

/**
 * Joins a row line with the one after it: the first keeps its id, row keys of the second move to it. Refuses lines that
 * differ in more than id and rows, and lines whose rows by size could not be cut apart again the same way.
 */
export function applyJoinLines(pattern: Pattern, { section: id, line }: EditOf<'joinLines'>): Applied {
  const found = rowOf(pattern, id, line);
  if ('ok' in found) return found;
  const { section, index, place, row } = found;
  const next = section.lines[place + 1];
  if (!next) return refuse(`${lineWords(section, row)} is the last line, so there is none to join it with.`);
  if (next.kind !== 'row' || next.text !== row.text || next.label.word !== row.label.word || next.label.start !== null || next.label.side !== null) {
    return refuse(`${lineWords(section, row)} and the line after it don't read the same, so they can't be joined.`);
  }
  const at = mostRows(row.label.rows);
  const joined: Row = { ...row, label: { ...row.label, rows: sum(row.label.rows, next.label.rows) } };
  if (mostRows(joined.label.rows) > LIMITS.count) return refuse(`${lineWords(section, row)} would stand for more than ${LIMITS.count} rows.`);
  const [first, second] = parts(joined, at, next.id);
  if (at < 1 || at >= mostRows(joined.label.rows) || !sameRows(first, row) || !sameRows(second, next)) {
    return refuse(`${lineWords(section, row)} and the line after it have no rows, or rows that differ by size in a way that can't be kept when they are joined.`);
  }
  const beyond = [...pattern.placements, ...pattern.cells].find((one) => one.section === id && one.row.line === line && one.row.nth >= at);
  if (beyond) return refuse(`${lineWords(section, row)} has ${at} rows, but colour waits on its row ${beyond.row.nth + 1}; take that off first.`);
  const whole = withSection(pattern, index, { ...section, lines: spliced(section.lines, place, 2, joined) });
  const move = (key: RowKey): RowKey => (key.line === next.id ? { line, nth: key.nth + at } : key);
  return done(rekeyed(whole, id, move), { kind: 'splitLine', section: id, line, at, newId: next.id });
}

interface Found {
  readonly section: Section;
  readonly index: number;
  readonly place: number;
  readonly row: Row;
}

function rowOf(pattern: Pattern, id: string, line: string): Found | Applied {
  const index = pattern.sections.findIndex((one) => one.id === id);
  const section = pattern.sections[index];
  if (!section) return noSection(id);
  const place = section.lines.findIndex((one) => one.id === line);
  const row = section.lines[place];
  if (!row) return refuse(`There is no line "${line}" in ${section.name || 'the section'}.`);
  if (row.kind !== 'row') return refuse(`${lineWords(section, row)} is no row.`);
  return { section, index, place, row };
}

function parts(row: Row, at: number, newId: string): readonly [Row, Row] {
  const rows = row.label.rows;
  const keep = typeof rows !== 'number' && isUniform(rows);
  const first = mapped(rows, (count) => Math.min(count, at), keep);
  const second = mapped(rows, (count) => Math.max(count - at, 0), keep);
  return [
    { ...row, label: { ...row.label, rows: first } },
    { ...row, id: newId, label: { ...row.label, rows: second, start: null, side: null } },
  ];
}

/** A vector that has become the same for every size is written as one number, unless it was so before. */
function mapped(rows: Amount, part: (count: number) => number, keep: boolean): Amount {
  if (typeof rows === 'number') return part(rows);
  const each = rows.map(part);
  return isUniform(each) && !keep ? each[0]! : each;
}

function isUniform(rows: readonly number[]): boolean {
  return rows.every((count) => count === rows[0]);
}

function sum(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return typeof b === 'number' ? a + b : b.map((count) => count + a);
  return a.map((count, size) => count + (typeof b === 'number' ? b : (b[size] ?? 0)));
}

function mostRows(rows: Amount): number {
  return typeof rows === 'number' ? rows : Math.max(...rows);
}

function sameRows(a: Row, b: Row): boolean {
  const [x, y] = [a.label.rows, b.label.rows];
  if (typeof x === 'number' || typeof y === 'number') return x === y;
  return x.length === y.length && x.every((count, size) => count === y[size]);
}

function rekeyed(pattern: Pattern, section: string, move: (key: RowKey) => RowKey): Pattern {
  let moved = false;
  const follow = <T extends { readonly section: string; readonly row: RowKey }>(one: T): T => {
    const row = one.section === section ? move(one.row) : one.row;
    if (row === one.row) return one;
    moved = true;
    return { ...one, row };
  };
  const placements = pattern.placements.map(follow);
  const cells = pattern.cells.map(follow);
  return moved ? { ...pattern, placements, cells: cells.sort(compareCells) } : pattern;
}
