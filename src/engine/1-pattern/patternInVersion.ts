import type { Pattern, Placement, Section, SectionVersion } from './pattern.ts';

/**
 * The pattern as one of its versions has it: the same rows, with the placements, loose cells, grounds and techniques of
 * the version in its sections. Placements that are not laid are kept, hidden; versions are left out. Lines and sections
 * that don't differ are the very same objects, so that the fabric need not be worked again. Refuses a version that is not there.
 */
export function patternInVersion(pattern: Pattern, version: string): Pattern {
  const { versions = [], ...base } = pattern;
  const found = versions.find((one) => one.id === version);
  if (!found) throw new RangeError(`version "${version}" asked of a pattern of ${versions.length} versions`);
  const bySection = new Map(found.sections.map((one) => [one.section, one]));
  const withoutCells = new Set(found.sections.filter((one) => one.cells === false).map((one) => one.section));
  return {
    ...base,
    sections: pattern.sections.map((section) => sectionInVersion(section, bySection.get(section.id))),
    placements: pattern.placements.map((placement) => placementInVersion(placement, bySection.get(placement.section))),
    cells: withoutCells.size === 0 ? pattern.cells : pattern.cells.filter((cell) => !withoutCells.has(cell.section)),
  };
}

function sectionInVersion(section: Section, version: SectionVersion | undefined): Section {
  if (!version || (!version.ground && !version.technique)) return section;
  const { ground = section.colour?.ground, technique = section.colour?.technique } = version;
  return { ...section, colour: { ...(technique ? { technique } : {}), ...(ground ? { ground } : {}) } };
}

function placementInVersion(placement: Placement, version: SectionVersion | undefined): Placement {
  if (!version?.placements) return placement;
  const isLaid = version.placements.includes(placement.id);
  if (isLaid === !placement.hidden) return placement;
  const { hidden: _, ...shown } = placement;
  return isLaid ? shown : { ...shown, hidden: true };
}
