import { mapAmount, sameAmount } from './amounts.ts';
import { finding } from './finding.ts';
import type { Finding } from './finding.ts';
import type { Amount, TextRange } from './instruction.ts';
import { asAmount } from './labelReading.ts';
import type { ReadLabel } from './labelReading.ts';
import type { RowLabel } from './written.ts';

/** The most rows one line may stand for: a hundred metres of single crochet. */
export const MOST_ROWS = 20_000;

/** Follows the numbers of a section's labels: how many rows each stands for, and where a number does not follow. */
export class LabelOrder {
  /** Last row number of the section, and of the whole pattern for sections that count on. */
  private last: Amount = 0;
  private lastOfAll: Amount = 0;
  private begun = false;
  /** After rows to a length their number is not known, and the next label tells it. */
  private loose = false;
  /** What would follow if the label before, which was out of order, had had the number that was expected. */
  private meant: Amount | null = null;

  constructor(
    private readonly sizes: number,
    private readonly findings: Finding[],
  ) {}

  newSection(): void {
    this.lastOfAll = this.last;
    this.last = 0;
    this.begun = false;
    this.loose = false;
    this.meant = null;
  }

  /** The line just followed goes on for a length, not a number of rows. */
  goesOn(): void {
    this.loose = true;
  }

  /** The label with its rows counted; `range` is the label's place in the whole text. */
  follow(label: ReadLabel, range: TextRange, lineNumber: number): RowLabel {
    const { word, side } = label;
    if (word === 'foundation' || word === 'setup') return { word, rows: 1, start: null, side };
    if (label.first === null) {
      const rows = this.limited(this.amount(label.rows ?? [1], range, lineNumber), range, lineNumber);
      this.last = add(this.last, rows);
      return { word, rows, start: null, side };
    }
    const first = this.amount(label.first, range, lineNumber);
    const end = label.last === null ? first : this.amount(label.last, range, lineNumber);
    let rows = subtract(add(end, 1), first);
    if (values(rows).some((value) => value < 0) || values(rows).every((value) => value === 0)) {
      this.find('labelOrder', range, lineNumber, words(end), `${words(first)} or more`);
      rows = 1;
    }
    rows = this.limited(rows, range, lineNumber);
    const expected = mapAmount(this.last, (value) => value + 1);
    const follows = sameValues(first, expected) && !this.loose;
    const countsOn = !this.begun && sameValues(first, mapAmount(this.lastOfAll, (value) => value + 1));
    const slipped = !follows && !countsOn && !this.loose && !(this.meant !== null && sameValues(first, this.meant));
    this.meant = slipped ? add(expected, rows) : null;
    if (slipped) this.find('labelOrder', range, lineNumber, words(first), words(expected));
    this.begun = true;
    this.loose = false;
    this.last = subtract(add(first, rows), 1);
    return { word, rows, start: follows ? null : first, side };
  }

  private amount(written: readonly number[], range: TextRange, lineNumber: number): Amount {
    const amount = asAmount(written, this.sizes);
    if (amount !== null) return amount;
    this.findings.push(finding('wrong', 'sizesMismatch', { text: range }, { found: written.length, expected: this.sizes, params: { line: lineNumber } }));
    return written[0]!;
  }

  private limited(rows: Amount, range: TextRange, lineNumber: number): Amount {
    const most = Math.max(...values(rows));
    if (most <= MOST_ROWS) return rows;
    this.findings.push(finding('wrong', 'tooLong', { text: range }, { found: most, expected: MOST_ROWS, params: { line: lineNumber } }));
    return mapAmount(rows, (value) => Math.min(value, MOST_ROWS));
  }

  private find(rule: 'labelOrder', range: TextRange, lineNumber: number, found: string, expected: string): void {
    this.findings.push(finding('doubtful', rule, { text: range }, { found, expected, params: { line: lineNumber } }));
  }
}

function values(amount: Amount): readonly number[] {
  return typeof amount === 'number' ? [amount] : amount;
}

function words(amount: Amount): string {
  return values(amount).join(', ');
}

function sameValues(a: Amount, b: Amount): boolean {
  if (sameAmount(a, b)) return true;
  const [some, others] = [values(a), values(b)];
  const most = Math.max(some.length, others.length);
  return Array.from({ length: most }, (_, index) => (some[index] ?? some[0]) === (others[index] ?? others[0])).every(Boolean);
}

function combine(a: Amount, b: Amount, how: (x: number, y: number) => number): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => how(a, value));
  return a.map((value, index) => how(value, typeof b === 'number' ? b : b[index]!));
}

function add(a: Amount, b: Amount): Amount {
  return combine(a, b, (x, y) => x + y);
}

function subtract(a: Amount, b: Amount): Amount {
  return combine(a, b, (x, y) => x - y);
}
