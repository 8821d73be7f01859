import { isCornerWord, type CornerWord, type Instruction, type PlaceWord, type TextRange } from '../notation/instruction.ts';
import { NONE } from './edge.ts';
import { cornersOfRow, type CornersOfRow } from './cornersOfRow.ts';
import { report, type RowWork } from './rowWork.ts';

/** Why the corners of a row are not known: none are there, spaces or stitches where the words say the other, several kinds, too many, or groups without a middle. */
type Doubt = 'none' | 'spaces' | 'stitches' | 'several' | 'many' | 'even';

/** What a row means by its corners: the word that says most, and the chains that a space has where they are said. */
interface Meant {
  readonly what: CornerWord;
  readonly loops: number | null;
}

/** The stitches that are a row's corners, of a space its first chain; or why they are not known. */
type Known = { readonly stitches: ReadonlySet<number>; readonly spaces: boolean } | { readonly doubt: Doubt; readonly found: number };

/** More corners than the figures that are made so have. */
const MOST_CORNERS = 12;
const MEANT = new WeakMap<readonly Instruction[], Meant>();
const KNOWN = new WeakMap<RowWork, Map<number, Known>>();
const TAKEN = new WeakMap<RowWork, number>();

/** Corners that a row has taken so far: repeats watch them. */
export function cornersTaken(work: RowWork): number {
  return TAKEN.get(work) ?? 0;
}

/**
 * Places of the corners ahead in reach, in the order in which the hook comes to them; of a chain space its first place. Where
 * it can't be known which they are, it is asked once, and there are none. Linear in the row below.
 */
export function cornersAhead(work: RowWork, range: TextRange): readonly number[] {
  const { hook } = work;
  const places: number[] = [];
  let lastRun = NONE;
  const first = hook.ahead();
  for (let place = first; hook.inReach(place); ) {
    const run = hook.edge.run.at(place);
    const known = knownOf(work, hook.edge.row.at(place), range);
    if ('stitches' in known && (run === NONE ? !known.spaces && known.stitches.has(hook.edge.stitch.at(place)) : known.spaces && run !== lastRun && known.stitches.has(hook.edge.stitch.at(run)))) places.push(place);
    lastRun = run;
    place = hook.ahead(place);
    if (place === first) break;
  }
  return places;
}

/** Stitches before the next corner; to the end where no corner is left. */
export function reachToCorner(work: RowWork, range: TextRange): number {
  const { hook } = work;
  const [corner = NONE] = cornersAhead(work, range);
  let count = 0;
  const first = hook.ahead();
  for (let place = first; place !== corner && hook.inReach(place); ) {
    if (hook.isStitch(place)) count++;
    place = hook.ahead(place);
    if (place === first) break;
  }
  return count;
}

/** Whether this row's corners are a question, so that one that is missing is no further fault. */
export function asksForCorners(work: RowWork): boolean {
  return work.findings.some(({ rule }) => rule === 'cornersUnsure');
}

/** Takes the next corner, what lies before it passed over as before any place that is named; null where none is known. */
export function takeCorner(work: RowWork, range: TextRange): { readonly stitches: readonly number[]; readonly place: number; readonly space: boolean } | null {
  const { hook } = work;
  const [place = NONE] = cornersAhead(work, range);
  if (place === NONE) return null;
  const first = hook.ahead();
  // What a round passes over before its first stitch can still be reached at its end.
  if (hook.round && hook.placed === 0 && place !== first) hook.passedAtStart = true;
  else for (let passed = first; passed !== place; passed = hook.ahead()) hook.take(passed);
  hook.standBefore(place);
  TAKEN.set(work, cornersTaken(work) + 1);
  const space = hook.edge.run.at(place) !== NONE;
  return { place, space, stitches: space ? hook.takeRun(place) : [hook.take(place)] };
}

/** The corner word that the clauses of a row say most with: one that names stitch or space before the bare word. */
function meantBy(body: readonly Instruction[]): Meant {
  const known = MEANT.get(body);
  if (known) return known;
  let meant: Meant = { what: 'corner', loops: null };
  const see = (what: PlaceWord, loops: number | undefined) => {
    if (isCornerWord(what) && (meant.what === 'corner' || (meant.what === what && meant.loops === null))) meant = { what, loops: loops ?? null };
  };
  const visit = (clauses: readonly Instruction[]): void => {
    for (const clause of clauses) {
      if ((clause.kind === 'work' || clause.kind === 'group') && 'what' in clause.into) see(clause.into.what, 'loops' in clause.into ? clause.into.loops : undefined);
      if (clause.kind === 'skip') see(clause.what, undefined);
      if (clause.kind === 'repeat' || clause.kind === 'forSizes') visit(clause.body);
    }
  };
  visit(body);
  MEANT.set(body, meant);
  return meant;
}

function knownOf(work: RowWork, row: number, range: TextRange): Known {
  const rows = KNOWN.get(work) ?? new Map<number, Known>();
  KNOWN.set(work, rows);
  const had = rows.get(row);
  if (had) return had;
  const known = resolve(cornersOfRow(work.hook, row), meantBy(work.row.body));
  rows.set(row, known);
  if ('doubt' in known) report(work, 'doubtful', 'cornersUnsure', range, { found: known.found, params: { why: known.doubt, word: work.row.word } });
  return known;
}

/**
 * Which places are meant. Spaces inside a group of increases are corners; in a first round, worked into the ring, all its
 * spaces. Else middle stitches are. Words that name stitch or space, or its chains, leave the others out. What is left has to
 * be alike and of a number that a figure can have; nothing else is chosen.
 */
function resolve(of: CornersOfRow, { what, loops }: Meant): Known {
  const fits = (spaces: CornersOfRow['spaces']) => (loops === null ? spaces : spaces.filter(({ chains }) => chains === loops));
  const inside = fits(of.spaces.filter(({ grouped }) => grouped || of.ofOne));
  const spaces = inside.length > 0 ? inside : of.middles.length > 0 && what === 'corner' ? [] : fits(of.spaces);
  const { middles } = of;
  if (what === 'cornerSp' || (what === 'corner' && (middles.length === 0 || outgrow(inside, middles)))) {
    if (spaces.length === 0) return { doubt: what === 'cornerSp' && middles.length > 0 ? 'stitches' : of.even > 0 ? 'even' : 'none', found: 0 };
    return alike(spaces.map(({ chain, chains }) => ({ stitch: chain, size: chains })), true);
  }
  if (what === 'corner' && inside.length > 0) return { doubt: 'several', found: inside.length + middles.length };
  if (middles.length === 0) return { doubt: inside.length > 0 ? 'spaces' : of.even > 0 ? 'even' : 'none', found: 0 };
  return alike(middles, false);
}

/** Where clusters stand between, the corners are the spaces between more stitches than those have, as in a granny square. */
function outgrow(inside: CornersOfRow['spaces'], middles: CornersOfRow['middles']): boolean {
  return inside.length > 0 && Math.min(...inside.map(({ size }) => size)) > Math.max(...middles.map(({ size }) => size));
}

function alike(corners: readonly { readonly stitch: number; readonly size: number }[], spaces: boolean): Known {
  const found = corners.length;
  if (corners.some(({ size }) => size !== corners[0]!.size)) return { doubt: 'several', found };
  if (found > MOST_CORNERS) return { doubt: 'many', found };
  return { stitches: new Set(corners.map(({ stitch }) => stitch)), spaces };
}
