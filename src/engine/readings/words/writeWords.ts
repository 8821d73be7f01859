import { construct } from '../../2-construct/construct.ts';
import { readLine } from '../../2-construct/readLine.ts';
import type { Pattern, Section } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { toTerms } from '../../craft/terms.ts';
import type { Terms } from '../../craft/terms.ts';
import { amountFor } from '../../notation/instruction.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { WordStyle } from '../../notation/writeWork.ts';
import { abbreviationsIn } from './abbreviations.ts';
import { foldLines } from './foldLines.ts';
import type { PatternLine, SizeRows } from './groupRows.ts';
import type { WorkedSize } from './printedRow.ts';
import type { WordsDocument, WordsLine, WordsSection } from './wordsDocument.ts';
import { partMeasures } from './partMeasures.ts';
import { specialWords } from './specialWords.ts';
import { writeHeader } from './writeHeader.ts';

/** A pattern with its worked sizes, and the terms to write it in. */
export interface WordsOptions {
  readonly pattern: Pattern;
  /** The sizes to write, in order; one alone is written without vectors. */
  readonly sizes: readonly { readonly size: number; readonly fabric: Fabric; readonly colours: Pick<Colours, 'yarn'> }[];
  readonly terms: Terms;
  /** The designer's wording; the defaults of `WordStyle` if left out. */
  readonly style?: WordStyle;
}

/**
 * The whole pattern in words. Rows are written from their own words; rows that the colour layer gives several yarns are
 * written in yarn runs, in their own working order. Every row has its count. Equal rows one after another become a range.
 * Numbers that differ between sizes become vectors; where the wording differs, each wording is given with its sizes.
 * Refuses an empty list of sizes as a programmer's slip. Linear in stitches but for rows in yarn runs, which are quadratic
 * in their own length.
 */
export function writeWords({ pattern, sizes, terms, style }: WordsOptions): WordsDocument {
  if (sizes.length === 0) throw new RangeError('words asked of 0 sizes; a pattern is written in 1 or more');
  const worked = sizes.map(({ size, fabric, colours }) => ({ program: construct(pattern, size), fabric, colours }));
  const rows = worked.map(rowsByLine);
  const written = pattern.sections.map((section) => writeSection(section, pattern, worked, rows, terms, style));
  const printed = { ...pattern, sizes: sizes.map(({ size }) => pattern.sizes[size]!) };
  const text = written.flatMap((section) => section.lines.map(({ label, text }) => `${label} ${text}`)).join('\n');
  return { title: pattern.title, terms, header: writeHeader(printed, terms, partMeasures(pattern, sizes)), special: pattern.notes.some(({ word }) => /^special/i.test(word)) ? [] : specialWords(worked.flatMap(({ program }) => program.rows.map(({ body }) => body)), terms), abbreviations: abbreviationsIn(text, terms), sections: written };
}

/** Row indices of each line, in order of nth. */
function rowsByLine({ fabric }: WorkedSize): ReadonlyMap<string, readonly number[]> {
  const map = new Map<string, number[]>();
  fabric.rows.forEach(({ key }, index) => {
    const list = map.get(key.line);
    if (list) list.push(index);
    else map.set(key.line, [index]);
  });
  return map;
}

function writeSection(section: Section, pattern: Pattern, worked: readonly WorkedSize[], rows: readonly ReadonlyMap<string, readonly number[]>[], terms: Terms, style?: WordStyle): WordsSection {
  const lines: WordsLine[] = [];
  let run: PatternLine[] = [];
  const flush = () => {
    if (run.length > 0) lines.push(...foldLines(run, { section: section.id, sizeNames: pattern.sizes, written: worked.map(({ program }) => program.size), terms, ...(style ? { style } : {}) }));
    run = [];
  };
  for (const line of section.lines) {
    if (line.kind === 'note') {
      flush();
      lines.push({ kind: 'note', section: section.id, line: line.id, nthFrom: 0, nthTo: 0, also: [], label: '', text: toTerms(line.text, pattern.terms, terms), sizes: [] });
      continue;
    }
    const { body, stated } = readLine(line, pattern);
    const sizes: SizeRows[] = worked.map((one, index) => ({ worked: one, rows: rows[index]!.get(line.id) ?? [] }));
    // A line for other sizes alone is no line of these.
    if (line.kind === 'row' && worked.every(({ program }) => amountFor(line.label.rows, program.size) === 0)) continue;
    if (sizes.every((size) => size.rows.length === 0)) {
      flush();
      const text = writeRow(body, stated, { terms, ...(style ? { style } : {}) });
      lines.push({ kind: line.kind, section: section.id, line: line.id, nthFrom: 0, nthTo: 0, also: [], label: '', text, sizes: [] });
      continue;
    }
    run.push({ line, body, stated, sizes });
  }
  flush();
  return { id: section.id, name: section.name, remark: toTerms(section.remark, pattern.terms, terms), lines };
}
