import { finding, type Finding } from '../notation/finding.ts';
import { amountFor, type Amount, type Instruction } from '../notation/instruction.ts';
import type { WrittenLine } from '../notation/written.ts';
import type { Gauge, Line } from './pattern.ts';

type RowLine = Extract<Line, { kind: 'row' }>;

/** What the rows of a length are reckoned with. */
export interface Reckoning {
  readonly gauge: Gauge;
  readonly gaugeSaid: boolean;
  readonly sizes: number;
}

/** The most rows that a length stands for; more are a slip of the unit. */
const MOST_ROWS = 2000;

/**
 * Rows of lines that say a length in the place of a number: "rep row 2 until piece measures 10 cm". Where the number of the
 * row after them tells, so many; else by the row gauge, in whole repeats, each said in `findings` with what was assumed
 * (`where.text` in the whole text). Other lines are left as they are.
 */
export function measuredRows(written: readonly WrittenLine[], lines: readonly Line[], section: string, spanOf: (line: RowLine) => number, { gauge, gaugeSaid, sizes }: Reckoning, findings: Finding[]): readonly Line[] {
  let worked: readonly number[] = new Array<number>(sizes).fill(0);
  let number: readonly number[] = worked;
  const made: Line[] = [];
  for (const [index, line] of lines.entries()) {
    const said = written[index];
    if (line.kind !== 'row' || line.label.word === 'foundation' || line.label.word === 'setup') {
      made.push(line);
      continue;
    }
    const { start } = line.label;
    const before = made.findLast((one) => one.kind === 'row');
    const follows = start !== null && index > 0 && before !== undefined && number.every((last, size) => amountFor(start, size) === last + 1);
    if (start !== null) number = number.map((_, size) => amountFor(start, size) - 1);
    let own: RowLine = follows ? { ...line, label: { ...line.label, start: null } } : line;
    if (said?.kind === 'row' && said.measured) {
      const { measured } = said;
      const next = lines.slice(index + 1).find((one): one is RowLine => one.kind === 'row' && one.label.word !== 'foundation');
      const told = next?.label.start === null || next === undefined ? null : number.map((last, size) => amountFor(next.label.start!, size) - 1 - last);
      const rows = told?.every((count) => count >= 1 && count <= MOST_ROWS) ? told : number.map((_, size) => rowsOf(measured.cm[measured.cm.length === sizes ? size : 0]!, measured.from === 'beginning' ? worked[size]! : 0, spanOf(line), gauge));
      const amount: Amount = rows.every((count) => count === rows[0]) ? rows[0]! : rows;
      own = { ...own, label: { ...own.label, rows: amount } };
      if (rows !== told) {
        const from = said.range[0];
        findings.push(finding('doubtful', 'rowsAssumed', { section, line: line.id, text: [from + measured.range[0], from + measured.range[1]] }, { found: typeof amount === 'number' ? amount : amount.join(', '), expected: measured.cm.join(', '), params: { line: said.lineNumber, gauge: gaugeSaid ? `${gauge.rows} rows in ${gauge.overCm} cm` : '', whole: measured.from === 'beginning' ? 1 : 0 } }));
      }
    }
    const rows = own.label.rows;
    worked = worked.map((count, size) => count + amountFor(rows, size));
    number = number.map((last, size) => last + amountFor(rows, size));
    made.push(own);
  }
  return made;
}

function rowsOf(cm: number, worked: number, span: number, gauge: Gauge): number {
  const rows = Math.min(MOST_ROWS, (cm * gauge.rows) / gauge.overCm - worked);
  return Math.max(1, Math.round(rows / span)) * span;
}

/** Rows that a line's words repeat at a time: 2 for "rep last 2 rows", else 1. */
export function repeatSpan(body: readonly Instruction[]): number {
  const clause = body.find((node) => node.kind === 'asRows');
  return clause?.kind === 'asRows' ? Math.max(1, clause.last ?? clause.rows?.length ?? clause.to - clause.from + 1) : 1;
}
