import type { Terms } from '../craft/terms.ts';
import { JOINER, cleanText, isPageNumber, lengthWithJoiners, withoutJoiners } from './cleanText.ts';
import { finding } from './finding.ts';
import type { Finding } from './finding.ts';
import { guessTerms } from './guessTerms.ts';
import { isKnownHeader, readHeaderLine, readSizes, readTerms } from './headerReading.ts';
import type { Instruction } from './instruction.ts';
import { measuredIn } from './measureClause.ts';
import type { Measured } from './measureClause.ts';
import { readLabel } from './labelReading.ts';
import type { ReadLabel } from './labelReading.ts';
import { LabelOrder } from './labelOrder.ts';
import { LONGEST_TEXT, readRow } from './readRow.ts';
import { readSectionName } from './sectionNames.ts';
import type { SectionName } from './sectionNames.ts';
import type { WrittenLine, WrittenPattern } from './written.ts';

/** A line that is not empty, with its place in the whole text. */
interface TextLine {
  readonly text: string;
  readonly from: number;
  readonly lineNumber: number;
  /** An empty line stands before it. */
  readonly apart: boolean;
  readonly label: ReadLabel | null;
  readonly name: SectionName | null;
}

interface OpenSection {
  readonly name: string;
  readonly remark: string;
  readonly lineNumber: number;
  readonly lines: WrittenLine[];
}

/** A longer run of lines without labels is not read again with every line that goes on with it. */
const LONGEST_STEP = 2000;

type Header = WrittenPattern['header'][number];

/** Clauses that make a line of a section a step rather than a note. */
const STEP_KINDS = new Set<Instruction['kind']>(['seam', 'fastenOff', 'joinAt', 'turn', 'drawThrough', 'yarn', 'work', 'group', 'repeat', 'chain', 'ring', 'joinRing', 'join', 'asRows', 'skip', 'leave', 'noJoin', 'marker', 'otherSide', 'skipSeam']);
/** How a line without a label of its own begins that goes on with rows before it. */
const GOES_ON = /^(?:rep|repeat|work|continue|cont|keep)\b/i;
const ROW_LIKE = /^(re)?join\b|^attach\b|^with [a-z]\b|^(ch|chain)[ \t-]*\d|^(make |form )?an? (magic|adjustable) ring|^magic ring|^rep(eat)? (the )?(last |previous )?[a-z\d ]{0,12}(row|rnd|round)|^work (even|\d+ (rows|rnds|rounds) even)/i;

/**
 * Takes a written pattern apart: title (the first line), header lines, sections, and in them rows with their labels,
 * steps and notes. Rows are not read, but a line without a label is a step only if it reads as one. Nothing of the text
 * is lost: header words that are not known and lines that are no instruction are kept. Findings carry `where.text` as
 * characters of the whole text and `params.line`. Linear in the text; texts over 2,000,000 characters are refused with a
 * finding. Where terms are asked for they hold, whatever the text says; else those it names, else a guess, which is found unless its words leave no doubt.
 * Ranges are those of the text as given.
 */
export function readWritten(original: string, asked: Terms | null = null): WrittenPattern {
  const nothing = { title: '', terms: asked ?? ('us' as const), termsFrom: { by: 'nothing' as const, words: '' }, header: [], sizes: [''], sections: [] };
  if (original.length > LONGEST_TEXT) return { ...nothing, findings: [finding('wrong', 'tooLong', { text: [0, original.length] }, { found: original.length, expected: LONGEST_TEXT, params: { line: 1 } })] };
  const cleaned = cleanText(original);
  const { lines, text } = textLines(cleaned, original);
  if (lines.length === 0) return { ...nothing, findings: [finding('wrong', 'emptyText', {}, { params: { line: 1 } })] };
  const findings: Finding[] = [];
  const headerEnd = endOfHeader(lines);
  const { title, header } = readHeader(lines.slice(0, headerEnd));
  const said = header.find(({ word }) => /^terms?$/i.test(word));
  const written = said ? readTerms(said.value) : null;
  const guess = written || asked ? null : guessTerms(text);
  const terms = asked ?? written ?? guess!.terms;
  if (guess && (guess.by === 'mixed' || guess.by === 'chains')) findings.push(finding('doubtful', 'termsGuessed', {}, { found: guess.words, expected: terms, params: { line: lines[0]!.lineNumber, by: guess.by } }));
  if (said && !readTerms(said.value)) findings.push(inHeader('badHeader', said, 'US or UK'));
  const sized = header.find(({ word }) => /^sizes?$/i.test(word));
  const names = sized ? readSizes(sized.value) : [];
  const sizes = names.length > 0 ? names : [''];
  const sections = readSections(text, lines.slice(headerEnd), terms, sizes.length, findings);
  if (!sections.some((section) => section.lines.some(({ kind }) => kind === 'row'))) findings.push(finding('doubtful', 'noRows', {}, { params: { line: lines[0]!.lineNumber } }));
  return { title, terms, termsFrom: guess ? { by: guess.by, words: guess.words } : { by: asked ? 'asked' : 'said', words: '' }, header, sizes, sections, findings };
}

function inHeader(rule: 'badHeader', line: Header, expected: string): Finding {
  return finding('doubtful', rule, { text: line.range }, { found: line.value, expected, params: { line: line.lineNumber, word: line.word } });
}

/** The lines that are not empty, and the text with the numbers of its pages blank. */
function textLines(text: string, original: string): { readonly lines: TextLine[]; readonly text: string } {
  const pages: (readonly [number, number])[] = [];
  const lines: TextLine[] = [];
  let lineNumber = 0;
  let breaks = 0;
  let afterPage = false;
  let apart = true;
  for (let from = 0; from <= text.length; ) {
    const end = /\r\n|\r|\n/g;
    end.lastIndex = from;
    const stop = end.exec(text);
    const to = stop ? stop.index : text.length;
    lineNumber += breaks + 1;
    const whole = text.slice(from, to);
    // Breaks inside a word, which cleaning has closed, are lines of the file all the same.
    breaks = whole.includes(JOINER) ? (original.slice(from, to).match(/\r\n|\r|\n/g)?.length ?? 0) : 0;
    const trimmed = whole.trim();
    if (trimmed === '') apart ||= !afterPage;
    else if (lines.length > 0 && isPageNumber(trimmed, apart || /^[ ]*(?:\r\n|\r|\n|$)/.test(text.slice(stop ? to + stop[0].length : to, to + 40)))) {
      // A row goes on after the foot of a page as if nothing stood between.
      apart = false;
      afterPage = true;
      pages.push([from, to]);
    }
    else {
      const start = from + whole.indexOf(trimmed);
      const label = labelOf(trimmed) ?? labelOf(goesOnBelow(trimmed, text.slice(stop ? to + stop[0].length : to, to + 120)));
      lines.push({ text: trimmed, from: start, lineNumber, apart, label: label && isLabel(label, trimmed) ? label : null, name: trimmed.length <= 130 ? readSectionName(trimmed) : null });
      apart = afterPage = false;
    }
    if (!stop) break;
    from = to + stop[0].length;
  }
  let blank = '';
  let at = 0;
  for (const [from, to] of pages) {
    blank += text.slice(at, from) + ' '.repeat(to - from);
    at = to;
  }
  return { lines, text: blank + text.slice(at) };
}

function labelOf(line: string): ReadLabel | null {
  const start = line.slice(0, 400);
  const label = readLabel(withoutJoiners(start));
  return label && label.textFrom > 0 && start.includes(JOINER) ? { ...label, textFrom: lengthWithJoiners(start, label.textFrom) } : label;
}

/** A line of going on to a length that the width of the page broke, with the line below it; else nothing. */
function goesOnBelow(line: string, below: string): string {
  return GOES_ON.test(line) && /\b(?:until|for)\b/i.test(line) ? `${line} ${/^.*/.exec(below)![0].trim()}` : '';
}

/** Without a mark after it, a label is one only if what follows reads as an instruction. */
function isLabel(label: ReadLabel, line: string): boolean {
  if (label.marked) return true;
  const first = readRow(line.slice(label.textFrom, label.textFrom + 200), { terms: 'us', sizes: 1 }).body[0];
  return first !== undefined && first.kind !== 'unread' && first.kind !== 'remark';
}

function isRowLike(line: TextLine | undefined): boolean {
  return line !== undefined && (line.label !== null || (ROW_LIKE.test(line.text) && !/\bcount/i.test(line.text)));
}

/**
 * Whether line `index` names a section: capitals with a row somewhere before the next such name, any name right before a
 * row, or one that stands apart with a row in the lines that follow it without a gap.
 */
function namesSection(lines: readonly TextLine[], index: number, ahead: readonly RowAhead[]): boolean {
  const line = lines[index]!;
  if (!line.name || line.label || isRowLike(line) || isKnownHeader(line.name.name)) return false;
  const { beforeName, inBlock } = ahead[index]!;
  const named = line.name.capitals ? beforeName : isRowLike(lines[index + 1]) || (line.apart && inBlock && line.name.name.split(/\s+/).length <= 4);
  return named && !readsAsStep(line.text, 'us', 1);
}

/** Whether a row line comes before the next line in capitals, and before the next gap. */
interface RowAhead {
  readonly beforeName: boolean;
  readonly inBlock: boolean;
}

function rowsAhead(lines: readonly TextLine[]): RowAhead[] {
  const ahead = new Array<RowAhead>(lines.length);
  let beforeName = false;
  let inBlock = false;
  for (let index = lines.length - 1; index >= 0; index--) {
    const line = lines[index]!;
    ahead[index] = { beforeName, inBlock };
    if (isRowLike(line)) beforeName = inBlock = true;
    else if (line.name?.capitals) beforeName = false;
    if (line.apart) inBlock = false;
  }
  return ahead;
}

/** Index of the first line that belongs to a section: its name, or a row without one. The first line is the title unless it is a row. */
function endOfHeader(lines: readonly TextLine[]): number {
  const ahead = rowsAhead(lines);
  for (let index = 0; index < lines.length; index++) {
    const line = lines[index]!;
    if (line.label || (index > 0 && namesSection(lines, index, ahead))) return index;
  }
  return lines.length;
}

function readHeader(lines: readonly TextLine[]): { readonly title: string; readonly header: Header[] } {
  const header: Header[] = [];
  let title = '';
  lines.forEach((line, index) => {
    const read = readHeaderLine(line.text);
    const range = [line.from, line.from + line.text.length] as const;
    if (index === 0 && !(read && isKnownHeader(read.word))) title = line.text;
    else if (read && /^title$/i.test(read.word) && title === '') title = read.value;
    else header.push({ word: read?.word ?? '', value: read?.value ?? line.text, range, lineNumber: line.lineNumber });
  });
  return { title, header };
}

function readSections(text: string, lines: readonly TextLine[], terms: Terms, sizes: number, findings: Finding[]): OpenSection[] {
  const sections: OpenSection[] = [];
  const ahead = rowsAhead(lines);
  const order = new LabelOrder(sizes, findings);
  lines.forEach((line, index) => {
    if (namesSection(lines, index, ahead)) {
      sections.push({ name: line.name!.name, remark: line.name!.remark, lineNumber: line.lineNumber, lines: [] });
      order.newSection();
      return;
    }
    if (sections.length === 0) {
      findings.push(finding('note', 'textOutsideSection', { text: [line.from, line.from + line.text.length] }, { params: { line: line.lineNumber } }));
      sections.push({ name: '', remark: '', lineNumber: line.lineNumber, lines: [] });
    }
    const section = sections.at(-1)!;
    if (line.label) {
      const from = line.from + line.label.textFrom;
      const to = line.from + line.text.length;
      const before = line.label.bare ? section.lines.findLast(({ kind }) => kind === 'row') : undefined;
      const round = before?.kind === 'row' && before.label.word === 'round';
      const label = order.follow(round ? { ...line.label, word: 'round' } : line.label, [line.from, from], line.lineNumber);
      const measured = label.word === 'foundation' ? null : lengthOf(line.label, text.slice(from, to));
      if (measured) order.goesOn();
      section.lines.push({ kind: 'row', label, text: text.slice(from, to), range: [from, to], lineNumber: line.lineNumber, ...(measured ? { measured } : {}) });
      return;
    }
    const last = section.lines.at(-1);
    if (last && continues(last, line)) {
      const whole = extended(text, last, line, terms, sizes);
      section.lines[section.lines.length - 1] = whole;
      if (whole.kind === 'row' && whole.measured) order.goesOn();
    }
    else section.lines.push(unlabelled(line, section.lines, terms, sizes));
  });
  return sections;
}

/** The length that a line says in the place of a number of rows; null where its label has the number, and for a "for 10 cm" that is no way of going on. */
function lengthOf(label: ReadLabel, text: string): Measured | null {
  const repeats = label.textFrom === 0;
  if (label.last !== null || (!repeats && label.rows?.some((rows) => rows > 1))) return null;
  const measured = measuredIn(text);
  return measured && (measured.from === 'beginning' || repeats) ? measured : null;
}

/** Whether a line goes on with the one before: a row broken in two by the width of the page. */
function continues(before: WrittenLine, line: TextLine): boolean {
  if (before.kind === 'row' && before.text === '') return true;
  if (line.apart) return false;
  if (/[,;]$|\b(and|then|in|next|each|from|to|of|the)$/i.test(before.text.slice(-12))) return true;
  return /^[\p{Ll}\d*([{]/u.test(line.text);
}

function extended(text: string, before: WrittenLine, line: TextLine, terms: Terms, sizes: number): WrittenLine {
  const from = before.text === '' ? line.from : before.range[0];
  const range = [from, line.from + line.text.length] as const;
  const whole = text.slice(range[0], range[1]);
  if (before.kind === 'row') {
    const goesOn = before.label.word === 'next' && GOES_ON.test(whole);
    const measured = before.measured ?? (goesOn || before.label.rows === 1 ? measuredIn(whole) : null);
    const said = measured && before.label.word !== 'foundation' && (goesOn || measured.from === 'beginning');
    return { ...before, ...(said ? { measured } : {}), text: whole, range };
  }
  if (whole.length > LONGEST_STEP) return { ...before, text: whole, range };
  return { kind: readsAsStep(whole, terms, sizes) ? 'step' : 'note', text: whole, range, lineNumber: before.lineNumber };
}

/** A line without a label: the foundation when it is the section's first and makes chains or a ring, a step, or a note. */
function unlabelled(line: TextLine, before: readonly WrittenLine[], terms: Terms, sizes: number): WrittenLine {
  const place = { text: line.text, range: [line.from, line.from + line.text.length] as const, lineNumber: line.lineNumber };
  if (!readsAsStep(line.text, terms, sizes)) return { kind: 'note', ...place };
  const { body, findings } = readRow(line.text, { terms, sizes });
  const first = body.find(({ kind }) => kind !== 'yarn' && kind !== 'remark');
  if ((first?.kind === 'chain' || first?.kind === 'ring') && findings.length === 0 && before.every(({ kind }) => kind === 'note')) {
    return { kind: 'row', label: { word: 'foundation', rows: 1, start: null, side: null }, ...place };
  }
  return { kind: 'step', ...place };
}

/** Whether a line reads as something to do: more of its clauses are read than not, and it is not only a word about turning chains. */
function readsAsStep(line: string, terms: Terms, sizes: number): boolean {
  const { body } = readRow(line, { terms, sizes });
  const read = body.filter(({ kind }) => STEP_KINDS.has(kind)).length;
  const unread = body.filter(({ kind }) => kind === 'unread').length;
  return read > unread && !body.every((node) => (node.kind === 'chain' && node.counts !== null) || node.kind === 'remark');
}
