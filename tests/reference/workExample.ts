import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Program, ProgramRow } from '../../src/engine/2-construct/program.ts';
import type { WorkedRow } from '../../src/engine/3-fabric/fabric.ts';
import { work } from '../../src/engine/3-fabric/work.ts';
import type { Finding } from '../../src/engine/notation/finding.ts';
import { readRow } from '../../src/engine/notation/readRow.ts';
import { specialStitches } from '../../src/engine/notation/specialStitches.ts';

/** A published example, its rows put in today's standard notation, with the counts that follow from them. */
export interface Example {
  readonly id: string;
  readonly source: { readonly title: string; readonly author?: string; readonly year?: string };
  readonly construction: 'rows' | 'rounds';
  readonly verdict: 'agrees' | 'wrong' | 'mixed' | 'ambiguous';
  readonly foundation: { readonly type: string; readonly chains?: number; readonly joined?: boolean; readonly count?: number };
  readonly rows: readonly { readonly label: string; readonly instruction: string; readonly stated?: number; readonly derived?: number; readonly unit?: string; readonly unworked?: number }[];
}

export const EXAMPLES = JSON.parse(readFileSync(join(import.meta.dirname, 'worked-examples.json'), 'utf8')) as readonly Example[];

const LETTERS = ['A', 'B', 'C'];

/** Beeton's spot, which the source explains before its rounds: several trebles (US dc) drawn together in one stitch. */
const SPOT = specialStitches([{ word: 'Special stitches', value: 'spot: 5-dc bobble in next st' }], 'us');

/**
 * Works the first `rows` rows of an example from its foundation; the last worked row of each labelled row, and all findings.
 * Rows in `bridged` are told in words that are no standard notation: in their stead a new edge of as many chains as the row
 * makes is begun, so that the rows after them can be worked.
 */
export function workExample(example: Example, rows = example.rows.length, bridged: ReadonlySet<number> = new Set()): { worked: (WorkedRow | undefined)[]; findings: readonly Finding[]; texts: readonly string[] } {
  const program: ProgramRow[] = [];
  const findings: Finding[] = [];
  const lastOf: number[] = [];
  const put = (line: string, word: ProgramRow['word'], text: string, count = 1, stated: number | null = null, unit = 'sts') => {
    const read = readRow(text, { terms: 'us', sizes: 1, letters: LETTERS, special: example.id === 'we-s16' ? SPOT : [] });
    findings.push(...read.findings.map((found) => ({ ...found, where: { ...found.where, line } })));
    for (let nth = 0; nth < count; nth++) program.push({ key: { line, nth }, section: 0, word, number: null, side: null, body: read.body, stated: stated === null ? null : { count: stated, unit, of: 'row', step: null, range: [0, 0] } });
  };
  const begun = example.foundation.type === 'row' && example.id === 'we-s07' ? EXAMPLES.find((other) => other.id === 'we-s05')! : example;
  put('foundation', 'foundation', foundationText(begun));
  // The point is worked on row 20 of the diamond before it.
  if (begun !== example) for (const row of begun.rows.slice(0, 20)) put(row.label, 'row', row.instruction);
  example.rows.slice(0, rows).forEach((row, index) => {
    const range = /\b(\d+)\s*[-–]\s*(\d+)/.exec(row.label);
    const word = example.construction === 'rounds' || /rnd/i.test(row.label) ? 'round' : 'row';
    if (bridged.has(index)) {
      put(String(index), 'foundation', `fasten off, ch ${Math.max(1, Math.round(row.derived ?? 1))}${word === 'round' ? ', join to form a ring' : ''}`);
      lastOf.push(program.length - 1);
      return;
    }
    for (const [at, text] of baseOf(example.id, index).entries()) put(`base ${index}`, at === 0 ? 'foundation' : 'row', text);
    const counted = row.unit === undefined || row.unit === 'meshes';
    put(String(index), word, row.instruction, range ? Number(range[2]) - Number(range[1]) + 1 : 1, counted ? (row.stated ?? null) : null, row.unit);
    lastOf.push(program.length - 1);
  });
  const whole: Program = { size: 0, sections: [{ id: 's', name: example.id }], rows: program, letters: LETTERS, hdcTurningChainCounts: true, findings };
  const fabric = work(whole);
  return { worked: lastOf.map((index) => fabric.rows[index]), findings: fabric.findings, texts: example.rows.map((row) => row.instruction) };
}

/**
 * What a row is worked on where the source's rows do not follow one another: the charted rows of a filet, which are not all
 * given, each stand on a whole row of its grid; the parts of a yoke on their stretch of a row of picots, with a single crochet
 * between, as the source divides it (40 picots, then the 31 left, then the 14 of a sleeve).
 */
function baseOf(id: string, index: number): readonly string[] {
  if (id === 'we-s08' && index > 0) return ['fasten off, ch 261', '87 open meshes'];
  if (id !== 'we-s21') return [];
  const picots = [40, 31, 14][index]!;
  const ends = index === 1 ? 'sc in 2nd ch from hook, picot, (sc in next ch, picot) 30 times' : `sc in 2nd ch from hook, (picot, sc in next ch) ${picots} times`;
  return [`fasten off, ch ${picots + 2 - (index === 1 ? 1 : 0)}`, ends];
}

function foundationText({ foundation }: Example): string {
  if (foundation.type === 'ring' && foundation.chains === undefined) return 'magic ring';
  return `ch ${foundation.chains ?? 0}${foundation.joined ? ', join to form a ring' : ''}`;
}
