import type { Amount } from '../notation/instruction.ts';
import { readRow } from '../notation/readRow.ts';
import { writeRow } from '../notation/writeRow.ts';
import { compareRows } from './canonicalCells.ts';
import type { Edit } from './edit.ts';
import type { CellRun, Line, Pattern, Placement, Section } from './pattern.ts';
import type { PieceFacts } from './pieceFacts.ts';

/** A size of the pattern to come: its name, and the size (index) of the pattern as it is whose numbers it takes. */
export interface NewSize {
  readonly name: string;
  readonly from: number;
}

/**
 * The edits of one transaction that give a pattern other sizes: put in (with the numbers of one that is there, to be
 * changed afterwards), taken out, renamed or in another order. Numbers by size in labels, recipes and the text of rows
 * and steps follow, and so do loose cells, what placements do by size, measurements and pinned numbers. A text keeps its words wherever its numbers can be exchanged in place; text
 * that can't be read to the same instructions afterwards is left, and its findings say so. Refuses a size that is not there.
 */
export function resize(pattern: Pattern, sizes: readonly NewSize[]): readonly Edit[] {
  for (const { from } of sizes) if (!pattern.sizes[from] && pattern.sizes[from] !== '') throw new RangeError(`size ${from} asked of a pattern of ${pattern.sizes.length} sizes`);
  const from = sizes.map((size) => size.from);
  const before = cellRows(pattern);
  return [
    ...before.filter(({ size }) => size >= sizes.length).map((row): Edit => ({ ...row, kind: 'setCells', runs: [] })),
    { kind: 'set', field: 'sizes', value: sizes.map((size) => size.name) },
    ...pattern.sections.flatMap((section) => sectionEdits(section, pattern, from)),
    ...pattern.placements.flatMap((placement) => placementEdits(placement, from)),
    ...cellEdits(before, from),
    ...pieceEdits(pattern, from),
  ];
}

function sectionEdits(section: Section, pattern: Pattern, from: readonly number[]): readonly Edit[] {
  const edits: Edit[] = section.lines.flatMap((line): Edit[] => {
    const resized = resizedLine(line, pattern, from);
    return resized === line ? [] : [{ kind: 'setLine', section: section.id, line: resized }];
  });
  const { recipe } = section;
  if (recipe) {
    const settings = Object.fromEntries(Object.entries(recipe.settings).map(([name, setting]) => [name, typeof setting === 'object' ? picked(setting, from) : setting]));
    if (JSON.stringify(settings) !== JSON.stringify(recipe.settings)) edits.push({ kind: 'setSection', section: section.id, name: section.name, remark: section.remark, recipe: { ...recipe, settings } });
  }
  return edits;
}

/** Measurements and numbers set by hand, one for each size to come. */
function pieceEdits({ piece }: Pattern, from: readonly number[]): readonly Edit[] {
  if (!piece) return [];
  const numbers = (all: readonly (number | null)[]) => from.map((size) => all[size] ?? null);
  const resized: PieceFacts = {
    ...piece,
    ...(piece.measures ? { measures: piece.measures.map((measure) => ({ ...measure, cm: numbers(measure.cm) })) } : {}),
    ...(piece.pins ? { pins: Object.fromEntries(Object.entries(piece.pins).map(([key, all]) => [key, numbers(all)])) } : {}),
  };
  return JSON.stringify(resized) === JSON.stringify(piece) ? [] : [{ kind: 'setPiece', piece: resized }];
}

/** What a placement does by size; a locked one is unlocked for it and locked again. */
function placementEdits(placement: Placement, from: readonly number[]): readonly Edit[] {
  if (!placement.bySize || (placement.bySize.length === from.length && from.every((size, i) => size === i))) return [];
  const { locked, ...open } = placement;
  const set = (one: Placement): Edit => ({ kind: 'setPlacement', placement: one });
  const resized: Placement = { ...open, bySize: from.map((size) => placement.bySize![size] ?? null) };
  return locked ? [set(open), set(resized), set({ ...resized, locked })] : [set(resized)];
}

function resizedLine(line: Line, pattern: Pattern, from: readonly number[]): Line {
  const text = line.kind === 'note' ? line.text : resizedText(line.text, pattern, from);
  if (line.kind !== 'row') return text === line.text ? line : { ...line, text };
  const { rows, start } = line.label;
  const resized = { ...line, text, label: { ...line.label, rows: picked(rows, from), start: start === null ? null : picked(start, from) } };
  return JSON.stringify(resized) === JSON.stringify(line) ? line : resized;
}

/** The numbers of the sizes asked for; one number where they are all the same. */
function picked(amount: Amount, from: readonly number[]): Amount {
  if (typeof amount === 'number') return amount;
  const numbers = from.map((size) => amount[size] ?? amount[0]!);
  return numbers.every((number) => number === numbers[0]) ? numbers[0]! : numbers;
}

function resizedText(text: string, pattern: Pattern, from: readonly number[]): string {
  const options = { terms: pattern.terms, letters: pattern.yarns.map((yarn) => yarn.letter) };
  const old = readRow(text, { ...options, sizes: pattern.sizes.length });
  const wanted = mapAmounts({ body: old.body, stated: old.stated }, from);
  if (JSON.stringify(wanted) === JSON.stringify(mapAmounts({ body: old.body, stated: old.stated }, pattern.sizes.map((_, size) => size)))) return text;
  for (const candidate of [exchanged(text, pattern.sizes.length, from), writeRow(wanted.body, wanted.stated, options)]) {
    const { body, stated } = readRow(candidate, { ...options, sizes: from.length });
    if (JSON.stringify(mapAmounts({ body, stated }, from.map((_, size) => size))) === JSON.stringify(wanted)) return candidate;
  }
  return text;
}

const NUMBER = String.raw`\d+(?:st|nd|rd|th)?`;

/** Text with its numbers by size exchanged in place: `20 (24, 28)`, `20/24/28`, and a count that is a bare list `(40, 44, 48)`. */
function exchanged(text: string, sizes: number, from: readonly number[]): string {
  const listed = new RegExp(String.raw`(${NUMBER})(\s*)([([])\s*(${NUMBER}(?:\s*,\s*${NUMBER}){${sizes - 2}})\s*([)\]])`, 'gi');
  const slashed = new RegExp(String.raw`\b${NUMBER}(?:/${NUMBER}){${sizes - 1}}\b`, 'gi');
  const bare = new RegExp(String.raw`([([])\s*(${NUMBER}(?:\s*,\s*${NUMBER}){${sizes - 1}})\s*([)\]])`, 'gi');
  if (sizes < 2) return text;
  const numbers = (list: string) => list.split(/\s*[,/]\s*/);
  const chosen = (all: readonly string[]) => {
    const some = from.map((size) => all[size]!);
    return some.every((one) => one === some[0]) ? some.slice(0, 1) : some;
  };
  const withList = text.replace(listed, (_, first: string, space: string, open: string, list: string, close: string) => {
    const [one, ...others] = chosen([first, ...numbers(list)]);
    return others.length === 0 ? one! : `${one!}${space}${open}${others.join(', ')}${close}`;
  });
  const withSlashes = withList.replace(slashed, (list) => chosen(numbers(list)).join('/'));
  return withSlashes.replace(bare, (_, open: string, list: string, close: string) => `${open}${chosen(numbers(list)).join(', ')}${close}`);
}

/** Instructions with each number by size mapped to the sizes asked for, and without ranges, so that they can be compared. */
function mapAmounts<T>(value: T, from: readonly number[]): T {
  if (Array.isArray(value)) {
    if (value.length > 0 && value.every((item) => typeof item === 'number')) return picked(value as number[], from) as T;
    return value.map((item: unknown) => mapAmounts(item, from)) as T;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, key === 'range' ? [0, 0] : mapAmounts(inner as unknown, from)])) as T;
}

type CellRow = Pick<CellRun, 'section' | 'row' | 'size'> & { readonly runs: readonly Pick<CellRun, 'from' | 'letters'>[] };

function cellRows(pattern: Pattern): readonly CellRow[] {
  const rows: (Pick<CellRun, 'section' | 'row' | 'size'> & { runs: Pick<CellRun, 'from' | 'letters'>[] })[] = [];
  for (const { section, row, size, from, letters } of [...pattern.cells].sort(compareRows)) {
    const last = rows.at(-1);
    if (last && compareRows(last, { section, row, size }) === 0) last.runs.push({ from, letters });
    else rows.push({ section, row, size, runs: [{ from, letters }] });
  }
  return rows;
}

/** Loose cells of the sizes to come: those of the size each is taken from; a row that had others is set or cleared. */
function cellEdits(before: readonly CellRow[], from: readonly number[]): readonly Edit[] {
  const key = (row: CellRow, size: number) => JSON.stringify([row.section, row.row.line, row.row.nth, size]);
  const there = new Map(before.map((row) => [key(row, row.size), row]));
  const edits: Edit[] = [];
  for (const row of new Map(before.map((one) => [key(one, 0), one])).values()) {
    for (const [size, old] of from.entries()) {
      if (size === old) continue;
      const wanted = there.get(key(row, old))?.runs ?? [];
      const now = there.get(key(row, size))?.runs ?? [];
      if (JSON.stringify(wanted) !== JSON.stringify(now)) edits.push({ kind: 'setCells', section: row.section, row: row.row, size, runs: wanted });
    }
  }
  return edits;
}
