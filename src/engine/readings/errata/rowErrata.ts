import type { Section } from '../../1-pattern/pattern.ts';
import { stitchOfCode } from '../../craft/stitches.ts';
import { stitchWord } from '../../craft/terms.ts';
import type { Terms } from '../../craft/terms.ts';
import { titled } from '../../notation/titled.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { Erratum } from './errata.ts';
import type { Editions, WorkedEdition } from './workedEditions.ts';

/** A row as an edition says and works it, for comparing and for printing. */
interface SaidRow {
  readonly key: string;
  /** Section and line. */
  readonly line: string;
  readonly section: string;
  readonly sectionName: string;
  readonly word: string;
  readonly number: number | null;
  /** Instructions in words, without the count. */
  readonly text: string;
  readonly made: number | null;
  /** The count that the row states, where it is not what it makes. */
  readonly stated: string;
  readonly side: string;
  /** Yarns in runs, in working order. */
  readonly yarns: string;
  /** Stitches in runs, in words. */
  readonly stitches: string;
  /** Stitches in runs with all that tells them apart: what is worked, however it is worded. */
  readonly worked: string;
}

/** A change of one row in one size. */
interface RowChange {
  readonly line: string;
  readonly section: string;
  readonly sectionName: string;
  readonly word: string;
  readonly number: number | null;
  readonly now: string | null;
  readonly was: string | null;
  readonly size: string;
  readonly order: number;
}

/** What has changed in the rows of all sections, rows that change alike one after another told together, sizes named where not all change. */
export function rowErrata({ before, after, sizes }: Editions): readonly Erratum[] {
  const changes = sizes.flatMap(({ name, before: was, after: now }) => sizeChanges(was, now, after.terms, name));
  const notes = noteChanges(before.sections, after.sections);
  const names = sizes.map(({ name }) => name);
  const told = new Set(changes.map(({ line }) => line));
  return [...notes, ...folded(changes, names), ...numbersInWords(before.sections, after.sections, told)];
}

/** Numbers that only stand in a line's words, such as the stitches that are left at the end, where nothing else of the line has changed. */
function numbersInWords(before: readonly Section[], after: readonly Section[], told: ReadonlySet<string>): readonly Erratum[] {
  const texts = new Map(before.flatMap(({ id, lines }) => lines.map((line) => [`${id} ${line.id}`, line.text] as const)));
  return after.flatMap(({ id, name, lines }) => lines.flatMap((line): readonly Erratum[] => {
    const was = texts.get(`${id} ${line.id}`);
    if (line.kind === 'note' || was === undefined || told.has(`${id} ${line.id}`) || numbersOf(was) === numbersOf(line.text)) return [];
    return [{ place: titled(name) || (line.kind === 'step' ? 'Step' : 'Row'), section: id, sizes: [], now: line.text, was }];
  }));
}

function sizeChanges(before: WorkedEdition, after: WorkedEdition, terms: Terms, size: string): readonly RowChange[] {
  const [was, now] = [saidRows(before, terms), saidRows(after, terms)];
  const left = new Map(was.map((row) => [row.key, row]));
  const byNumber = new Map(was.map((row) => [numberKey(row), row]));
  const nowKeys = new Set(now.map(({ key }) => key));
  const changes: RowChange[] = [];
  const push = (row: SaidRow, order: number, texts: readonly [string | null, string | null]): void => {
    changes.push({ line: row.line, section: row.section, sectionName: row.sectionName, word: row.word, number: row.number, was: texts[0], now: texts[1], size, order });
  };
  now.forEach((row, order) => {
    const numbered = byNumber.get(numberKey(row));
    // A row whose line has another id now is the one of its section and number, unless that is still there under its own id.
    const other = left.get(row.key) ?? (numbered && left.has(numbered.key) && !nowKeys.has(numbered.key) ? numbered : undefined);
    if (!other) {
      push(row, order, [null, sayAll(row)]);
      return;
    }
    left.delete(other.key);
    for (const texts of differences(other, row)) push(row, order, texts);
  });
  for (const row of left.values()) push(row, now.length, [sayAll(row), null]);
  return changes;
}

/** What differs in a row, most telling first: its instructions with the count, or only its count, its side or its colours. */
function differences(was: SaidRow, now: SaidRow): readonly (readonly [string, string])[] {
  const counts: [string, string] = [countOf(was), countOf(now)];
  const found: (readonly [string, string])[] = [];
  if (was.worked !== now.worked || (was.text !== now.text && numbersOf(was.text) !== numbersOf(now.text))) {
    const stitches: [string, string] = was.stitches === now.stitches ? ['other stitches of the row below', 'worked into other stitches of the row below'] : [was.stitches, now.stitches];
    found.push(was.text === now.text ? (counts[0] === counts[1] ? stitches : counts) : [`${was.text} ${counts[0]}`.trim(), `${now.text} ${counts[1]}`.trim()]);
  } else if (counts[0] !== counts[1]) found.push(counts);
  if (was.number !== now.number || was.word !== now.word) found.push([nameOf(was), nameOf(now)]);
  if (was.side !== now.side) found.push([was.side, now.side]);
  if (was.yarns !== now.yarns) {
    const [before, after] = [onlyYarn(was.yarns), onlyYarn(now.yarns)];
    // More or fewer stitches in the one yarn of a row are told by its count.
    if (before === null || before !== after) found.push([`in ${before ?? was.yarns}`, `in ${after ?? now.yarns}`]);
  }
  return found;
}

/** The letter of a row in one yarn; null where it has several runs. */
function onlyYarn(yarns: string): string | null {
  return /^\d+ (\S+)$/.exec(yarns)?.[1] ?? null;
}

function countOf({ made, stated }: SaidRow): string {
  const count = made === null ? '' : `${made} ${made === 1 ? 'st' : 'sts'}`;
  return stated === '' ? count : `${count} (stated: ${stated})`;
}

function sayAll(row: SaidRow): string {
  return `${row.text} ${countOf(row)}`.trim();
}

function numbersOf(text: string): string {
  return (text.match(/\d+/g) ?? []).join(' ');
}

function nameOf({ word, number }: Pick<SaidRow, 'word' | 'number'>): string {
  const name = word === 'round' ? 'round' : word === 'foundation' ? 'foundation' : word === 'step' ? 'step' : 'row';
  return number === null ? name : `${name} ${number}`;
}

function numberKey({ section, word, number, key }: SaidRow): string {
  return number === null ? `key ${key}` : `${section} ${word === 'round' ? 'round' : 'row'} ${number}`;
}

function saidRows({ pattern, program, fabric, dressed, yarnOf }: WorkedEdition, terms: Terms): readonly SaidRow[] {
  const occurrences = new Map<string, number>();
  return fabric.rows.map((row, index) => {
    const { body, stated } = program.rows[index]!;
    const section = program.sections[row.section]!;
    const line = `${section.id} ${row.key.line} ${row.key.nth}`;
    const nth = occurrences.get(line) ?? 0;
    occurrences.set(line, nth + 1);
    const statedText = stated === null ? '' : writeRow([], stated, { terms, size: program.size }).replace(/^\(|\)$/g, '');
    const makes = row.end > row.first;
    return {
      key: `${line} ${nth}`, line: `${section.id} ${row.key.line}`, section: section.id, sectionName: section.name, word: row.word, number: row.number,
      text: writeRow(body, null, { terms, size: program.size }), made: makes && row.word !== 'step' ? row.made : null,
      stated: row.stated !== null && row.stated !== row.made ? statedText : '',
      side: makes && !row.round && row.word !== 'foundation' && row.word !== 'step' ? row.side : '',
      yarns: runs(row.first, row.end, (stitch) => pattern.yarns[yarnOf[stitch]!]?.letter ?? '?'),
      stitches: runs(row.first, row.end, (stitch) => stitchWord(stitchOfCode(dressed.kind[stitch]!).kind, terms)),
      worked: runs(row.first, row.end, (stitch) => `${dressed.kind[stitch]}/${dressed.flags[stitch]}/${dressed.legs[stitch]}/${dressed.baseStart[stitch + 1]! - dressed.baseStart[stitch]!}`),
    };
  });
}

function runs(first: number, end: number, of: (stitch: number) => string): string {
  const parts: string[] = [];
  for (let from = first, to = first; from < end; from = to) {
    const word = of(from);
    while (to < end && of(to) === word) to++;
    parts.push(`${to - from} ${word}`);
  }
  return parts.join(', ');
}

/** Changes that say the same in several sizes, then in rows one after another, as one. */
function folded(changes: readonly RowChange[], names: readonly string[]): readonly Erratum[] {
  const bySaying = new Map<string, { readonly change: RowChange; readonly sizes: string[] }>();
  for (const change of changes) {
    const key = JSON.stringify([change.section, change.word, change.number, change.was, change.now, change.number === null ? change.order : 0]);
    const known = bySaying.get(key);
    if (known) known.sizes.push(change.size);
    else bySaying.set(key, { change, sizes: [change.size] });
  }
  const said = [...bySaying.values()].map(({ change, sizes }) => ({ change, sizes: [...new Set(sizes)] }));
  const lines: { first: RowChange; last: RowChange; sizes: readonly string[] }[] = [];
  // By what is said: a row may have other changes between those that go on.
  const open = new Map<string, { first: RowChange; last: RowChange; sizes: readonly string[] }>();
  for (const { change, sizes } of said) {
    const key = JSON.stringify([change.section, change.word, sizes, change.was, change.now]);
    const before = open.get(key);
    if (before && before.last.number !== null && change.number === before.last.number + 1) {
      before.last = change;
      continue;
    }
    const line = { first: change, last: change, sizes };
    lines.push(line);
    open.set(key, line);
  }
  return lines.map(({ first, last, sizes }) => ({
    place: placeOf(first, last), section: first.section, sizes: sizes.length === names.length ? [] : sizes, now: first.now, was: first.was,
  }));
}

function placeOf(first: RowChange, last: RowChange): string {
  const name = first.number === last.number ? nameOf(first) : `${first.word === 'round' ? 'rounds' : 'rows'} ${first.number}–${last.number}`;
  return first.sectionName === '' ? name.charAt(0).toUpperCase() + name.slice(1) : `${titled(first.sectionName)}, ${name}`;
}

/** Notes between rows, and sections' names and remarks. */
function noteChanges(before: readonly Section[], after: readonly Section[]): readonly Erratum[] {
  const changes: Erratum[] = [];
  const compare = (place: string, section: string, was: string | null, now: string | null): void => {
    if (was !== now) changes.push({ place, section, sizes: [], now, was });
  };
  for (const section of after) {
    const other = before.find(({ id }) => id === section.id);
    if (!other) {
      compare('Section', section.id, null, section.name);
      continue;
    }
    const place = titled(section.name) || 'Section';
    compare(`${place}, name`, section.id, other.name, section.name);
    compare(`${place}, remark`, section.id, other.remark || null, section.remark || null);
    const notes = (one: Section) => new Map(one.lines.flatMap((line) => (line.kind === 'note' ? [[line.id, line.text] as const] : [])));
    const [was, now] = [notes(other), notes(section)];
    for (const id of new Set([...was.keys(), ...now.keys()])) compare(`${place}, note`, section.id, was.get(id) ?? null, now.get(id) ?? null);
  }
  for (const section of before) if (!after.some(({ id }) => id === section.id)) compare('Section', section.id, section.name, null);
  return changes;
}
