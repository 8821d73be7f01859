import type { Pattern } from '../../1-pattern/pattern.ts';
import { carryOf, type RowCarry, type SectionCarry } from '../../4-colour/carry.ts';
import type { ColourGrid } from '../../4-colour/colourGrid.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { jogsInRounds, loneStitches } from '../../4-colour/colourSpots.ts';
import { stitchWidthMm } from '../../4-colour/techniqueOf.ts';
import { finding, type Finding, type Where } from '../../notation/finding.ts';
import { techniqueRow } from '../../craft/colourTechniques.ts';

/**
 * Yarns that are carried too far or too many at once, by the technique of each section and its limits (`techniqueLimits`,
 * `ColourLimits`); what a technique can't do; lone stitches; steps in rounds. One finding for a section, a rule and a yarn, at
 * the row where it is worst, so that a large motif doesn't bury the rest.
 */
export function carryChecks(pattern: Pattern, grid: ColourGrid, colours: Colours): Finding[] {
  const { fabric } = grid;
  const piece = carryOf(pattern, grid, colours);
  const lone = loneStitches(grid, colours.yarn);
  const jogs = jogsInRounds(grid, colours.yarn);
  return fabric.sections.flatMap(({ id }, s): Finding[] => {
    const section = piece.sections[s]!;
    const where = (row: number): Partial<Where> => ({ section: id, line: fabric.rows[row]!.key.line, nth: fabric.rows[row]!.key.nth });
    const own = section.rows.filter(({ row }) => fabric.rows[row]!.word !== 'foundation');
    const alone = lone.filter((stitch) => fabric.rows[fabric.row[stitch]!]!.section === s);
    const steps = jogs.filter((jog) => jog.section === s);
    return [
      ...longCarries(pattern, section, own, where),
      ...tooManyYarns(pattern, section, own, where),
      ...otherEnds(pattern, grid, section, own, where),
      ...travelsBack(grid, section, own, where),
      ...(alone.length > 0 ? [finding('note', 'loneStitches', { ...where(fabric.row[alone[0]!]!), stitch: alone[0]! }, { found: alone.length, expected: 0 })] : []),
      ...(steps.length > 0 ? [finding('note', 'jog', where(steps[0]!.row), { found: steps.length, expected: 0, params: { spiral: steps.some((jog) => jog.isSpiral) ? 1 : 0 } })] : []),
    ];
  });
}

type Rows = readonly RowCarry[];
type WhereOf = (row: number) => Partial<Where>;

function longCarries(pattern: Pattern, { technique, limits }: SectionCarry, rows: Rows, where: WhereOf): Finding[] {
  const most = limits.longestCarry;
  if (most === null || technique === 'stripes') return [];
  return pattern.yarns.flatMap(({ letter }, yarn) => {
    const long = rows.flatMap(({ row, carries }) => {
      const longest = carries.reduce((length, carry) => (carry.yarn === yarn ? Math.max(length, carry.stitches) : length), 0);
      return longest > most ? [{ row, longest }] : [];
    });
    if (long.length === 0) return [];
    const worst = long.reduce((one, other) => (other.longest > one.longest ? other : one));
    const cm = Math.round(worst.longest * stitchWidthMm(pattern)) / 10;
    return [finding('doubtful', 'carryLong', where(worst.row), { found: worst.longest, expected: most, params: { yarn: letter, cm, rows: long.length, technique } })];
  });
}

function tooManyYarns(pattern: Pattern, { technique, limits }: SectionCarry, rows: Rows, where: WhereOf): Finding[] {
  const most = limits.mostYarns;
  const many = most === null ? [] : rows.filter(({ yarns }) => yarns.length > most);
  if (many.length === 0) return [];
  const worst = many.reduce((one, other) => (other.yarns.length > one.yarns.length ? other : one));
  if (technique === 'stripes') return [finding('doubtful', 'changeInStripes', where(many[0]!.row), { found: many.length, expected: 0 })];
  const yarns = worst.yarns.map((yarn) => pattern.yarns[yarn]?.letter ?? '').join(', ');
  return [finding('doubtful', 'yarnsInRow', where(worst.row), { found: worst.yarns.length, expected: most, params: { yarns, rows: many.length, technique: techniqueRow(technique).name } })];
}

/** Flat stripes of an odd number of rows leave their yarn at the end where it is not needed. */
function otherEnds(pattern: Pattern, { fabric }: ColourGrid, { technique }: SectionCarry, rows: Rows, where: WhereOf): Finding[] {
  if (technique !== 'stripes') return [];
  return pattern.yarns.flatMap(({ letter }, yarn) => {
    const hangs = rows.filter(({ row, yarns, travels }) => !fabric.rows[row]!.round && yarns.length === 1 && travels.some((one) => one.yarn === yarn && one.isCut && one.stitches > 0));
    return hangs.length > 0 ? [finding('note', 'yarnAtOtherEnd', where(hangs[0]!.row), { found: hangs.length, expected: 0, params: { yarn: letter } })] : [];
  });
}

function travelsBack({ fabric }: ColourGrid, { technique }: SectionCarry, rows: Rows, where: WhereOf): Finding[] {
  if (technique !== 'intarsia') return [];
  const back = rows.filter(({ row, travels }) => fabric.rows[row]!.round && travels.some((one) => one.isAgainst));
  if (back.length === 0) return [];
  const most = Math.max(...back.flatMap(({ travels }) => travels.filter((one) => one.isAgainst).map((one) => one.stitches)));
  return [finding('doubtful', 'intarsiaInRounds', where(back[0]!.row), { found: back.length, expected: 0, params: { most } })];
}
