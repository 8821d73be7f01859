import { friezeRow, type FriezeGroup } from '../craft/friezeGroups.ts';
import type { Motif } from '../1-pattern/pattern.ts';

/** The symmetry of a strip that a motif makes when it is repeated along a row. */
export interface FriezeFound {
  readonly group: FriezeGroup;
  /** In plain words. */
  readonly words: string;
  /** The smallest repeat, in stitches; divides the motif's width. */
  readonly period: number;
  /** Rows of the strip from the motif's top, [first, end): empty rows above and below don't belong to it. */
  readonly rows: readonly [first: number, end: number];
  /** Mirror lines across the strip within one repeat, in columns: 2 lies on column 2, 2.5 between columns 2 and 3. */
  readonly mirrorLines: readonly number[];
  /** Centres of half turns within one repeat, in columns. */
  readonly turnCentres: readonly number[];
}

/**
 * Names the frieze group of a motif repeated along a row without a gap. Empty rows at top and bottom are left off, the
 * smallest repeat is found, then it is decided in the order mirror along, mirror across, turn, glide. Stitches that are
 * set count as well as yarns. Null for a motif without anything in it. Cost: width² × height.
 */
export function friezeOf(motif: Pick<Motif, 'cells' | 'stitches'>): FriezeFound | null {
  const marks = motif.cells.map((row, y) => Array.from(row, (letter, x) => letter + (motif.stitches?.[y]?.[x] ?? '.')));
  const isEmpty = (row: readonly string[]) => row.every((mark) => mark === '..');
  const first = marks.findIndex((row) => !isEmpty(row));
  if (first < 0) return null;
  const end = marks.findLastIndex((row) => !isEmpty(row)) + 1;
  const strip = marks.slice(first, end);
  const period = smallestPeriod(strip);
  const at = (x: number, y: number) => strip[y]![((x % period) + period) % period]!;
  const holds = (image: (x: number, y: number) => string) => strip.every((row, y) => row.slice(0, period).every((mark, x) => mark === image(x, y)));
  const bottom = strip.length - 1;
  const shifts = Array.from({ length: period }, (_, c) => c);
  const alongMirror = holds((x, y) => at(x, bottom - y));
  const mirrors = shifts.filter((c) => holds((x, y) => at(c - x, y)));
  const turns = shifts.filter((c) => holds((x, y) => at(c - x, bottom - y)));
  const glide = period % 2 === 0 && holds((x, y) => at(x + period / 2, bottom - y));
  const group = decide(alongMirror, mirrors.length > 0, turns.length > 0, glide);
  return { group, words: friezeRow(group).words, period, rows: [first, end], mirrorLines: linesOf(mirrors, period), turnCentres: linesOf(turns, period) };
}

function decide(alongMirror: boolean, acrossMirror: boolean, turn: boolean, glide: boolean): FriezeGroup {
  if (alongMirror) return acrossMirror ? 'p2mm' : 'p11m';
  if (acrossMirror) return turn ? 'p2mg' : 'p1m1';
  if (turn) return 'p2';
  return glide ? 'p11g' : 'p1';
}

function smallestPeriod(strip: readonly (readonly string[])[]): number {
  const width = strip[0]!.length;
  for (let period = 1; period < width; period++) {
    if (width % period === 0 && strip.every((row) => row.every((mark, x) => mark === row[x % period]))) return period;
  }
  return width;
}

/** Column c − x meets x at c / 2 and half a repeat further. */
function linesOf(sums: readonly number[], period: number): readonly number[] {
  return sums.flatMap((sum) => [sum / 2, ((sum + period) / 2) % period]).sort((a, b) => a - b);
}
