import { LONGEST_REACH } from '../craft/colourTechniques.ts';
import type { SectionTechnique } from './techniqueOf.ts';

/** A row as strands of yarn meet it. */
export interface StrandRow {
  /** Fabric row index. */
  readonly row: number;
  /** Place among the rows that have stitches, from 0. */
  readonly order: number;
  readonly section: number;
  /** Stitches of the row. */
  readonly width: number;
  /** Working direction as seen on the right side. */
  readonly direction: -1 | 1;
  readonly round: boolean;
}

/** Stitches [from, end) of a row in working order, all of one yarn. */
export interface StrandRun {
  readonly yarn: number;
  readonly from: number;
  readonly end: number;
}

/** A length of yarn from where it is joined to where it is cut: two ends to weave in. */
export interface Strand {
  readonly yarn: number;
  /** Fabric rows of its first and last stitch. */
  readonly firstRow: number;
  lastRow: number;
  /** Where it hangs: the row and run that it was used for last. */
  at: StrandRow;
  run: StrandRun;
}

/** How a yarn comes to a run of stitches. */
export type Arrival =
  /** It is in hand already, or the strand begins here. */
  | { readonly kind: 'inHand' }
  | { readonly kind: 'joined'; /** Where a strand of the yarn hangs that can't be taken up: how far off. */ readonly left: Way | null }
  /** Carried from an earlier run of the row. */
  | { readonly kind: 'inRow'; readonly stitches: number }
  /** Carried over the end of the round before. */
  | { readonly kind: 'overEnd'; readonly stitches: number }
  /** Taken up where it hangs from an earlier row. */
  | ({ readonly kind: 'fromBelow' } & Way);

/** The way from where a yarn hangs to where it is needed. */
export interface Way {
  readonly stitches: number;
  /** Rows between that were worked without it. */
  readonly rows: number;
  /** Whether it is needed beyond where it hangs, so that it has to be carried on in the row that it hangs from. */
  readonly isAgainst: boolean;
}

/** The strand that comes to a run, and how; a new one where none can. `live`: strands of the run's yarn that are not cut. */
export function strandFor(live: readonly Strand[], inHand: Strand | null, row: StrandRow, run: StrandRun, { technique, limits }: SectionTechnique): { readonly strand: Strand | null; readonly arrival: Arrival } {
  if (run.from === 0 && inHand && inHand.yarn === run.yarn) return { strand: inHand, arrival: { kind: 'inHand' } };
  const reach = limits.longestCarry ?? LONGEST_REACH;
  let best: { readonly strand: Strand; readonly arrival: Arrival; readonly cost: number } | null = null;
  let nearest: Way | null = null;
  const offer = (strand: Strand, arrival: Arrival, cost: number) => {
    if (!best || cost < best.cost) best = { strand, arrival, cost };
  };
  for (const strand of live) {
    if (strand.at.order === row.order) {
      const stitches = run.from - strand.run.end;
      if (technique !== 'intarsia' || stitches <= reach) offer(strand, { kind: 'inRow', stitches }, stitches);
      continue;
    }
    if (strand.at.section !== row.section || strand.at.round !== row.round) continue;
    const way = wayFrom(strand, row, run);
    const isNext = way.rows === 0;
    let canReach: boolean;
    if (technique === 'stripes') canReach = way.stitches === 0 && way.rows <= limits.rowsUp;
    else if (technique === 'intarsia') canReach = way.rows <= limits.rowsUp && (way.stitches <= reach || (row.round && liesOver(strand, row, run)));
    else canReach = isNext || (way.rows <= limits.rowsUp && way.stitches <= reach);
    if (!canReach) {
      if (!nearest || way.stitches < nearest.stitches) nearest = way;
    } else if (isNext && row.round && technique !== 'intarsia') offer(strand, { kind: 'overEnd', stitches: strand.at.width - strand.run.end + run.from }, 0);
    // Of several that hang near, the nearest one, and rather one of the row below.
    else offer(strand, { kind: 'fromBelow', ...way }, way.stitches + way.rows * 1_000);
  }
  return best ?? { strand: null, arrival: { kind: 'joined', left: nearest } };
}

/** From where a strand hangs to where a run begins, in stitches along the fabric. */
function wayFrom({ at, run: last }: Strand, row: StrandRow, run: StrandRun): Way {
  const rows = row.order - at.order - 1;
  const hangs = boundary(at, last.end);
  const needed = boundary(row, run.from);
  if (row.round) {
    const apart = Math.abs(needed - hangs) % row.width;
    return { stitches: Math.min(apart, row.width - apart), rows, isAgainst: rows === 0 && run.from < last.end };
  }
  // At one and the same edge it is no way at all, even where the rows grow or shrink.
  const isEdge = last.end === at.width && run.from === 0 && (hangs === 0) === (needed === 0);
  const off = isEdge ? 0 : needed - row.width / 2 - (hangs - at.width / 2);
  return { stitches: Math.ceil(Math.abs(off)), rows, isAgainst: rows === 0 && off * at.direction > 0 };
}

/** Columns from the left edge to the boundary before stitch `place` of the working order. */
function boundary(row: StrandRow, place: number): number {
  return row.direction === 1 ? place : row.width - place;
}

/** Whether a run of a round lies over the one that a strand was used for last, at least in part. */
function liesOver({ at, run: last }: Strand, row: StrandRow, run: StrandRun): boolean {
  const [lastFrom, lastEnd] = [boundary(at, last.from), boundary(at, last.end)].sort((a, b) => a - b) as [number, number];
  const [from, end] = [boundary(row, run.from), boundary(row, run.end)].sort((a, b) => a - b) as [number, number];
  return [-row.width, 0, row.width].some((shift) => from + shift < lastEnd && lastFrom < end + shift);
}
