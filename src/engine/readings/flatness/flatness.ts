import type { Gauge } from '../../1-pattern/pattern.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../3-fabric/fabric.ts';
import { gaugeCell } from '../../5-layout/gaugeCell.ts';
import { stitchOfCode } from '../../craft/stitches.ts';

/** How a round lies that grows from a ring: on the table, drawn up to a bowl, or in waves. */
export type Lies = 'flat' | 'cups' | 'ruffles';

/** How one round, and it with the rounds before it, lies. */
export interface FlatnessRow {
  /** Row index in the fabric. */
  readonly row: number;
  readonly made: number;
  /** Stitches more than the round below; of a first round, all of them. */
  readonly increases: number;
  /** Increases that would lie flat at this gauge: 2π times the stitch's height over its width. Not rounded. */
  readonly flatIncreases: number;
  /** Increases over those that lie flat: 1 lies flat, 0 goes straight up, over 1 ruffles. */
  readonly ratio: number;
  readonly lies: Lies;
  /** The same over the last `RUNNING_ROUNDS` rounds (fewer at the start): one odd round is harmless. */
  readonly running: { readonly ratio: number; readonly lies: Lies };
  /** Where it cups: angle in radians between the fabric and the axis of the cone that such rounds make; null elsewhere. */
  readonly coneRad: number | null;
  /** Where it ruffles: radius in mm of the hyperbolic plane that grows by this factor from round to round; null elsewhere and for a first round. */
  readonly hyperbolicMm: number | null;
}

/** A ratio this near to 1 is called flat: fabric gives way by as much. */
export const FLAT_WITHIN = 0.06;
/** Rounds that the running ratio is taken over. */
export const RUNNING_ROUNDS = 4;

/**
 * How the rounds of a section that is worked outwards from a ring lie, by the closed form ΔN·w / 2πh for each (the way round
 * grows by 2π times the height of a round in the plane). Below 1 they make a cone with that sine, above 1 they
 * ruffle, and rounds that grow by a constant factor q a hyperbolic plane of radius h / ln q (Henderson and Taimiņa,
 * *Experiencing Geometry*). Ends before the first round that decreases or doesn't go all round. Empty for any other section.
 * Right to within half an increase for tall stitches. Refuses a section that isn't there and a gauge that isn't positive.
 */
export function flatness(fabric: Fabric, section: number, gauge: Gauge): FlatnessRow[] {
  const part = fabric.sections[section];
  if (!part) throw new RangeError(`section ${section} asked of ${fabric.sections.length}`);
  const { widthMm, heightMm } = gaugeCell(gauge);
  const found: FlatnessRow[] = [];
  const heights: number[] = [];
  let before: WorkedRow | null = null;
  for (let index = part.firstRow; index < part.endRow; index++) {
    const row = fabric.rows[index]!;
    if (row.word === 'step' || row.word === 'foundation' || row.made === 0) continue;
    if (!row.round || (before ? row.used < before.made || row.made < before.made : !standsOnRing(fabric, row))) break;
    const height = meanHeight(fabric, row) * heightMm;
    heights.push(height);
    const increases: number = row.made - (before?.made ?? 0);
    const flatIncreases = (2 * Math.PI * height) / widthMm;
    const ratio = increases / flatIncreases;
    const lies = liesAt(ratio);
    found.push({
      row: index, made: row.made, increases, flatIncreases, ratio, lies, running: { ratio, lies },
      coneRad: lies === 'cups' ? Math.asin(ratio) : null,
      hyperbolicMm: lies === 'ruffles' && before ? height / Math.log(row.made / before.made) : null,
    });
    before = row;
  }
  return found.map((row, r) => ({ ...row, running: running(found, heights, r, widthMm) }));
}

/** The verdict over a few rounds, up to round r. */
function running(rounds: readonly FlatnessRow[], heights: readonly number[], r: number, widthMm: number): FlatnessRow['running'] {
  let increases = 0;
  let height = 0;
  for (let k = Math.max(0, r + 1 - RUNNING_ROUNDS); k <= r; k++) {
    increases += rounds[k]!.increases;
    height += heights[k]!;
  }
  const ratio = (increases * widthMm) / (2 * Math.PI * height);
  return { ratio, lies: liesAt(ratio) };
}

function liesAt(ratio: number): Lies {
  if (Math.abs(ratio - 1) < FLAT_WITHIN) return 'flat';
  return ratio < 1 ? 'cups' : 'ruffles';
}

/** Whether all stitches of a round are worked into one place: a ring, or one chain. */
function standsOnRing(fabric: Fabric, row: WorkedRow): boolean {
  let place = -1;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    const base = fabric.bases[fabric.baseStart[stitch]!];
    if (!isPlain(fabric, stitch) || fabric.baseStart[stitch] === fabric.baseStart[stitch + 1] || base === undefined) continue;
    if (place >= 0 && base !== place) return false;
    place = base;
  }
  return place >= 0;
}

/** Counts, and is no turning chain. */
function isPlain({ flags }: Fabric, stitch: number): boolean {
  return (flags[stitch]! & (FLAG.counts | FLAG.turning)) === FLAG.counts;
}

/** Mean height of a round's stitches in single-crochet heights; a turning chain stands for one of them. */
function meanHeight(fabric: Fabric, row: WorkedRow): number {
  let sum = 0;
  let count = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (!isPlain(fabric, stitch)) continue;
    sum += stitchOfCode(fabric.kind[stitch]!).height;
    count++;
  }
  return count > 0 ? sum / count : 1;
}
