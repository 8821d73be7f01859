import { stitchCode, type StitchKind } from '../craft/stitches.ts';
import { FLAG, type Fabric } from './fabric.ts';
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
  readonly lateBase = new Map<number, number>();

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
    this.flags.set(stitch, this.flags.at(stitch) | flag);
  }

  unmark(stitch: number, flag: number): void {
    this.flags.set(stitch, this.flags.at(stitch) & ~flag);
  }

  /** First base of a stitch, -1 for none. */
  firstBase(stitch: number): number {
    const start = this.baseStart.at(stitch);
    const end = stitch + 1 < this.count ? this.baseStart.at(stitch + 1) : this.bases.length;
    return start < end ? this.bases.at(start) : -1;
  }

  /** A copy of the first `count` stitches, with each stitch back in the row that made it (see `restoreRow`). */
  copy(count: number): StitchStore {
    const store = new StitchStore();
    store.kinds.copyFrom(this.kinds, count);
    store.yarns.copyFrom(this.yarns, count);
    store.flags.copyFrom(this.flags, count);
    store.legs.copyFrom(this.legs, count);
    store.legKinds.copyFrom(this.legKinds, count);
    store.rows.copyFrom(this.rows, count);
    store.previous.copyFrom(this.previous, count);
    store.instructions.copyFrom(this.instructions, count);
    store.baseStart.copyFrom(this.baseStart, count);
    store.bases.copyFrom(this.bases, count < this.count ? this.baseStart.at(count) : this.bases.length);
    for (const [stitch, base] of this.lateBase) if (stitch < count) store.lateBase.set(stitch, base);
    return store;
  }

  /** Gives stitches [first, end) back to a row: chains that a later row had taken over as its turning chain. `isFoundation` tells which of them are foundation. */
  restoreRow(first: number, end: number, row: number, isFoundation: (stitch: number) => boolean): void {
    for (let stitch = first; stitch < end; stitch++) {
      if (this.rows.at(stitch) === row) continue;
      this.rows.set(stitch, row);
      this.unmark(stitch, FLAG.turning | FLAG.counts | FLAG.space);
      if (isFoundation(stitch)) this.mark(stitch, FLAG.foundation);
      this.lateBase.delete(stitch);
    }
  }

  /** The finished columns in the fabric's types. */
  finish(): Pick<Fabric, 'count' | 'kind' | 'yarn' | 'flags' | 'legs' | 'legKind' | 'row' | 'previous' | 'baseStart' | 'bases' | 'instruction'> {
    const baseStart = new Int32Array(this.count + 1);
    const bases = new Int32Array(this.bases.length + this.lateBase.size);
    let length = 0;
    for (let stitch = 0; stitch < this.count; stitch++) {
      baseStart[stitch] = length;
      const late = this.lateBase.get(stitch);
      if (late !== undefined) bases[length++] = late;
      const end = stitch + 1 < this.count ? this.baseStart.at(stitch + 1) : this.bases.length;
      for (let i = this.baseStart.at(stitch); i < end; i++) bases[length++] = this.bases.at(i);
    }
    baseStart[this.count] = length;
    return {
      count: this.count,
      kind: Uint8Array.from(this.kinds.toArray()),
      yarn: Uint8Array.from(this.yarns.toArray()),
      flags: Uint16Array.from(this.flags.toArray()),
      legs: Uint8Array.from(this.legs.toArray()),
      legKind: Uint8Array.from(this.legKinds.toArray()),
      row: this.rows.toArray(),
      previous: this.previous.toArray(),
      baseStart,
      bases,
      instruction: Uint16Array.from(this.instructions.toArray()),
    };
  }
}
