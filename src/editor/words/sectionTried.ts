import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { cleanText } from '../../engine/notation/cleanText.ts';
import type { Finding, Mend } from '../../engine/notation/finding.ts';
import { certainMend, mayBeMended } from '../../engine/readings/checks/certainMend.ts';
import { describeFinding } from '../../engine/readings/checks/prose.ts';
import { linesFromText } from '../../engine/readings/words/sectionText.ts';
import type { BenchState } from '../bench/benchState.ts';
import { editSectionText } from '../bench/commands/editSectionText.ts';
import { mendText, placeOfMend } from '../shelf/mendText.ts';
import { oncePerWords } from './oncePerWords.ts';

/** A thing found in the text of a section, in words with its row, and the text with it mended where that is certain. */
export interface Told {
  readonly says: string;
  readonly mend: Mend | null;
  readonly mended: string | null;
}

/** What a section would be with another text. */
export interface SectionTried {
  readonly rows: number;
  readonly told: readonly Told[];
  /** What is to be marked, with ranges of the whole text. */
  readonly marks: readonly Finding[];
}

/** Works a section with another text, without changing anything: its rows, and what would be asked about them. */
export function sectionTried(state: BenchState, id: string, text: string): SectionTried {
  const transaction = editSectionText(id, text)(state);
  const applied = transaction ? applyTransaction(state.pattern, transaction) : null;
  if (applied && !applied.ok) return { rows: 0, told: [{ says: applied.reason, mend: null, mended: null }], marks: [] };
  const pattern = applied?.ok ? applied.pattern : state.pattern;
  const section = pattern.sections.find((each) => each.id === id);
  if (!section) return { rows: 0, told: [], marks: [] };
  const read = linesFromText(text, pattern);
  const lines = new Map(section.lines.flatMap((line, index) => {
    const range = read.places[index];
    return range ? [[line.id, { lineNumber: index + 1, range }] as const] : [];
  }));
  const fabric = work(construct(pattern, state.size), state.fabric);
  const all = () => pattern.sizes.map((_, size) => (size === state.size ? fabric : work(construct(pattern, size))));
  const found = oncePerWords(fabric.findings.filter(({ where, degree }) => where.section === id && degree !== 'note'));
  const fabrics = found.some(mayBeMended) ? all() : [];
  const index = fabric.sections.findIndex((each) => each.id === id);
  const rows = fabric.rows.filter((row) => row.section === index && row.word !== 'step' && row.word !== 'foundation').length;
  const numberOf = ({ where: { line, nth } }: Finding) => fabric.rows.find((row) => row.key.line === line && row.key.nth === (nth ?? 0))?.number ?? null;
  const labels = read.findings.filter(({ degree }) => degree !== 'note');
  const cleaned = cleanText(text);
  const ofLines = found.map((finding) => {
    const number = numberOf(finding);
    const mend = mayBeMended(finding) ? certainMend(pattern, fabrics, finding) : null;
    const { line, text: range } = finding.where;
    const place = line !== null && range ? placeOfMend(cleaned, { lines }, { line, range, text: '' }) : null;
    return {
      told: { says: `${number === null ? '' : `Row ${number}: `}${describeFinding(finding)}`, mend, mended: mend ? mendText(text, { lines }, [mend]) : null },
      marks: place ? [{ ...finding, where: { ...finding.where, text: place } }] : [],
    };
  });
  return {
    rows,
    told: [...labels.map((finding): Told => ({ says: describeFinding(finding), mend: null, mended: null })), ...ofLines.map(({ told }) => told)],
    marks: [...labels, ...ofLines.flatMap(({ marks }) => marks)],
  };
}
