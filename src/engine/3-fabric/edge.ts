import { GrowingInt32 } from './growing.ts';

/**
 * What a place on the edge is. Row ends are the sides of flat rows: the hook passes over them unless it is told to work into
 * them. Marks are no places to work into; the hook passes over all of them but an edge's end.
 */
export const PLACE = { top: 0, bottom: 1, rowEnd: 2, end: 3, seam: 4, roundStart: 5 } as const;

/** Neither a stitch nor a row. */
export const NONE = -1;

/**
 * The fabric's border: rings of open places, each a doubly linked circle that holds one mark (the end of a flat edge, the
 * seam, or the start of the round) and the stitch tops that nothing has been worked into yet. A place's own facts never
 * change; only its links do, so that a ring can be put back by its order alone.
 */
export class Edge {
  readonly stitch = new GrowingInt32();
  readonly row = new GrowingInt32();
  readonly what = new GrowingInt32();
  /** Place id of the first chain of the chain space that this place belongs to; NONE for others. */
  readonly run = new GrowingInt32();
  private readonly next = new GrowingInt32();
  private readonly before = new GrowingInt32();

  /** Places made so far, open or not. */
  get count(): number {
    return this.stitch.length;
  }

  /** A new ring with nothing on it but its mark; returns the mark's place. */
  newRing(what: number): number {
    const place = this.add(NONE, NONE, what, NONE);
    this.next.set(place, place);
    this.before.set(place, place);
    return place;
  }

  /** Makes a place without putting it on a ring. */
  add(stitch: number, row: number, what: number, run: number): number {
    const place = this.stitch.push(stitch);
    this.row.push(row);
    this.what.push(what);
    this.run.push(run);
    this.next.push(NONE);
    this.before.push(NONE);
    return place;
  }

  /** The place next to `place` in a direction (1: ring order, -1: against it). */
  beside(place: number, direction: number): number {
    return direction > 0 ? this.next.at(place) : this.before.at(place);
  }

  /** Puts `place` next to `beside` in a direction. */
  insert(place: number, beside: number, direction: number): void {
    const other = this.beside(beside, direction);
    const [left, right] = direction > 0 ? [beside, other] : [other, beside];
    this.next.set(left, place);
    this.before.set(place, left);
    this.next.set(place, right);
    this.before.set(right, place);
  }

  /** Takes `place` off its ring. */
  remove(place: number): void {
    const left = this.before.at(place);
    const right = this.next.at(place);
    this.next.set(left, right);
    this.before.set(right, left);
    this.next.set(place, NONE);
    this.before.set(place, NONE);
  }

  /** Turns the mark of a ring into another mark. */
  setMark(mark: number, what: number): void {
    this.what.set(mark, what);
  }

  isRowEnd(place: number): boolean {
    return this.what.at(place) === PLACE.rowEnd;
  }

  isMark(place: number): boolean {
    return this.what.at(place) >= PLACE.end;
  }

  /** The places of a ring in order, the mark first. */
  order(mark: number): Int32Array {
    let count = 0;
    let place = mark;
    do {
      count++;
      place = this.next.at(place);
    } while (place !== mark);
    const order = new Int32Array(count);
    for (let i = 0; i < count; i++) {
      order[i] = place;
      place = this.next.at(place);
    }
    return order;
  }

  /** Links the places of `order` to a ring again, whatever their links were. */
  relink(order: Int32Array): void {
    for (let i = 0; i < order.length; i++) {
      const place = order[i]!;
      const following = order[i + 1 < order.length ? i + 1 : 0]!;
      this.next.set(place, following);
      this.before.set(following, place);
    }
  }

  /** Drops the places from `count` on; links are left to `relink`. */
  cut(count: number): void {
    for (const column of this.columns()) column.cut(count);
  }

  /** A copy of the places' facts up to `count`; links are left to `relink`. */
  copy(count: number): Edge {
    const edge = new Edge();
    const own = this.columns();
    edge.columns().forEach((column, i) => column.copyFrom(own[i]!, count));
    return edge;
  }

  /** Takes over the facts of another edge's places from `from` on, with its numbers as they are here; links are left to `relink`. */
  addFrom(other: Edge, from: number, stitchOf: (stitch: number) => number, placeOf: (place: number) => number): void {
    const others = other.columns();
    this.columns().forEach((column, i) => column.addFrom(others[i]!, from, column === this.stitch ? stitchOf : column === this.run ? placeOf : null));
  }

  private columns(): GrowingInt32[] {
    return [this.stitch, this.row, this.what, this.run, this.next, this.before];
  }
}
