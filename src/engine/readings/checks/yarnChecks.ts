import type { Pattern, Yarn } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { LEAST_CONTRAST, LEAST_DIFFERENCE, yarnPairs } from '../../4-colour/palettes.ts';
import { areMarksAlike } from '../../4-colour/printMarks.ts';
import { COLOUR_VISIONS } from '../../craft/colourVision.ts';
import { finding, type Finding } from '../../notation/finding.ts';

/**
 * Yarns of one section that are hard to tell apart: by colour (CIEDE2000), by each kind of colour vision (Machado's
 * matrices, severity 1.0), in black and white (WCAG contrast), by their print marks. Each pair is named once, in the first
 * section that has both.
 */
export function yarnChecks(pattern: Pattern, fabric: Fabric, colours: Colours): Finding[] {
  const together = firstTogether(fabric, colours.yarn, pattern.yarns.length);
  const difference = pattern.colourLimits?.leastDifference ?? LEAST_DIFFERENCE;
  const contrast = pattern.colourLimits?.leastContrast ?? LEAST_CONTRAST;
  return yarnPairs(pattern.yarns).flatMap((pair): Finding[] => {
    const section = together.get(pair.one * pattern.yarns.length + pair.other);
    const [one, other] = [pattern.yarns[pair.one]!, pattern.yarns[pair.other]!];
    if (section === undefined) return [];
    const where = { section: fabric.sections[section]!.id };
    const params = { one: words(one), other: words(other) };
    const found: Finding[] = [];
    if (pair.difference < difference) found.push(finding('doubtful', 'yarnsAlike', where, { found: tenths(pair.difference), expected: difference, params }));
    else {
      const alike = COLOUR_VISIONS.filter((vision) => pair.seen[vision] < difference);
      for (const vision of alike) found.push(finding('note', 'yarnsAlikeSeen', where, { found: tenths(pair.seen[vision]), expected: difference, params: { ...params, vision } }));
    }
    if (pair.contrast < contrast) found.push(finding('note', 'yarnsAlikeInTone', where, { found: tenths(pair.contrast), expected: contrast, params }));
    if (areMarksAlike(one.mark, other.mark)) found.push(finding('note', 'marksAlike', where, { found: one.mark === other.mark ? one.mark : `${one.mark} and ${other.mark}`, params }));
    return found;
  });
}

/** Section index by pair (lower yarn × yarns + higher): the first section whose stitches have both. */
function firstTogether(fabric: Fabric, yarn: Uint8Array, yarns: number): ReadonlyMap<number, number> {
  const pairs = new Map<number, number>();
  for (const [s, { firstRow, endRow }] of fabric.sections.entries()) {
    const isUsed = new Uint8Array(256);
    for (let r = firstRow; r < endRow; r++) {
      const { first, end } = fabric.rows[r]!;
      for (let i = first; i < end; i++) isUsed[yarn[i]!] = 1;
    }
    const list = Array.from(isUsed.keys()).filter((one) => isUsed[one] === 1);
    list.forEach((one, i) => list.slice(i + 1).forEach((other) => pairs.has(one * yarns + other) || pairs.set(one * yarns + other, s)));
  }
  return pairs;
}

function words({ letter, name }: Yarn): string {
  return name ? `${letter} ${name}` : letter;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
