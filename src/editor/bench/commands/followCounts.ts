import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern } from '../../../engine/1-pattern/pattern.ts';
import { construct } from '../../../engine/2-construct/construct.ts';
import type { Fabric } from '../../../engine/3-fabric/fabric.ts';
import { work } from '../../../engine/3-fabric/work.ts';
import { certainMend } from '../../../engine/readings/checks/certainMend.ts';

/**
 * The edits by which the stated counts of a section's lines from `line` on say what those lines now make, in every size.
 * `fabrics`: the pattern worked in every size, where that is done already. Lines whose rows make different numbers are left as they are: a finding shows them.
 */
export function followCounts(pattern: Pattern, section: string, line: string, fabrics: readonly Fabric[] = pattern.sizes.map((_, size) => work(construct(pattern, size)))): Edit[] {
  const lines = pattern.sections.find((each) => each.id === section)?.lines ?? [];
  const after = lines.slice(lines.findIndex((each) => each.id === line));
  return after.flatMap((each): Edit[] => {
    const found = fabrics.flatMap((fabric) => fabric.findings).find((one) => one.rule === 'statedCount' && one.where.line === each.id);
    const mend = found && certainMend(pattern, fabrics, found);
    if (!mend) return [];
    const told: Line = { ...each, text: each.text.slice(0, mend.range[0]) + mend.text + each.text.slice(mend.range[1]) };
    return [{ kind: 'setLine', section, line: told }];
  });
}
