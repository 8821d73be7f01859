import type { PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { Degree, Finding } from '../../engine/notation/finding.ts';
import { check } from '../../engine/readings/checks/check.ts';
import { describeFinding } from '../../engine/readings/checks/prose.ts';

/** One thing found in a written pattern, with its line in the text. */
export interface ReportLine {
  readonly line: number | null;
  readonly degree: Degree;
  readonly says: string;
  /** The very words, where known. */
  readonly words: string;
}

/** What reading a text gave: a sentence, and the findings in the order of the text. */
export interface ReadingReport {
  readonly summary: string;
  readonly findings: readonly ReportLine[];
}

const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;

/** Reads and works the pattern of a text, and tells what was found line by line. Notes are left out. */
export function readingReport(text: string, read: PatternFromText): ReadingReport {
  const { pattern } = read;
  if (!pattern) return { summary: 'Nothing could be read yet.', findings: read.findings.map((each) => lineOf(text, read, each)) };
  const fabric = work(construct(pattern, 0));
  const found = [...read.findings, ...check(pattern, fabric, colour(pattern, fabric, 0))].filter((each) => each.degree !== 'note');
  const rows = fabric.rows.filter((row) => row.made > 0 && row.word !== 'foundation').length;
  const findings = found.map((each) => lineOf(text, read, each)).sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  const told = findings.length === 0 ? 'Nothing to ask about.' : `${count(findings.length, 'thing')} to look at; all of it can be opened and mended on the bench.`;
  return { summary: `Read “${pattern.title || 'Untitled'}”: ${count(pattern.sections.length, 'section')}, ${count(rows, 'row')}, ${fabric.count} stitches. ${told}`, findings };
}

function lineOf(text: string, read: PatternFromText, finding: Finding): ReportLine {
  const { line: id, text: range } = finding.where;
  const place = id === null ? undefined : read.lines.get(id);
  const param = finding.params['line'];
  const own = place && range ? text.slice(place.range[0] + range[0], place.range[0] + range[1]) : '';
  const isOfText = typeof param === 'number';
  return {
    line: isOfText ? param : (place?.lineNumber ?? null),
    degree: finding.degree,
    says: describeFinding(finding),
    words: isOfText ? (range ? text.slice(range[0], range[1]) : '') : own,
  };
}
