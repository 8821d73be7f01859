import type { Motif, Placement } from '../1-pattern/pattern.ts';
import type { ColourGrid } from './colourGrid.ts';
import { rowsUpInSize } from './placementInSize.ts';
import { columnCount } from './rowColumns.ts';
import { seamLines } from './seamLines.ts';
import { repeatStart, shiftOfLine, shiftOfRow, spreadRepeats, type Spread } from './spreadRepeats.ts';

/** Where a placement lies in one size: its rows from the bottom up, and its repeats in the bottom row. */
export interface PlacementLie {
  readonly placement: Placement;
  readonly motif: Motif;
  /** Row indices that carry the motif's rows, bottom first; shorter than `rowsWanted` where the section ends before the motif. */
  readonly rows: readonly number[];
  readonly rowsWanted: number;
  /** Stitches of the bottom row. */
  readonly width: number;
  readonly spread: Spread;
  /** For each row the columns that its repeats lie further to the right than those of the bottom row. */
  readonly shifts: readonly number[];
  /** Rows or stitches by which every second repeat is moved; 0 where none is. */
  readonly moved: number;
}

/** One cell of one repeat. `x` from the motif's left, `y` from its bottom, as the motif is drawn (mirrored repeats count back). */
export interface MotifCell {
  readonly repeat: number;
  readonly repeatUp: number;
  readonly x: number;
  readonly y: number;
  /** Yarn letter, or `.`. */
  readonly letter: string;
}

/** Lays a placement (as it is in this size, see `placementInSize`) out on the rows; `null` if its bottom row is not there, or is no row or round. */
export function placementLie(placement: Placement, motif: Motif, grid: ColourGrid, size: number): PlacementLie | null {
  const bottom = grid.rows.indexOf(placement.section, placement.row);
  const sectionRows = grid.rows.of(placement.section);
  const at = bottom < 0 ? -1 : sectionRows.indexOf(bottom);
  const from = at + rowsUpInSize(placement, size);
  const first = sectionRows[from];
  if (at < 0 || first === undefined) return null;
  const motifWidth = motif.cells[0]!.length;
  const height = motif.cells.length + (placement.gapUp ?? 0);
  const moved = movedBy(placement, motif);
  const isHalfDrop = placement.stagger?.kind === 'halfDrop' && moved > 0;
  const rowsWanted = height * placement.up - (isHalfDrop && placement.stagger.closed ? 0 : (placement.gapUp ?? 0)) + (isHalfDrop && !placement.stagger.closed ? moved : 0);
  const rows = sectionRows.slice(from, from + rowsWanted);
  const width = columnCount(grid.columns, first);
  const line = anchorLine(placement, grid, first);
  const isRing = grid.meets[first] ?? false;
  const total = line === null ? 0 : placement.across === 'fill' ? motifWidth : placement.across * (motifWidth + placement.gap) - placement.gap;
  const shifts = rows.map((row) => shiftOf(placement, grid, row, width, line, total));
  const reach = shifts.reduce<readonly [number, number]>(([low, high], shift, i) => [Math.min(low, -shift), Math.max(high, columnCount(grid.columns, rows[i]!) - shift)], [0, width]);
  const spread = spreadRepeats({ width, line, isRing, reach }, motifWidth, placement);
  return { placement, motif, rows, rowsWanted, width, spread, shifts, moved };
}

/** Column of the line that a placement counts from in a row; null where it counts from the row's own ends. */
function anchorLine(placement: Placement, grid: ColourGrid, row: number): number | null {
  if (!placement.anchor || placement.anchor === 'row') return null;
  const width = columnCount(grid.columns, row);
  const seam = seamLines(grid)[row]!;
  const isRing = grid.meets[row] ?? false;
  if (placement.anchor === 'front') return isRing ? (seam + width / 2) % width || 0 : width / 2;
  return Number.isNaN(seam) ? null : seam;
}

function shiftOf(placement: Placement, grid: ColourGrid, row: number, width: number, line: number | null, total: number): number {
  const other = line === null ? null : anchorLine(placement, grid, row);
  if (line !== null && other !== null) return shiftOfLine(placement.align, total, line, other);
  return shiftOfRow(placement.follow ?? placement.align, width, columnCount(grid.columns, row));
}

function movedBy({ stagger, gap, gapUp = 0 }: Placement, motif: Motif): number {
  if (!stagger) return 0;
  const period = stagger.kind === 'halfDrop' ? motif.cells.length + gapUp : motif.cells[0]!.length + gap;
  return stagger.by === 'half' ? Math.floor(period / 2) : stagger.by;
}

/** A cell as it comes to lie: its column, its repeat, and its place in the motif as drawn. */
export type PutCell = (column: number, letter: string, repeat: number, repeatUp: number, x: number, y: number) => void;

/**
 * Lays the cells of one row of a placement (`position` from its bottom row), `cells` being the motif's yarns or its
 * stitches, and leaves out `.`. Returns how many found no column to lie on. Later cells lie over earlier ones. Linear in
 * the cells that can be seen.
 */
export function layRow(lie: PlacementLie, grid: ColourGrid, position: number, cells: readonly string[], put: PutCell): number {
  const { placement, spread } = lie;
  const width = columnCount(grid.columns, lie.rows[position]!);
  const shift = lie.shifts[position]!;
  const isClosedBrick = placement.stagger?.kind === 'brick' && placement.stagger.closed;
  const round = spread.repeats * spread.step + (spread.extra?.at(-1) ?? 0);
  const [from, to] = spread.kept ? [spread.kept[0] + shift, spread.kept[0] + shift + width] : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let beyond = 0;
  for (const parity of [0, 1] as const) {
    const tier = tierOf(lie, position, parity);
    const count = parity === 0 ? Math.ceil(spread.repeats / 2) : Math.floor(spread.repeats / 2);
    if (!tier || count === 0) continue;
    const letters = cells[cells.length - 1 - tier.y]!;
    const isMirror = placement.mirror && parity === 1;
    let laid = 0;
    for (const [first, last] of seenRepeats(spread, letters.length, shift, tier.across, width, isClosedBrick ? round : null)) {
      for (let repeat = first + ((first + parity) % 2); repeat <= last; repeat += 2) {
        const left = repeatStart(spread, repeat) - spread.start + tier.across;
        for (let i = 0; i < letters.length; i++) {
          const x = isMirror ? letters.length - 1 - i : i;
          const letter = letters[x]!;
          if (letter === '.') continue;
          const along = isClosedBrick ? modulo(left + i, round) : left + i;
          const column = spread.start + shift + along;
          if (column < from || column >= to) continue;
          const on = spread.wraps ? modulo(column, width) : column;
          if (on < 0 || on >= width) continue;
          put(on, letter, repeat, tier.tier, x, tier.y);
          laid++;
        }
      }
    }
    beyond += count * [...letters].filter((letter) => letter !== '.').length - laid;
  }
  return beyond;
}

/** Ranges of repeats that can have cells on columns 0 to `width`; what repeats on rings and in spread rows is few enough to look at whole. */
function seenRepeats(spread: Spread, motifWidth: number, shift: number, across: number, width: number, round: number | null): readonly (readonly [first: number, last: number])[] {
  const all = spread.repeats - 1;
  if (spread.wraps || spread.extra) return [[0, all]];
  const range = (moved: number): readonly [number, number] => {
    const left = spread.start + shift + moved;
    return [Math.max(Math.ceil((1 - motifWidth - left) / spread.step), 0), Math.min(Math.floor((width - 1 - left) / spread.step), all)];
  };
  if (round === null) return [range(across)];
  // Closed: what was moved out comes in again a whole round earlier. A repeat in both ranges is looked at once.
  const moved = across % round;
  const [back, on] = [range(moved - round), range(moved)].filter(([first, last]) => first <= last).sort((a, b) => a[0] - b[0]);
  if (!back) return [];
  if (!on) return [back];
  return on[0] <= back[1] ? [[back[0], Math.max(back[1], on[1])]] : [back, on];
}

/** Which of the repeats going up a row belongs to, the motif's row from its bottom as drawn, and the stitches that a brick moves it; null between repeats. */
function tierOf(lie: PlacementLie, position: number, parity: 0 | 1): { readonly tier: number; readonly y: number; readonly across: number } | null {
  const { placement, motif, moved } = lie;
  const height = motif.cells.length;
  const period = height + (placement.gapUp ?? 0);
  let up = position;
  if (placement.stagger?.kind === 'halfDrop' && parity === 1) up = placement.stagger.closed ? modulo(position - moved, period * placement.up) : position - moved;
  const tier = Math.floor(up / period);
  const y = up - tier * period;
  if (up < 0 || tier >= placement.up || y >= height) return null;
  return { tier, y: placement.flip && tier % 2 === 1 ? height - 1 - y : y, across: placement.stagger?.kind === 'brick' && tier % 2 === 1 ? moved : 0 };
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

/** The cell that lies on a column of a row (fabric row index), the last laid where several do; `null` if none does. Cells that leave the stitch (`.`) count where no other lies. */
export function cellOnColumn(lie: PlacementLie, grid: ColourGrid, row: number, column: number): MotifCell | null {
  const position = lie.rows.indexOf(row);
  if (position < 0) return null;
  const found: MotifCell[] = [];
  // Laid as if every cell had a yarn: one that leaves the stitch is a cell of the motif too.
  const every = lie.motif.cells.map((cells) => 'x'.repeat(cells.length));
  layRow(lie, grid, position, every, (on, _, repeat, repeatUp, x, y) => {
    if (on === column) found.push({ repeat, repeatUp, x, y, letter: lie.motif.cells[lie.motif.cells.length - 1 - y]![x]! });
  });
  return found.findLast((cell) => cell.letter !== '.') ?? found.at(-1) ?? null;
}
