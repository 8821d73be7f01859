import type { Line, Pattern } from '../1-pattern/pattern.ts';
import { finding, type Finding } from '../notation/finding.ts';
import { flatForSize } from '../notation/changeAmounts.ts';
import { amountFor, type Instruction, type Stated } from '../notation/instruction.ts';
import type { Program, ProgramRow } from './program.ts';
import { readLine } from './readLine.ts';
import { rowBody, type Known } from './rowBody.ts';

/**
 * The rows of a pattern for one size (0-based), each line written out as often as it stands for, rows that are worked "as
 * row 4" with that row's instructions. A size the pattern doesn't have is a programmer's slip.
 */
export function construct(pattern: Pattern, size: number): Program {
  const made = MADE.get(pattern.sections) ?? [];
  const known = made.find(({ from, program }) => program.size === size && from.sizes === pattern.sizes && from.yarns === pattern.yarns && from.terms === pattern.terms && from.hdcTurningChainCounts === pattern.hdcTurningChainCounts);
  if (known) return known.program;
  const program = constructed(pattern, size);
  MADE.set(pattern.sections, [...made.slice(-7), { from: pattern, program }]);
  return program;
}

/** Programs by the sections they were made of: an edit of colour alone gives the very same program again, and so the same fabric. */
const MADE = new WeakMap<Pattern['sections'], { readonly from: Pattern; readonly program: Program }[]>();

function constructed(pattern: Pattern, size: number): Program {
  if (size < 0 || size >= pattern.sizes.length) throw new RangeError(`size ${size} asked of a pattern of ${pattern.sizes.length} sizes`);
  const rows: ProgramRow[] = [];
  const findings: Finding[] = [];
  pattern.sections.forEach((section, index) => {
    const known: Known = { numbered: new Map(), recent: [] };
    let number = 0;
    for (const line of section.lines) {
      if (line.kind === 'note') continue;
      const read = readLine(line, pattern);
      for (const found of read.findings) findings.push({ ...found, where: { ...found.where, section: section.id, line: line.id } });
      if (line.kind === 'step') {
        rows.push({ key: { line: line.id, nth: 0 }, section: index, word: 'step', number: null, side: null, body: sizeBody(read.body, size), stated: read.stated });
        continue;
      }
      const { word, side, start } = line.label;
      const numbered = word === 'row' || word === 'round' || word === 'next';
      if (numbered && start !== null) number = amountFor(start, size) - 1;
      const count = word === 'foundation' ? 1 : amountFor(line.label.rows, size);
      const before = known.recent.length;
      for (let nth = 0; nth < count; nth++) {
        if (numbered) number++;
        const body = rowBody(sizeBody(read.body, size), nth, known, before, size, (missing, clause) =>
          findings.push(finding('wrong', 'noSuchRow', { section: section.id, line: line.id, nth, text: clause.range }, { found: missing })),
        );
        if (numbered) known.numbered.set(number, body);
        known.recent.push(body);
        rows.push({
          key: { line: line.id, nth }, section: index, word, number: numbered ? number : null,
          side: nth === 0 ? side : null, body, stated: statedFor(read.stated, nth, count, size),
        });
      }
    }
  });
  return {
    size,
    sections: pattern.sections.map(({ id, name }) => ({ id, name })),
    rows,
    letters: pattern.yarns.map((yarn) => yarn.letter),
    hdcTurningChainCounts: pattern.hdcTurningChainCounts,
    findings,
  };
}

const SIZE_BODIES = new WeakMap<readonly Instruction[], Map<number, readonly Instruction[]>>();

/** A row's clauses with those for other sizes left out; the very same list again for the same row and size. */
function sizeBody(body: readonly Instruction[], size: number): readonly Instruction[] {
  const flat = flatForSize(body, size);
  if (flat === body) return body;
  const known = SIZE_BODIES.get(body) ?? new Map<number, readonly Instruction[]>();
  SIZE_BODIES.set(body, known);
  if (!known.has(size)) known.set(size, flat);
  return known.get(size)!;
}

/** The count stated for the nth of `rows` rows: of each row, or of the last with a fixed step before it. */
function statedFor(stated: Stated | null, nth: number, rows: number, size: number): Stated | null {
  if (!stated || stated.of === 'row') return stated;
  if (stated.list) {
    const count = stated.list[nth];
    return count === undefined ? null : { ...stated, count };
  }
  const fromLast = rows - 1 - nth;
  if (fromLast === 0) return stated;
  if (stated.step === null) return null;
  return { ...stated, count: amountFor(stated.count, size) - fromLast * amountFor(stated.step, size) };
}

/** The line of a row key, with its section; null when the pattern has it no more. */
export function lineOf(pattern: Pattern, line: string): { readonly section: number; readonly index: number; readonly line: Line } | null {
  for (let section = 0; section < pattern.sections.length; section++) {
    const index = pattern.sections[section]!.lines.findIndex((candidate) => candidate.id === line);
    if (index >= 0) return { section, index, line: pattern.sections[section]!.lines[index]! };
  }
  return null;
}
