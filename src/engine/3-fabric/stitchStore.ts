import { stitchCode, type StitchKind } from '../craft/stitches.ts';
import type { Fabric } from './fabric.ts';
import { GrowingInt32 } from './growing.ts';

/** What a new stitch is made of. */
export interface NewStitch {
  readonly kind: StitchKind;
  readonly yarn: number;
  readonly flags: number;
  readonly legs: number;
  readonly legKind?: StitchKind | undefined;
  readonly row: number;
  readonly previous: number;
  readonly instruction: number;
  readonly bases: readonly number[];
}

/** A stitch as it was before a later row changed it: took it over as its turning chain, or for its space. */
export interface Move {
  readonly stitch: number;
  readonly row: number;
  readonly flags: number;
  /** Its late base, -1 for none. */
  readonly late: number;
}

/** The columns of the fabric while it grows. */
export class StitchStore {
  private readonly kinds = new GrowingInt32();
  private readonly yarns = new GrowingInt32();
  readonly flags = new GrowingInt32();
  private readonly legs = new GrowingInt32();
  private readonly legKinds = new GrowingInt32();
  readonly rows = new GrowingInt32();
  private readonly previous = new GrowingInt32();
  private readonly instructions = new GrowingInt32();
  private readonly baseStart = new GrowingInt32();
  private readonly bases = new GrowingInt32();
  /** Bases known only after the stitch was made: what a turning chain that counts stands on. */
  private readonly lateBase = new Map<number, number>();
  /** What rows changed of stitches made before them, in the order of the changes. */
  moves: Move[] = [];
  /** Stitches made before the row being worked. */
  settled = 0;

  get count(): number {
    return this.kinds.length;
  }

  /** Adds a stitch and returns its number. */
  add(stitch: NewStitch): number {
    this.yarns.push(stitch.yarn);
    this.flags.push(stitch.flags);
    this.legs.push(stitch.legs);
    this.legKinds.push(stitch.legKind === undefined ? 0 : stitchCode(stitch.legKind));
    this.rows.push(stitch.row);
    this.previous.push(stitch.previous);
    this.instructions.push(stitch.instruction);
    this.baseStart.push(this.bases.length);
    for (const base of stitch.bases) this.bases.push(base);
    return this.kinds.push(stitchCode(stitch.kind));
  }

  code(stitch: number): number {
    return this.kinds.at(stitch);
  }

  has(stitch: number, flag: number): boolean {
    return (this.flags.at(stitch) & flag) !== 0;
  }

  mark(stitch: number, flag: number): void {
    this.keep(stitch);
    this.flags.set(stitch, this.flags.at(stitch) | flag);
  }

  unmark(stitch: number, flag: number): void {
    this.keep(stitch);
    this.flags.set(stitch, this.flags.at(stitch) & ~flag);
  }

  /** First base of a stitch, -1 for none. */
  firstBase(stitch: number): number {
    const start = this.baseStart.at(stitch);
    const end = stitch + 1 < this.count ? this.baseStart.at(stitch + 1) : this.bases.length;
    return start < end ? this.bases.at(start) : -1;
  }

  /** Gives a stitch to another row. */
  moveToRow(stitch: number, row: number): void {
    this.keep(stitch);
    this.rows.set(stitch, row);
  }

  /** Sets what a stitch stands on, known only after it was made. */
  standOn(stitch: number, base: number): void {
    this.keep(stitch);
    this.lateBase.set(stitch, base);
  }

  /** A stitch's facts that later rows may change. */
  asMoved(stitch: number): Move {
    return { stitch, row: this.rows.at(stitch), flags: this.flags.at(stitch), late: this.lateBase.get(stitch) ?? -1 };
  }

  /** Gives a stitch the facts of a move. */
  restore({ stitch, row, flags, late }: Move): void {
    this.rows.set(stitch, row);
    this.flags.set(stitch, flags);
    if (late < 0) this.lateBase.delete(stitch);
    else this.lateBase.set(stitch, late);
  }

  /** Goes back to the first `count` stitches as they were after `moves` changes. Linear in what is dropped. */
  rewind(count: number, moves: number): void {
    for (let i = this.moves.length - 1; i >= moves; i--) this.restore(this.moves[i]!);
    this.moves.length = Math.min(this.moves.length, moves);
    for (let stitch = count; stitch < this.count; stitch++) this.lateBase.delete(stitch);
    this.bases.cut(count < this.count ? this.baseStart.at(count) : this.bases.length);
    for (const column of this.columns()) column.cut(count);
  }

  /** A copy of the first `count` stitches as they were after `moves` changes. */
  copy(count: number, moves: number): StitchStore {
    const store = new StitchStore();
    const own = this.columns();
    store.columns().forEach((column, i) => column.copyFrom(own[i]!, count));
    store.bases.copyFrom(this.bases, count < this.count ? this.baseStart.at(count) : this.bases.length);
    for (const [stitch, base] of this.lateBase) if (stitch < count) store.lateBase.set(stitch, base);
    for (let i = this.moves.length - 1; i >= moves; i--) if (this.moves[i]!.stitch < count) store.restore(this.moves[i]!);
    store.moves = this.moves.slice(0, moves);
    return store;
  }

  /**
   * Takes over the stitches of another store from `from` on, and what it changed after `moves` changes, with its numbers of
   * stitches as `renumber` gives them. What it names must be here.
   */
  addFrom(other: StitchStore, from: number, moves: number, renumber: (stitch: number) => number): void {
    const shift = this.bases.length - (from < other.count ? other.baseStart.at(from) : other.bases.length);
    const start = this.count;
    const others = other.columns();
    this.columns().forEach((column, i) =>
      column.addFrom(others[i]!, from, column === this.previous ? renumber : column === this.baseStart && shift !== 0 ? (value) => value + shift : null),
    );
    this.bases.addFrom(other.bases, from < other.count ? other.baseStart.at(from) : other.bases.length, renumber);
    for (const [stitch, base] of other.lateBase) if (stitch >= from) this.lateBase.set(stitch - from + start, renumber(base));
    const changed = new Set<number>();
    for (const move of other.moves.slice(moves)) {
      this.moves.push({ ...move, stitch: renumber(move.stitch), late: move.late < 0 ? -1 : renumber(move.late) });
      if (move.stitch < from) changed.add(move.stitch);
    }
    for (const stitch of changed) {
      const now = other.asMoved(stitch);
      this.restore({ ...now, stitch: renumber(stitch), late: now.late < 0 ? -1 : renumber(now.late) });
    }
  }

  private keep(stitch: number): void {
    if (stitch < this.settled) this.moves.push(this.asMoved(stitch));
  }

  /** The columns with a value for each stitch. */
  private columns(): GrowingInt32[] {
    return [this.kinds, this.yarns, this.flags, this.legs, this.legKinds, this.rows, this.previous, this.instructions, this.baseStart];
  }

  /** The finished columns in the fabric's types. */
  finish(): Pick<Fabric, 'count' | 'kind' | 'yarn' | 'flags' | 'legs' | 'legKind' | 'row' | 'previous' | 'baseStart' | 'bases' | 'instruction'> {
    const baseStart = new Int32Array(this.count + 1);
    const bases = new Int32Array(this.bases.length + this.lateBase.size);
    let length = 0;
    if (this.lateBase.size === 0) {
      baseStart.set(this.baseStart.view());
      bases.set(this.bases.view());
      length = bases.length;
    } else for (let stitch = 0; stitch < this.count; stitch++) {
      baseStart[stitch] = length;
      const late = this.lateBase.get(stitch);
      if (late !== undefined) bases[length++] = late;
      const end = stitch + 1 < this.count ? this.baseStart.at(stitch + 1) : this.bases.length;
      for (let i = this.baseStart.at(stitch); i < end; i++) bases[length++] = this.bases.at(i);
    }
    baseStart[this.count] = length;
    return {
      count: this.count,
      kind: new Uint8Array(this.kinds.view()),
      yarn: new Uint8Array(this.yarns.view()),
      flags: new Uint16Array(this.flags.view()),
      legs: new Uint8Array(this.legs.view()),
      legKind: new Uint8Array(this.legKinds.view()),
      row: this.rows.toArray(),
      previous: this.previous.toArray(),
      baseStart,
      bases,
      instruction: new Uint16Array(this.instructions.view()),
    };
  }
}
