import type { Terms } from '../craft/terms.ts';
import { finding } from '../notation/finding.ts';
import type { Finding } from '../notation/finding.ts';
import type { Instruction, TextRange } from '../notation/instruction.ts';
import { withoutJoiners } from '../notation/cleanText.ts';
import { readRow } from '../notation/readRow.ts';
import { readWritten } from '../notation/readWritten.ts';
import type { TermsFrom, WrittenLine, WrittenPattern } from '../notation/written.ts';
import { readGauge, readHook, readYarn, readYarnList } from './headerValues.ts';
import { measuredRows, repeatSpan, type Reckoning } from './measuredRows.ts';
import type { Gauge, Line, Pattern, Section, Yarn } from './pattern.ts';

/** A pattern made from text. */
export interface PatternFromText {
  /** Null when there was nothing to read, or too much. */
  readonly pattern: Pattern | null;
  /** What was found in header, names and labels; with ids of section and line where it belongs to one, `where.text` and `params.line` in the whole text. */
  readonly findings: readonly Finding[];
  /** Whether the gauge is the text's own; if not, it is only a middle one to draw with. */
  readonly gaugeSaid: boolean;
  /** Where the terms are from: said, asked for, or guessed. */
  readonly termsFrom: TermsFrom;
  /** Where each line of the pattern stands: its number in the file, counted from 1, and the characters of its own text in the whole text. */
  readonly lines: ReadonlyMap<string, { readonly lineNumber: number; readonly range: TextRange }>;
}

/** The gauge of a pattern that gives none: a middle one of worsted single crochet, *from memory*; `gaugeSaid` is false then. */
const NO_GAUGE: Gauge = { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' };

/**
 * Builds a pattern from written text. Ids are the same for the same text: sections `s1`, `s2` …, lines `l1`, `l2` … through
 * the whole pattern, the pattern's own from its title. Lines keep their text, in the terms of the text; header words that
 * the document has no field for become notes, in order, and so does what a known word says beyond its field. Rows are
 * not checked here: working the pattern reads them. A turning chain of 2 counts as a half double crochet unless a header
 * line `Turning chains:` says that it does not (most published lessons count it). `terms`, where given, hold whatever the text says.
 * MC, CC, CC1 … are yarns M, C, C, D …
 */
export function patternFromText(text: string, terms: Terms | null = null): PatternFromText {
  const written = readWritten(text, terms);
  const lines = new Map<string, { lineNumber: number; range: TextRange }>();
  if (written.findings.some(({ rule }) => rule === 'emptyText' || rule === 'tooLong') && written.sections.length === 0 && written.header.length === 0 && written.title === '') {
    return { pattern: null, findings: written.findings, gaugeSaid: false, termsFrom: written.termsFrom, lines };
  }
  const findings: Finding[] = [];
  const header = headerOf(written, findings);
  const sections = sectionsOf(written, lines, { gauge: header.gauge, gaugeSaid: header.gauge !== NO_GAUGE, sizes: written.sizes.length }, findings);
  const yarns = withUsedYarns(header.yarns, sections, written, findings);
  const pattern: Pattern = {
    id: slug(written.title), title: written.title, designer: header.designer, terms: written.terms, gauge: header.gauge, hookMm: header.hookMm, yarns,
    sizes: written.sizes, hdcTurningChainCounts: header.hdcTurningChainCounts, notes: header.notes, sections, motifs: [], placements: [], cells: [],
  };
  return { pattern, findings: [...located(written, sections, lines), ...findings], gaugeSaid: header.gauge !== NO_GAUGE, termsFrom: written.termsFrom, lines };
}

type HeaderFields = Pick<Pattern, 'designer' | 'gauge' | 'hookMm' | 'hdcTurningChainCounts' | 'notes'> & { readonly yarns: readonly Yarn[] };

function headerOf(written: WrittenPattern, findings: Finding[]): HeaderFields {
  const notes: { word: string; value: string }[] = [];
  const yarns = new Map<string, Yarn>();
  let gauge: Gauge | null = null;
  let hookMm: number | null = null;
  let designer = '';
  let hdcTurningChainCounts = true;
  const keep = (word: string, rest: string) => {
    if (rest !== '') notes.push({ word, value: rest });
  };
  for (const line of written.header) {
    const { word, value } = line;
    const key = word.toLowerCase();
    const bad = (expected: string) => findings.push(finding('doubtful', 'badHeader', { text: line.range }, { found: value, expected, params: { line: line.lineNumber, word } }));
    const letter = /^(?:yarn|colou?r)\s+([a-z])$/i.exec(word)?.[1]?.toUpperCase() ?? colourLetter(word);
    const list = /^(yarns?|colou?rs?)$/.test(key) ? readYarnList(value) : null;
    if (key === 'terms' || key === 'term' || key === 'size' || key === 'sizes') continue;
    if (letter !== undefined && !yarns.has(letter)) yarns.set(letter, readYarn(letter, value, yarns.size));
    else if (list) for (const entry of list) yarns.set(entry.letter, yarns.get(entry.letter) ?? readYarn(entry.letter, entry.text, yarns.size));
    else if ((key === 'gauge' || key === 'tension') && gauge === null) {
      const read = readGauge(value, written.terms);
      if (read) {
        gauge = read.value;
        keep(`${word} (more)`, read.rest);
      } else {
        bad('16 sts and 18 rows = 10 cm in sc');
        keep(word, value);
      }
    } else if (key === 'hook' && hookMm === null) {
      const read = readHook(value);
      hookMm = read?.value ?? null;
      if (read) keep(`${word} (more)`, read.rest);
      else {
        bad('4.5 mm');
        keep(word, value);
      }
    } else if ((key === 'designer' || key === 'design by' || key === 'by') && designer === '') designer = value;
    else if (/^turning chains?$/.test(key) && /\b(hdc|htr|half)\b/i.test(value) && /count/i.test(value)) hdcTurningChainCounts = !/\bnot\b|n't\b|n’t\b/i.test(value);
    else notes.push({ word, value });
  }
  return { designer, gauge: gauge ?? NO_GAUGE, hookMm, hdcTurningChainCounts, notes, yarns: [...yarns.values()] };
}

/** The letter of `MC`, `Main colour (MC)`, `Yarn CC1`; undefined for other words. */
function colourLetter(word: string): string | undefined {
  const match = /\b(?:(MC)|CC([1-5])?)\b/.exec(word);
  if (!match) return /^main colou?r$/i.test(word) ? 'M' : undefined;
  return match[1] ? 'M' : 'CDEFG'[Number(match[2] ?? 1) - 1];
}

function sectionsOf(written: WrittenPattern, lines: Map<string, { lineNumber: number; range: TextRange }>, reckoning: Reckoning, findings: Finding[]): Section[] {
  const { terms, sizes } = written;
  return written.sections.map((section, index) => {
    const id = `s${index + 1}`;
    const own = section.lines.map((line) => {
      const lineId = `l${lines.size + 1}`;
      lines.set(lineId, { lineNumber: line.lineNumber, range: line.range });
      return lineOf(line, lineId);
    });
    const measured = section.lines.some((line) => line.kind === 'row' && line.measured);
    const spanOf = (line: Line) => repeatSpan(readRow(line.text, { terms, sizes: sizes.length }).body);
    return { id, name: section.name, remark: section.remark, recipe: null, lines: measured ? measuredRows(section.lines, own, id, spanOf, reckoning, findings) : own };
  });
}

/** A line broken over several is one line in the document; the breaks become spaces, so that characters keep their places. */
function lineOf(line: WrittenLine, id: string): Line {
  const text = withoutJoiners(line.text.replace(/[\r\n\t]/g, ' '));
  return line.kind === 'row' ? { kind: 'row', id, label: line.label, text } : { kind: line.kind, id, text };
}

/** Yarns of the header and those that only rows name, each of these found once. A pattern has at least one yarn. */
function withUsedYarns(yarns: readonly Yarn[], sections: readonly Section[], written: WrittenPattern, findings: Finding[]): readonly Yarn[] {
  const all = new Map(yarns.map((yarn) => [yarn.letter, yarn]));
  for (const section of sections) {
    for (const line of section.lines) {
      if (line.kind === 'note') continue;
      visitYarns(readRow(line.text, { terms: written.terms, sizes: written.sizes.length }).body, (letter, range) => {
        if (all.has(letter)) return;
        all.set(letter, readYarn(letter, '', all.size));
        if (yarns.length > 0) findings.push(finding('doubtful', 'unknownYarn', { section: section.id, line: line.id, text: range }, { found: letter, expected: yarns.map((yarn) => yarn.letter).join(', ') }));
      });
    }
  }
  if (all.size === 0) all.set('A', readYarn('A', '', 0));
  return [...all.values()];
}

function visitYarns(body: readonly Instruction[], visit: (letter: string, range: TextRange) => void): void {
  for (const node of body) {
    if (node.kind === 'yarn') visit(node.letter, node.range);
    else if (node.kind === 'joinAt' && node.yarn !== null) visit(node.yarn, node.range);
    else if (node.kind === 'repeat' || node.kind === 'group') visitYarns(node.body, visit);
  }
}

/** Gives findings of the text the ids of the section and the line that they belong to. */
function located(written: WrittenPattern, sections: readonly Section[], lines: PatternFromText['lines']): Finding[] {
  const idOfLine = new Map([...lines].map(([id, { lineNumber }]) => [lineNumber, id]));
  const sectionOf = new Map(sections.flatMap((section) => section.lines.map((line) => [line.id, section.id] as const)));
  return written.findings.map((found) => {
    const line = idOfLine.get(Number(found.params.line)) ?? null;
    return line === null || found.rule === 'noRows' || found.rule === 'termsGuessed' ? found : { ...found, where: { ...found.where, line, section: sectionOf.get(line) ?? null } };
  });
}

function slug(title: string): string {
  const words = title.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 60);
  return words === '' ? 'pattern' : words;
}
