import type { Finding } from '../../../engine/notation/finding.ts';
import { dequal } from 'dequal/lite';
import { certainMend } from '../../../engine/readings/checks/certainMend.ts';
import { mendedLine } from '../../../engine/readings/checks/mendedLine.ts';
import { sectionTitle } from '../../piece/sectionTitle.ts';
import type { Command } from '../benchState.ts';

/** Puts the certain mend of a finding into its line. None where there is no certain one. */
export function mendLine(finding: Finding): Command {
  return ({ pattern, grids, at }) => {
    const mend = certainMend(pattern, grids.map((grid) => grid.fabric), finding);
    const section = mend && pattern.sections.find((each) => each.lines.some((line) => line.id === mend.line));
    const line = section?.lines.find((each) => each.id === mend?.line);
    if (!mend || !section || !line) return null;
    const mended = mendedLine(line, mend);
    if (dequal(mended, line)) return null;
    return { label: `Mend the ${sectionTitle(section.name).toLowerCase()}: ${mend.label === undefined ? mend.text.replace(/^[.\s]+|\s+$/g, '') : `row ${mend.label}`}`, at, edits: [{ kind: 'setLine', section: section.id, line: mended }] };
  };
}
