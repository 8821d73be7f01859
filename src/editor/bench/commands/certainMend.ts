import type { Line, Pattern } from '../../../engine/1-pattern/pattern.ts';
import { lineOf } from '../../../engine/2-construct/construct.ts';
import { sizesText } from '../../../engine/2-construct/recipes/sizesText.ts';
import type { Fabric } from '../../../engine/3-fabric/fabric.ts';
import type { Finding, Mend } from '../../../engine/notation/finding.ts';
import { amountFor } from '../../../engine/notation/instruction.ts';

/** A number, or one a size, as it stands in a row: 40, 40 (44, 48). */
const NUMBERS = /\d+(?:\s*[([]\s*\d+(?:\s*,\s*\d+)*\s*[)\]])?/;

/** Whether a finding is about a number that the fabric knows better. */
export function hasTrueNumber({ rule }: Finding): boolean {
  return rule === 'statedCount' || rule === 'leftCount';
}

/**
 * The mend of a finding where one is certain: its own, or for a number that says other than what was made, that number
 * in every size. Null where rows of one line would need different numbers. `fabrics` are the pattern's, by size.
 */
export function certainMend(pattern: Pattern, fabrics: readonly Fabric[], finding: Finding): Mend | null {
  if (finding.mend) return finding.mend;
  const { line: id, text: range } = finding.where;
  const line = id === null ? null : (lineOf(pattern, id)?.line ?? null);
  if (!line || !range || !hasTrueNumber(finding)) return null;
  const slice = line.text.slice(range[0], range[1]);
  const said = NUMBERS.exec(slice);
  if (!said) return null;
  const truth = pattern.sizes.map((_, size) => trueNumber(fabrics[size]!, line, finding, size, said[0]));
  if (truth.some((number) => number === null)) return null;
  const from = range[0] + said.index;
  return { line: line.id, range: [from, from + said[0].length], text: sizesText(truth as number[]) };
}

/** What the number should be in one size: as said where all rows agree with it, else what all rows made; null if they differ. */
function trueNumber(fabric: Fabric, line: Line, finding: Finding, size: number, said: string): number | null {
  const rows = line.kind === 'row' ? amountFor(line.label.rows, size) : 1;
  const found = fabric.findings.filter((each) => each.rule === finding.rule && each.where.line === line.id && each.where.text?.[0] === finding.where.text?.[0]);
  const numbers = (said.match(/\d+/g) ?? []).map(Number);
  if (found.length === 0) return numbers[size] ?? numbers[0] ?? null;
  const made = new Set(found.map((each) => Number(finding.rule === 'statedCount' ? each.expected : each.found)));
  return found.length === rows && made.size === 1 ? [...made][0]! : null;
}
