import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import type { PatternFromText } from '../../engine/1-pattern/patternFromText.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { cleanText } from '../../engine/notation/cleanText.ts';
import type { Finding, Mend } from '../../engine/notation/finding.ts';
import { certainMend, mayBeMended } from '../../engine/readings/checks/certainMend.ts';
import { describeFinding } from '../../engine/readings/checks/prose.ts';
import { linesFromText } from '../../engine/readings/words/sectionText.ts';
import type { BenchState } from '../bench/benchState.ts';
import { editSectionText } from '../bench/commands/editSectionText.ts';
import { placeOfMend } from '../shelf/mendText.ts';
import { oncePerWords } from './oncePerWords.ts';

/** A thing found in the text of a section, in words with its row, and how it is mended where that is certain. */
export interface Told {
  readonly says: string;
  readonly mend: Mend | null;
}

/** What a section would be with another text. */
export interface SectionTried {
  readonly rows: number;
  /** What would be asked: the first of `found` things. */
  readonly told: readonly Told[];
  readonly found: number;
  /** What is to be marked, with ranges of the whole text. */
  readonly marks: readonly Finding[];
  /** Where the lines of the text stand in it. */
  readonly lines: PatternFromText['lines'];
}

/** As many things are told, and so many marked: more at once is no help while a text is being written. */
const MOST_TOLD = 8;
const MOST_MARKED = 100;

/** Works a section with another text, without changing anything: its rows, and what would be asked about them. */
export function sectionTried(state: BenchState, id: string, text: string): SectionTried {
  const transaction = editSectionText(id, text)(state);
  const applied = transaction ? applyTransaction(state.pattern, transaction) : null;
  if (applied && !applied.ok) return { rows: 0, told: [{ says: applied.reason, mend: null }], found: 1, marks: [], lines: new Map() };
  const pattern = applied?.ok ? applied.pattern : state.pattern;
  const section = pattern.sections.find((each) => each.id === id);
  if (!section) return { rows: 0, told: [], found: 0, marks: [], lines: new Map() };
  const read = linesFromText(text, pattern);
  const lines = new Map(section.lines.flatMap((line, index) => {
    const range = read.places[index];
    return range ? [[line.id, { lineNumber: index + 1, range }] as const] : [];
  }));
  const fabric = work(construct(pattern, state.size), state.fabric);
  const labels = read.findings.filter(({ degree }) => degree !== 'note');
  const worked = oncePerWords(fabric.findings.filter(({ where, degree }) => where.section === id && degree !== 'note'));
  const first = worked.slice(0, Math.max(0, MOST_TOLD - labels.length));
  const fabrics = first.some(mayBeMended) ? pattern.sizes.map((_, size) => (size === state.size ? fabric : work(construct(pattern, size)))) : [];
  const index = fabric.sections.findIndex((each) => each.id === id);
  const numberOf = ({ where: { line, nth } }: Finding) => fabric.rows.find((row) => row.key.line === line && row.key.nth === (nth ?? 0))?.number ?? null;
  const cleaned = cleanText(text);
  return {
    rows: fabric.rows.filter((row) => row.section === index && row.word !== 'step' && row.word !== 'foundation').length,
    told: [
      ...labels.slice(0, MOST_TOLD).map((finding): Told => ({ says: describeFinding(finding), mend: null })),
      ...first.map((finding): Told => {
        const number = numberOf(finding);
        return { says: `${number === null ? '' : `Row ${number}: `}${describeFinding(finding)}`, mend: mayBeMended(finding) ? certainMend(pattern, fabrics, finding) : null };
      }),
    ],
    found: labels.length + worked.length,
    marks: [
      ...labels,
      ...worked.slice(0, MOST_MARKED).flatMap((finding) => {
        const { line, text: range } = finding.where;
        const place = line !== null && range ? placeOfMend(cleaned, { lines }, { line, range, text: '' }) : null;
        return place ? [{ ...finding, where: { ...finding.where, text: place } }] : [];
      }),
    ],
    lines,
  };
}
