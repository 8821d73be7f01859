import type { Motif } from '../../engine/1-pattern/pattern.ts';
import { drawCells, drawStitches, isSymmetryPossible, type Symmetry } from '../../engine/4-colour/drawMotif.ts';
import { changePart, layPart, movePart, type MotifPart } from '../../engine/4-colour/motifParts.ts';
import { areaPoints, linePoints, rectanglePoints, type MotifPoint } from '../../engine/4-colour/motifPoints.ts';
import { changeGrids, cropMotif } from '../../engine/4-colour/motifs.ts';
import { setMotif } from '../bench/commands/setMotif.ts';
import type { Session } from '../bench/session.svelte.ts';

/** What a press on the sheet does. */
export type MotifTool = 'pencil' | 'line' | 'rectangle' | 'fill' | 'select';

/** The tools as they are offered; the digits 1 to 5 take them in this order. */
export const MOTIF_TOOLS: readonly { readonly tool: MotifTool; readonly name: string }[] = [
  { tool: 'pencil', name: 'Pencil' }, { tool: 'line', name: 'Line' }, { tool: 'rectangle', name: 'Rectangle' }, { tool: 'fill', name: 'Fill' }, { tool: 'select', name: 'Choose a part' },
];

/** What is drawn with: a yarn or nothing (`.`), or a stitch that is set in the place of the row's own. */
export type MotifInk = { readonly kind: 'yarn'; readonly letter: string } | { readonly kind: 'stitch'; readonly letter: string };

interface Stroke {
  readonly from: MotifPoint;
  readonly to: MotifPoint;
  /** Cells passed by the pencil. */
  readonly passed: readonly MotifPoint[];
  /** The part that is being moved, if the stroke began in it. */
  readonly moves: MotifPart | null;
  readonly isCopy: boolean;
}

/** The motif on the sheet with the tool in hand. A stroke is drawn here and becomes one step of the pattern when it ends. */
export class MotifDesk {
  readonly #session: Session;
  readonly #id: () => string;

  tool = $state.raw<MotifTool>('pencil');
  ink = $state.raw<MotifInk>({ kind: 'yarn', letter: '.' });
  symmetry = $state.raw<Symmetry>('none');
  isFilled = $state(false);
  cursor = $state.raw<MotifPoint>({ x: 0, y: 0 });
  part = $state.raw<MotifPart | null>(null);
  #stroke = $state.raw<Stroke | null>(null);
  #copied = $state.raw<Motif | null>(null);

  readonly motif = $derived.by(() => this.#session.pattern.motifs.find((each) => each.id === this.#id()) ?? null);
  readonly width = $derived(this.motif?.cells[0]?.length ?? 0);
  readonly height = $derived(this.motif?.cells.length ?? 0);
  /** The motif as it would be if the stroke ended now. */
  readonly shown = $derived(this.motif && this.#stroke ? this.#after(this.motif, this.#stroke) : this.motif);
  /** The part that is chosen, where it lies now. */
  readonly partShown = $derived.by((): MotifPart | null => {
    const stroke = this.#stroke;
    if (stroke?.moves) return { ...stroke.moves, x: stroke.moves.x + stroke.to.x - stroke.from.x, y: stroke.moves.y + stroke.to.y - stroke.from.y };
    return stroke && this.tool === 'select' ? partBetween(stroke.from, stroke.to) : this.part;
  });
  readonly isHeld = $derived(this.#copied !== null);

  constructor(session: Session, id: () => string) {
    this.#session = session;
    this.#id = id;
    this.ink = { kind: 'yarn', letter: session.pattern.yarns[1]?.letter ?? session.pattern.yarns[0]?.letter ?? '.' };
  }

  start(at: MotifPoint, isCopy: boolean): void {
    this.cursor = at;
    const moves = this.tool === 'select' && this.part && isIn(this.part, at) ? this.part : null;
    this.#stroke = { from: at, to: at, passed: [at], moves, isCopy };
  }

  move(to: MotifPoint): void {
    const stroke = this.#stroke;
    if (!stroke || (stroke.to.x === to.x && stroke.to.y === to.y)) return;
    this.cursor = { x: within(to.x, this.width), y: within(to.y, this.height) };
    this.#stroke = { ...stroke, to, passed: this.tool === 'pencil' ? [...stroke.passed, ...linePoints(stroke.to, to)] : stroke.passed };
  }

  end(): void {
    const stroke = this.#stroke;
    const { motif, shown } = this;
    const part = this.partShown;
    this.#stroke = null;
    if (!stroke || !motif || !shown) return;
    if (this.tool === 'select') this.part = part && clipped(part, this.width, this.height);
    this.#commit(shown, stroke.moves ? (stroke.isCopy ? 'Copy within' : 'Move within') : 'Draw');
  }

  cancel(): void {
    this.#stroke = null;
  }

  get isDrawing(): boolean {
    return this.#stroke !== null;
  }

  /**
   * What Enter does where the keyboard stands: the pencil draws, fill fills; a line, a rectangle and a part begin at the first
   * press and end at the second. In the part that is chosen the first press takes it up, or a copy, and the second puts it down.
   */
  press(isCopy: boolean): void {
    if (this.#stroke) return this.end();
    if (this.tool === 'pencil') return this.lay(null);
    this.start(this.cursor, isCopy);
    if (this.tool === 'fill') this.end();
  }

  /** Draws the ink, or a yarn, on the cell that the keyboard stands on. */
  lay(letter: string | null): void {
    const { motif } = this;
    if (!motif) return;
    const ink: MotifInk = letter === null ? this.ink : { kind: 'yarn', letter };
    const points = this.part && isIn(this.part, this.cursor) ? rectanglePoints(...cornersOf(this.part), true) : [this.cursor];
    this.#commit(this.#drawn(motif, points, ink), 'Draw');
  }

  walk(dx: number, dy: number): void {
    const to = { x: within(this.cursor.x + dx, this.width), y: within(this.cursor.y + dy, this.height) };
    if (this.#stroke) this.move(to);
    else this.cursor = to;
  }

  /** Goes on choosing a part from where the cursor stands. */
  grow(dx: number, dy: number): void {
    const part = this.part ?? { ...this.cursor, width: 1, height: 1 };
    const from = { x: this.cursor.x === part.x ? part.x + part.width - 1 : part.x, y: this.cursor.y === part.y ? part.y + part.height - 1 : part.y };
    this.walk(dx, dy);
    this.part = partBetween(from, this.cursor);
  }

  /** Moves what is chosen, or a copy of it. */
  shift(dx: number, dy: number, isCopy: boolean): void {
    const { motif, part } = this;
    if (!motif || !part) return;
    const moved = { ...part, x: within(part.x + dx, this.width - part.width + 1), y: within(part.y + dy, this.height - part.height + 1) };
    if (this.#commit(movePart(motif, part, moved.x, moved.y, isCopy), isCopy ? 'Copy within' : 'Move within')) this.part = moved;
    this.walk(dx, dy);
  }

  copy(): void {
    const { motif, part } = this;
    if (motif) this.#copied = part ? cropMotif(motif, part.x, part.y, part.width, part.height) : motif;
  }

  paste(): void {
    const { motif } = this;
    const copied = this.#copied;
    if (!motif || !copied) return;
    const { x, y } = this.cursor;
    if (this.#commit(layPart(motif, copied, x, y), 'Copy within')) this.part = clipped({ x, y, width: copied.cells[0]!.length, height: copied.cells.length }, this.width, this.height);
  }

  clear(): void {
    this.changeChosen((one) => changeGrids(one, (rows) => rows.map((row) => '.'.repeat(row.length))), 'Clear');
  }

  /** Does something to the part that is chosen, or to the whole motif. */
  changeChosen(change: (motif: Motif) => Motif, label: string): void {
    const { motif, part } = this;
    if (motif) this.#commit(part ? changePart(motif, part, change) : change(motif), label);
  }

  /** Does something to the whole motif that may change its size. */
  change(change: (motif: Motif) => Motif, label: string): void {
    const { motif } = this;
    if (motif && this.#commit(change(motif), label)) this.part = null;
    this.walk(0, 0);
  }

  #commit(motif: Motif, label: string): boolean {
    return this.#session.commit(setMotif(withoutEmptyStitches(motif), label));
  }

  #after(motif: Motif, stroke: Stroke): Motif {
    if (stroke.moves) return movePart(motif, stroke.moves, stroke.moves.x + stroke.to.x - stroke.from.x, stroke.moves.y + stroke.to.y - stroke.from.y, stroke.isCopy);
    switch (this.tool) {
      case 'select':
        return motif;
      case 'pencil':
        return this.#drawn(motif, stroke.passed, this.ink);
      case 'line':
        return this.#drawn(motif, linePoints(stroke.from, stroke.to), this.ink);
      case 'rectangle':
        return this.#drawn(motif, rectanglePoints(stroke.from, stroke.to, this.isFilled), this.ink);
      case 'fill': {
        const grid = this.ink.kind === 'yarn' ? motif.cells : (motif.stitches ?? motif.cells.map((row) => '.'.repeat(row.length)));
        return this.#drawn(motif, areaPoints(grid, stroke.to), this.ink);
      }
    }
  }

  #drawn(motif: Motif, points: readonly MotifPoint[], ink: MotifInk): Motif {
    const symmetry = isSymmetryPossible(motif, this.symmetry) ? this.symmetry : 'none';
    return ink.kind === 'yarn' ? drawCells(motif, points, ink.letter, symmetry) : drawStitches(motif, points, ink.letter, symmetry);
  }
}

function withoutEmptyStitches(motif: Motif): Motif {
  const { stitches, ...plain } = motif;
  return stitches && !stitches.some((row) => /[^.]/.test(row)) ? plain : motif;
}

function partBetween(one: MotifPoint, other: MotifPoint): MotifPart {
  return { x: Math.min(one.x, other.x), y: Math.min(one.y, other.y), width: Math.abs(one.x - other.x) + 1, height: Math.abs(one.y - other.y) + 1 };
}

function cornersOf({ x, y, width, height }: MotifPart): readonly [MotifPoint, MotifPoint] {
  return [{ x, y }, { x: x + width - 1, y: y + height - 1 }];
}

/** The part of it that lies within the motif; null where none does. */
function clipped(part: MotifPart, width: number, height: number): MotifPart | null {
  const [x, y] = [Math.max(part.x, 0), Math.max(part.y, 0)];
  const [right, bottom] = [Math.min(part.x + part.width, width), Math.min(part.y + part.height, height)];
  return right > x && bottom > y ? { x, y, width: right - x, height: bottom - y } : null;
}

function isIn(part: MotifPart, { x, y }: MotifPoint): boolean {
  return x >= part.x && y >= part.y && x < part.x + part.width && y < part.y + part.height;
}

function within(n: number, count: number): number {
  return Math.max(0, Math.min(count - 1, n));
}
