import type { Finding } from '../../../engine/notation/finding.ts';
import { certainMend } from '../../../engine/readings/checks/certainMend.ts';
import { sectionTitle } from '../../piece/sectionTitle.ts';
import type { Command } from '../benchState.ts';

/** Puts the certain mend of a finding into its line. None where there is no certain one. */
export function mendLine(finding: Finding): Command {
  return ({ pattern, grids, at }) => {
    const mend = certainMend(pattern, grids.map((grid) => grid.fabric), finding);
    const section = mend && pattern.sections.find((each) => each.lines.some((line) => line.id === mend.line));
    const line = section?.lines.find((each) => each.id === mend?.line);
    if (!mend || !section || !line) return null;
    const text = line.text.slice(0, mend.range[0]) + mend.text + line.text.slice(mend.range[1]);
    if (text === line.text) return null;
    return { label: `Mend the ${sectionTitle(section.name).toLowerCase()}: ${mend.text.replace(/^[.\s]+|\s+$/g, '')}`, at, edits: [{ kind: 'setLine', section: section.id, line: { ...line, text } }] };
  };
}
