import type { PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { Degree, Mend } from '../../engine/notation/finding.ts';
import { check } from '../../engine/readings/checks/check.ts';
import { describeFinding } from '../../engine/readings/checks/prose.ts';
import { readingLines } from './readingLines.ts';
import type { UnderstoodSection } from './readingLines.ts';

/** One thing found about the text as a whole, or in its header and labels, with its line in the text. */
export interface ReportLine {
  readonly line: number | null;
  readonly degree: Degree;
  readonly says: string;
  /** The very words, where known, or their beginning. */
  readonly words: string;
  readonly mend: Mend | null;
}

/** What reading a text gave: a sentence, the sections line by line, and what was found elsewhere. */
export interface ReadingReport {
  readonly summary: string;
  /** From where the terms are, in a sentence. */
  readonly terms: string;
  readonly sections: readonly UnderstoodSection[];
  readonly elsewhere: readonly ReportLine[];
  /** What can be mended for certain, each once. */
  readonly mends: readonly Mend[];
  /** Lines of the header that were kept as notes: word and value. */
  readonly kept: readonly { readonly word: string; readonly value: string }[];
}

const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;

/** Reads and works the pattern of a text, and tells what was understood line by line. Notes of the checks are left out. */
export function readingReport(text: string, read: PatternFromText): ReadingReport {
  const { pattern } = read;
  const elsewhere = (found: PatternFromText['findings']) => found.map((each): ReportLine => {
    const line = each.params['line'];
    const range = each.where.text;
    return { line: typeof line === 'number' ? line : null, degree: each.degree, says: describeFinding(each), words: typeof line === 'number' && range ? shortened(text.slice(range[0], range[1])) : '', mend: each.mend };
  });
  if (!pattern) return { summary: 'Nothing could be read yet.', terms: '', sections: [], elsewhere: elsewhere(read.findings), mends: [], kept: [] };
  const fabrics = pattern.sizes.map((_, size) => work(construct(pattern, size)));
  const fabric = fabrics[0]!;
  const worked = check(pattern, fabric, colour(pattern, fabric, 0), fabrics).filter((each) => each.degree !== 'note');
  const rows = fabric.rows.filter((row) => row.made > 0 && row.word !== 'foundation').length;
  const sections = readingLines(pattern, fabric, worked, read.lines);
  // A label out of order stands in its line, with its mend.
  const inLines = new Set(sections.flatMap(({ lines }) => lines.flatMap(({ lineNumber, findings }) => findings.flatMap(({ rule }) => (rule === 'labelOrder' ? [lineNumber] : [])))));
  const told = read.findings.filter((each) => each.degree !== 'note' && !(each.rule === 'labelOrder' && inLines.has(Number(each.params['line']))));
  const asked = sections.reduce((sum, { lines }) => sum + lines.reduce((more, { findings }) => more + findings.length, 0), told.length);
  const ending = asked === 0 ? 'Nothing to ask about.' : `${count(asked, 'thing')} to look at; all of it can be opened and mended on the bench.`;
  const whole = worked.filter((each) => each.where.line === null);
  return {
    summary: `Read “${pattern.title || 'Untitled'}”: ${count(pattern.sections.length, 'section')}, ${count(rows, 'row')}, ${fabric.count} stitches${pattern.sizes.length > 1 ? ` in the first of ${pattern.sizes.length} sizes` : ''}. ${ending}`,
    terms: termsSentence(read),
    sections,
    elsewhere: [...elsewhere(told), ...elsewhere(whole)],
    mends: eachOnce([...told, ...sections.flatMap(({ lines }) => lines.flatMap(({ findings }) => findings))].flatMap(({ mend }) => (mend ? [mend] : []))),
    kept: pattern.notes,
  };
}

/** More than this of the very words is no help beside the sentence. */
const MOST_WORDS = 120;

function shortened(words: string): string {
  return words.length > MOST_WORDS ? `${words.slice(0, MOST_WORDS)}…` : words;
}

/** Rows of one line find the same mend; two mends of the same words would undo each other. */
function eachOnce(mends: readonly Mend[]): readonly Mend[] {
  return [...new Map(mends.map((mend) => [`${mend.line} ${mend.label === undefined ? mend.range[0] : 'label'}`, mend])).values()];
}

function termsSentence({ termsFrom: { by, words }, pattern }: PatternFromText): string {
  const read = pattern?.terms === 'uk' ? 'UK' : 'US';
  switch (by) {
    case 'said':
      return `The text says that its terms are ${read}.`;
    case 'asked':
      return `Read in ${read} terms, as set here.`;
    case 'words':
      return `Its words are ${read} terms: ${words}.`;
    case 'chains':
      return `Guessed from its turning chains: ${read} terms. It does not say.`;
    case 'mixed':
      return `Words of both US and UK terms stand in it: ${words}. Read as ${read}; set what it is.`;
    case 'nothing':
      return `Nothing in it tells its terms. Read as ${read}.`;
  }
}
