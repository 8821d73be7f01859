import { finding, type Finding } from '../../notation/finding.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { FLAG, type Fabric } from '../../3-fabric/fabric.ts';
import { colourChecks } from './colourChecks.ts';
import { certainMend } from './certainMend.ts';
import { heelChecks } from './heelChecks.ts';
import { textChecks } from './textChecks.ts';

const DEGREES = { wrong: 0, doubtful: 1, note: 2 } as const;

/**
 * Everything the tool finds in one worked size: what reading and working the rows found, then the piece as a whole, then
 * colour. In order of degree, then of rows. Mends that are certain are given with the findings where `fabrics`, the pattern
 * worked in every size, are given, or the pattern has one size.
 */
export function check(pattern: Pattern, fabric: Fabric, colours: Colours, fabrics: readonly Fabric[] = pattern.sizes.length === 1 ? [fabric] : []): Finding[] {
  const found = [...fabric.findings, ...heelChecks(fabric), ...neverUsed(fabric), ...textChecks(pattern), ...colourChecks(pattern, fabric, colours)];
  const order = new Map<string, number>();
  fabric.rows.forEach((row, index) => order.set(`${row.key.line}/${row.key.nth}`, index));
  const rowOf = (one: Finding) => order.get(`${one.where.line}/${one.where.nth ?? 0}`) ?? Number.MAX_SAFE_INTEGER;
  const mended = fabrics.length === pattern.sizes.length ? found.map((one) => ({ ...one, mend: certainMend(pattern, fabrics, one) })) : found;
  return mended.sort((a, b) => DEGREES[a.degree] - DEGREES[b.degree] || rowOf(a) - rowOf(b));
}

/** Stitches whose tops stay open although work went on above or beside them, by the row that made them. */
function neverUsed(fabric: Fabric): Finding[] {
  const above = new Map<number, number>();
  for (const row of fabric.rows) if (row.below >= 0) above.set(row.below, row.section);
  const open = new Map<number, number[]>();
  for (const stitch of fabric.openAtEnd) {
    const row = fabric.row[stitch]!;
    const sameEdgeGoesOn = above.has(row) || (fabric.flags[stitch]! & FLAG.counts) === 0;
    if (!sameEdgeGoesOn) continue;
    const known = open.get(row);
    if (known) known.push(stitch);
    else open.set(row, [stitch]);
  }
  return [...open].map(([row, stitches]) => {
    const worked = fabric.rows[row]!;
    return finding('doubtful', 'neverUsed', { section: fabric.sections[worked.section]!.id, line: worked.key.line, nth: worked.key.nth, stitch: stitches[0]! }, { found: stitches.length, expected: 0 });
  });
}
