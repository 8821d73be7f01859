import type { Line, Pattern } from '../../1-pattern/pattern.ts';
import { lineOf } from '../../2-construct/construct.ts';
import { sizesText } from '../../2-construct/recipes/sizesText.ts';
import { STITCHES } from '../../craft/stitches.ts';
import { FLAG, type Fabric } from '../../3-fabric/fabric.ts';
import type { Finding, Mend, Rule } from '../../notation/finding.ts';
import { amountFor } from '../../notation/instruction.ts';
import { readLine } from '../../2-construct/readLine.ts';

/** A number, or one a size, as it stands in a row: 40, 40 (44, 48). */
const NUMBERS = /\d+(?:\s*[([]\s*\d+(?:\s*,\s*\d+)*\s*[)\]])?/g;
const MENDED = new Set<Rule>(['statedCount', 'leftCount', 'leftUnsaid', 'otherTerms', 'sizesMismatch']);

/** Whether findings of this rule may have a mend that is certain. */
export function mayBeMended({ rule, mend }: Finding): boolean {
  return mend !== null || MENDED.has(rule);
}

/**
 * The mend of a finding where one is certain: its own; for a number that says other than what was made, that number in every
 * size; for stitches left in silence, the words that say so; for a word of the other terms, the same stitch in these; for a
 * count with a size too few or too many, what each size makes. Numbers missing from an instruction have no certain mend: which
 * size was left out, and what it should be, the words don't tell. Null where rows of one line would need different numbers. `fabrics` are the pattern's, by size.
 */
export function certainMend(pattern: Pattern, fabrics: readonly Fabric[], finding: Finding): Mend | null {
  if (finding.mend) return finding.mend;
  const { line: id, text: range } = finding.where;
  const line = id === null ? null : (lineOf(pattern, id)?.line ?? null);
  if (!line || line.kind === 'note' || !MENDED.has(finding.rule)) return null;
  // Where another number of times would use them all, that may be what was meant.
  if (finding.rule === 'leftUnsaid') return finding.params['fit'] !== undefined ? null : sayLeft(pattern, fabrics, line);
  if (finding.rule === 'sizesMismatch') return countEverySize(pattern, fabrics, line, finding);
  if (!range) return null;
  const slice = line.text.slice(range[0], range[1]);
  if (finding.rule === 'otherTerms') return slice === finding.found ? { line: line.id, range, text: String(finding.expected) } : null;
  const said = [...slice.matchAll(NUMBERS)][Number(finding.params['part'] ?? 0)];
  if (!said) return null;
  const truth = pattern.sizes.map((_, size) => trueNumber(fabrics[size]!, line, finding, size, said[0]));
  if (truth.some((number) => number === null)) return null;
  const from = range[0] + said.index;
  return { line: line.id, range: [from, from + said[0].length], text: sizesText(truth as number[]) };
}

/** What the number should be in one size: as said where all rows agree with it, else what all rows made; null if they differ. */
function trueNumber(fabric: Fabric, line: Line, finding: Finding, size: number, said: string): number | null {
  const rows = line.kind === 'row' ? amountFor(line.label.rows, size) : 1;
  const found = fabric.findings.filter((each) => each.rule === finding.rule && each.where.line === line.id && each.where.text?.[0] === finding.where.text?.[0] && each.params['part'] === finding.params['part']);
  const numbers = (said.match(/\d+/g) ?? []).map(Number);
  if (found.length === 0) return numbers[size] ?? numbers[0] ?? null;
  const made = new Set(found.map((each) => Number(finding.rule === 'statedCount' ? each.expected : each.found)));
  return found.length === rows && made.size === 1 ? [...made][0]! : null;
}

/** "Leave the rest unworked", before the count, where the line leaves stitches in every size and row. */
function sayLeft(pattern: Pattern, fabrics: readonly Fabric[], line: Exclude<Line, { kind: 'note' }>): Mend | null {
  const everywhere = fabrics.every((fabric, size) => {
    const rows = line.kind === 'row' ? amountFor(line.label.rows, size) : 1;
    return rows > 0 && fabric.findings.filter((each) => each.rule === 'leftUnsaid' && each.where.line === line.id).length === rows;
  });
  if (!everywhere) return null;
  const { stated, body } = readLine(line, pattern);
  if (body.some(({ kind }) => kind === 'asRows' || kind === 'forSizes')) return null;
  const at = stated ? stated.range[0] : line.text.length;
  const before = line.text.slice(0, at).trimEnd();
  const words = `${/[.;]$/.test(before) || before === '' ? '' : '.'} Leave the rest unworked.${stated ? ' ' : ''}`;
  return { line: line.id, range: [before.length, at], text: before === '' ? words.trimStart() : words };
}

/** The count of a row whose vector does not fit the sizes, as every size makes it; null where the rest of the row has findings too. */
function countEverySize(pattern: Pattern, fabrics: readonly Fabric[], line: Exclude<Line, { kind: 'note' }>, finding: Finding): Mend | null {
  const range = finding.where.text;
  const { stated, findings } = readLine(line, pattern);
  if (!stated || !range || stated.of !== 'row' || stated.also || range[0] < stated.range[0] || range[1] > stated.range[1] || findings.length > 1) return null;
  const made = fabrics.map((fabric) => madeInAll(fabric, line.id, stated.unit));
  if (made.some((number) => number === null)) return null;
  return { line: line.id, range, text: sizesText(made as number[]) };
}

/** What every row of a line made in one size, all alike and in the unit said; null where they differ or something else was found in them. */
function madeInAll(fabric: Fabric, line: string, unit: string): number | null {
  const rows = fabric.rows.filter(({ key }) => key.line === line);
  const other = fabric.findings.some(({ rule, where }) => where.line === line && rule !== 'statedCount' && rule !== 'sizesMismatch');
  if (other || rows.length === 0 || rows.some(({ made }) => made !== rows[0]!.made)) return null;
  const counted = STITCHES.findIndex(({ us }) => us === unit);
  const plain = unit === '' || unit === 'sts' || rows.every(({ first, end }) => {
    for (let stitch = first; stitch < end; stitch++) if (fabric.flags[stitch]! & FLAG.counts && !(fabric.flags[stitch]! & FLAG.turning) && fabric.kind[stitch] !== counted) return false;
    return counted >= 0;
  });
  return plain ? rows[0]!.made : null;
}
