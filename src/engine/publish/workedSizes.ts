import type { Pattern } from '../1-pattern/pattern.ts';
import { patternInVersion } from '../1-pattern/patternInVersion.ts';
import { construct } from '../2-construct/construct.ts';
import type { Program } from '../2-construct/program.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { work } from '../3-fabric/work.ts';
import { colour } from '../4-colour/colour.ts';
import { colourGrid, type ColourGrid } from '../4-colour/colourGrid.ts';
import type { Colours } from '../4-colour/colours.ts';
import { fabricWithStitches, setStitches } from '../4-colour/setStitches.ts';
import { drained } from './drained.ts';
import type { PublishChoices } from './publishChoices.ts';
import { printable } from './type/printable.ts';

/** One size of a pattern with all that is read from it. */
export interface WorkedSize {
  readonly size: number;
  readonly name: string;
  readonly program: Program;
  /** As the rows have it: to lay out and to count. Sections under names that drawings can hold. */
  readonly fabric: Fabric;
  /** With the stitches that motifs set: to draw and to describe. */
  readonly dressed: Fabric;
  readonly grid: ColourGrid;
  readonly colours: Colours;
}

/** A pattern, as the version chosen has it, with the sizes that go out. */
export interface WorkedPattern {
  readonly pattern: Pattern;
  /** The same with names of yarns and motifs that drawings can hold. */
  readonly drawn: Pattern;
  readonly version: string;
  readonly sizes: readonly WorkedSize[];
}

/** Sizes that were worked, by pattern object: another paper or another look works nothing anew. */
const WORKED = new WeakMap<Pattern, Map<string, WorkedSize>>();

/** Works the sizes that are chosen. Linear in stitches. */
export function workedSizes(whole: Pattern, choices: Pick<PublishChoices, 'version' | 'sizes'>): WorkedPattern {
  return drained(workSizes(whole, choices));
}

/** The same, with a step before each size. */
export function* workSizes(whole: Pattern, { version, sizes }: Pick<PublishChoices, 'version' | 'sizes'>): Generator<void, WorkedPattern> {
  const pattern = version === null ? whole : patternInVersion(whole, version);
  const chosen = sizes === 'all' ? pattern.sizes.map((_, size) => size) : [sizes];
  const known = WORKED.get(whole) ?? new Map<string, WorkedSize>();
  WORKED.set(whole, known);
  const worked: WorkedSize[] = [];
  for (const size of chosen) {
    yield;
    const key = JSON.stringify([version, size]);
    const one = known.get(key) ?? workedSize(pattern, size);
    known.set(key, one);
    worked.push(one);
  }
  return { pattern, drawn: withShortNames(pattern), version: whole.versions?.find(({ id }) => id === version)?.name ?? '', sizes: worked };
}

function workedSize(pattern: Pattern, size: number): WorkedSize {
  const program = construct(pattern, size);
  const worked = work(program);
  const fabric = { ...worked, sections: worked.sections.map((section) => ({ ...section, name: shortName(section.name) })) };
  const grid = colourGrid(fabric);
  return { size, name: shortName(pattern.sizes[size]!), program, fabric, dressed: fabricWithStitches(fabric, setStitches(pattern, grid, size)), grid, colours: colour(pattern, fabric, size, grid) };
}

/** Characters of a name that a bracket or a schematic has room for. */
const LONGEST_NAME = 48;
/** Characters of a yarn's name in a legend, which sets it in lines: so that a hostile one costs lines and not pages. */
const LONGEST_YARN_NAME = 240;

/** A name as drawings have it: printable, its end cut off with … where it is longer than any name is. */
export function shortName(name: string, most = LONGEST_NAME): string {
  const letters = [...printable(name)];
  return letters.length <= most ? letters.join('') : `${letters.slice(0, most - 1).join('')}…`;
}

function withShortNames(pattern: Pattern): Pattern {
  return { ...pattern, yarns: pattern.yarns.map((yarn) => ({ ...yarn, name: shortName(yarn.name, LONGEST_YARN_NAME) })), motifs: pattern.motifs.map((motif) => ({ ...motif, name: shortName(motif.name) })) };
}
