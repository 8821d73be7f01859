import { check, describeFinding, ledger, yarnsOfRow, type Finding } from '../engine/index.ts';
import type { Loaded } from './loadFile.ts';
import { workedSize } from './workedSize.ts';

/** What `read --json` prints. */
export interface ReadReport {
  readonly title: string;
  readonly sizes: readonly string[];
  readonly size: string;
  readonly sections: readonly {
    readonly name: string;
    readonly rows: readonly {
      readonly label: string;
      readonly number: number | null;
      readonly side: 'RS' | 'WS';
      readonly made: number;
      readonly used: number;
      readonly left: { readonly ahead: number; readonly behind: number };
      readonly stated: number | null;
      readonly yarns: Readonly<Record<string, number>>;
    }[];
  }[];
  readonly findings: readonly {
    readonly degree: Finding['degree'];
    readonly rule: string;
    readonly section: string | null;
    readonly row: number | null;
    readonly text: readonly [number, number] | null;
    readonly message: string;
    readonly expected: number | string | null;
    readonly found: number | string | null;
  }[];
}

/** Works a pattern in one size and reports every row and every finding. */
export function readReport({ pattern, findings: readFindings, offset }: Loaded, size: number): ReadReport {
  const { fabric, colours } = workedSize(pattern, size);
  const letters = pattern.yarns.map((yarn) => yarn.letter);
  const numbers = new Map(fabric.rows.map((row) => [`${row.key.line}/${row.key.nth}`, row.number]));
  // A label out of order is found in the text and in the pattern made from it; once is enough.
  const told = new Set(readFindings.filter(({ rule }) => rule === 'labelOrder').map(({ where }) => where.line));
  const inLines = check(pattern, fabric, colours).filter(({ rule, where }) => rule !== 'labelOrder' || !told.has(where.line));
  // What reading the text found has its place in the whole text; what working found, in its line.
  const findings = [...readFindings, ...inLines].map((one, index) => {
    const from = index < readFindings.length || one.where.line === null ? 0 : (offset(one.where.line)?.from ?? 0);
    return {
      degree: one.degree, rule: one.rule,
      section: pattern.sections.find((section) => section.id === one.where.section)?.name ?? null,
      row: one.where.line === null ? null : (numbers.get(`${one.where.line}/${one.where.nth ?? 0}`) ?? null),
      text: one.where.text ? ([one.where.text[0] + from, one.where.text[1] + from] as const) : null,
      message: describeFinding(one), expected: one.expected, found: one.found,
    };
  });
  return {
    title: pattern.title, sizes: pattern.sizes.filter((name) => name !== ''), size: pattern.sizes[size]!,
    sections: pattern.sections.map((section, index) => ({
      name: section.name,
      rows: ledger(fabric, index).map((row) => ({
        label: labelOf(row.word, row.number), number: row.number, side: row.side, made: row.made, used: row.used, left: row.left, stated: row.stated,
        yarns: Object.fromEntries(yarnsOfRow(fabric, row.row, colours.yarn, letters.length).flatMap((count, yarn) => (count > 0 ? [[letters[yarn]!, count]] : []))),
      })),
    })),
    findings,
  };
}

const WORDS = { row: 'Row', round: 'Rnd', foundation: 'Foundation', setup: 'Set-up row', next: 'Row', step: '' } as const;

function labelOf(word: keyof typeof WORDS, number: number | null): string {
  return number === null ? WORDS[word] : `${WORDS[word]} ${number}`;
}

/** The same for reading: a line a row, findings below. */
export function reportToText(report: ReadReport): string {
  const lines = [report.size ? `${report.title}, size ${report.size}` : report.title];
  for (const section of report.sections) {
    lines.push('', section.name.toUpperCase());
    for (const row of section.rows) {
      const left = row.left.ahead + row.left.behind > 0 ? `  left open ${row.left.ahead} ahead, ${row.left.behind} behind` : '';
      const stated = row.stated !== null ? `  stated ${row.stated}` : '';
      lines.push(`  ${row.label.padEnd(11)} ${row.side}  made ${String(row.made).padStart(4)}  used ${String(row.used).padStart(4)}${left}${stated}`);
    }
  }
  lines.push('', report.findings.length === 0 ? 'No findings.' : `${report.findings.length} findings:`);
  for (const one of report.findings) {
    const place = [one.section, one.row !== null ? `row ${one.row}` : null].filter((part) => part !== null).join(', ');
    lines.push(`  ${one.degree}${place ? ` — ${place}` : ''}: ${one.message}`);
  }
  return lines.join('\n');
}
