import type { Pattern } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { ColourGrid } from './colourGrid.ts';
import type { Colours } from './colours.ts';
import { strandFor, type Arrival, type Strand, type StrandRow, type StrandRun, type Way } from './strands.ts';
import { techniquesOf, type SectionTechnique } from './techniqueOf.ts';

/** A yarn that lies over stitches worked in others: inside them, or as a float. */
export interface Carry {
  /** Yarn index. */
  readonly yarn: number;
  readonly stitches: number;
  /** Within the row, over the end of a round, or from the row below to where it is needed next. */
  readonly kind: 'inRow' | 'overEnd' | 'fromBelow';
}

/** A yarn that hangs somewhere else than where a row needs it. */
export interface Travel extends Way {
  readonly yarn: number;
  /** Cut and joined anew, because the way is too long. */
  readonly isCut: boolean;
}

/** What the yarns do in one row. */
export interface RowCarry {
  /** Fabric row index. */
  readonly row: number;
  /** Yarn indices in order of first use. */
  readonly yarns: readonly number[];
  /** Changes of yarn between stitches of the row. */
  readonly changes: number;
  /** Whether it begins in another yarn than the one in hand. */
  readonly changesAtStart: boolean;
  /** Every carry, in working order. */
  readonly carries: readonly Carry[];
  /** The longest of them; the first where several are. */
  readonly longest: Carry | null;
  /** Yarns that come from earlier rows over a way of at least one stitch or row, or were too far off. */
  readonly travels: readonly Travel[];
  /** Lengths of yarn in use in the row: the bobbins it takes in intarsia, else as many as yarns. */
  readonly supplies: number;
  /** Ends to weave in: joins and cuts in this row. */
  readonly ends: number;
}

/** What the yarns do in a section. */
export interface SectionCarry extends SectionTechnique {
  /** Rows with stitches in working order, foundations included. */
  readonly rows: readonly RowCarry[];
  readonly changes: number;
  readonly longest: (Carry & { readonly row: number }) | null;
  /** Most yarns in one row. */
  readonly mostYarns: number;
  /** Lengths of yarn joined in the section, by yarn index, and most of them hanging at the same time: the bobbins to wind. */
  readonly joined: readonly number[];
  readonly mostSupplies: number;
  /** Ends to weave in. */
  readonly ends: number;
}

/** What the yarns do in the whole piece; sections by index. */
export interface PieceCarry {
  readonly sections: readonly SectionCarry[];
  readonly ends: number;
}

/**
 * Follows every yarn through the piece: where it is joined, over how many stitches it is carried, where it hangs when
 * another row needs it, where it is cut. How far it may go decides the technique (`TechniqueLimits`); what is fastened off
 * cuts every yarn. Ends are counted two for each length of yarn. Linear in stitches, times bobbins in intarsia.
 */
export function carryOf(pattern: Pick<Pattern, 'sections' | 'gauge' | 'colourLimits' | 'yarns'>, grid: ColourGrid, colours: Pick<Colours, 'yarn'>): PieceCarry {
  const { fabric } = grid;
  const techniques = techniquesOf(pattern, grid, colours);
  const strands: Strand[] = [];
  const rows = new Map<number, Omit<RowCarry, 'ends'>>();
  let live: Strand[] = [];
  let inHand: Strand | null = null;
  let order = 0;
  for (const [r, worked] of fabric.rows.entries()) {
    const runs = runsOf(grid, colours.yarn, r);
    if (runs.length === 0) continue;
    if (fabric.previous[worked.first] === -1) [live, inHand] = [[], null];
    const row: StrandRow = { row: r, order: order++, section: worked.section, width: runs.at(-1)!.end, direction: worked.direction, round: worked.round };
    const technique = techniques[worked.section]!;
    // Bobbins that rested for too long are cut; of the others' yarns the last length is kept, to say how far off it hangs.
    if (technique.technique === 'intarsia') live = live.filter((one) => row.order - one.at.order - 1 <= technique.limits.rowsUp);
    const arrivals: { readonly run: StrandRun; readonly arrival: Arrival }[] = [];
    const used = new Set<Strand>();
    const before: Strand | null = inHand;
    for (const run of runs) {
      const found = strandFor(live.filter((one) => one.yarn === run.yarn), inHand, row, run, technique);
      let { strand } = found;
      if (strand) Object.assign(strand, { at: row, run, lastRow: r });
      else {
        strand = { yarn: run.yarn, firstRow: r, lastRow: r, at: row, run };
        // One length of each yarn, but for intarsia: what was left is cut.
        if (technique.technique !== 'intarsia') live = live.filter((one) => one.yarn !== run.yarn);
        live.push(strand);
        strands.push(strand);
      }
      arrivals.push({ run, arrival: found.arrival });
      used.add(strand);
      inHand = strand;
    }
    rows.set(r, rowCarry(r, runs, arrivals, used.size, before !== null && before.yarn !== runs[0]!.yarn, worked.round));
  }
  return total(fabric.sections, techniques, rows, strands, pattern.yarns.length);
}

/** Yarn runs of a row's stitches in working order; of a foundation's chains where none counts. */
function runsOf({ fabric }: ColourGrid, yarn: Uint8Array, row: number): readonly StrandRun[] {
  const { first, end, word } = fabric.rows[row]!;
  const runs: { yarn: number; from: number; end: number }[] = [];
  let place = 0;
  for (let i = first; i < end; i++) {
    if (!(fabric.flags[i]! & FLAG.counts) && word !== 'foundation') continue;
    const last = runs.at(-1);
    if (last?.yarn === yarn[i]) last!.end++;
    else runs.push({ yarn: yarn[i]!, from: place, end: place + 1 });
    place++;
  }
  return runs;
}

function rowCarry(row: number, runs: readonly StrandRun[], arrivals: readonly { readonly run: StrandRun; readonly arrival: Arrival }[], supplies: number, changesAtStart: boolean, isRound: boolean): Omit<RowCarry, 'ends'> {
  const carries: Carry[] = [];
  const travels: Travel[] = [];
  for (const { run: { yarn }, arrival } of arrivals) {
    switch (arrival.kind) {
      case 'inRow':
      case 'overEnd':
        if (arrival.stitches > 0) carries.push({ yarn, stitches: arrival.stitches, kind: arrival.kind });
        break;
      case 'fromBelow':
        // In rounds it goes back over its own area, which is no carry but has to be said all the same.
        if (arrival.stitches > 0 && arrival.rows === 0 && !(isRound && arrival.isAgainst)) carries.push({ yarn, stitches: arrival.stitches, kind: 'fromBelow' });
        if (arrival.stitches > 0 || arrival.rows > 0) travels.push({ yarn, stitches: arrival.stitches, rows: arrival.rows, isAgainst: arrival.isAgainst, isCut: false });
        break;
      case 'joined':
        if (arrival.left) travels.push({ yarn, ...arrival.left, isCut: true });
        break;
      case 'inHand':
        break;
    }
  }
  const longest = carries.reduce<Carry | null>((most, one) => (most && most.stitches >= one.stitches ? most : one), null);
  return { row, yarns: [...new Set(runs.map((run) => run.yarn))], changes: runs.length - 1, changesAtStart, carries, longest, travels, supplies };
}

function total(sections: ColourGrid['fabric']['sections'], techniques: readonly SectionTechnique[], rows: ReadonlyMap<number, Omit<RowCarry, 'ends'>>, strands: readonly Strand[], yarns: number): PieceCarry {
  const ends = new Map<number, number>();
  for (const { firstRow, lastRow } of strands) for (const row of [firstRow, lastRow]) ends.set(row, (ends.get(row) ?? 0) + 1);
  const all = sections.map(({ firstRow, endRow }, s): SectionCarry => {
    const own = [...rows.values()].filter(({ row }) => row >= firstRow && row < endRow).map((row): RowCarry => ({ ...row, ends: ends.get(row.row) ?? 0 }));
    const joined = new Array<number>(yarns).fill(0);
    for (const { yarn, firstRow: row } of strands) if (row >= firstRow && row < endRow) joined[yarn]!++;
    return {
      ...techniques[s]!,
      rows: own,
      changes: own.reduce((sum, row) => sum + row.changes + (row.changesAtStart ? 1 : 0), 0),
      longest: own.reduce<SectionCarry['longest']>((most, { row, longest }) => (!longest || (most && most.stitches >= longest.stitches) ? most : { ...longest, row }), null),
      mostYarns: own.reduce((most, row) => Math.max(most, row.yarns.length), 0),
      joined,
      mostSupplies: mostAtOnce(strands, firstRow, endRow),
      ends: own.reduce((sum, row) => sum + row.ends, 0),
    };
  });
  return { sections: all, ends: all.reduce((sum, section) => sum + section.ends, 0) };
}

/** Most strands that are in use at the same time in rows [from, end), from their first row to their last. */
function mostAtOnce(strands: readonly Strand[], from: number, end: number): number {
  const change = new Int32Array(Math.max(end - from, 0) + 1);
  for (const { firstRow, lastRow } of strands) {
    if (lastRow < from || firstRow >= end) continue;
    change[Math.max(firstRow, from) - from]!++;
    change[Math.min(lastRow, end - 1) - from + 1]!--;
  }
  let now = 0;
  let most = 0;
  for (const step of change) most = Math.max(most, (now += step));
  return most;
}
