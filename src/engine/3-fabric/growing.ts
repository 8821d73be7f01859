/** Room for what an edit adds to a column that was copied, so that it need not grow at once. */
const ROOM = 1024;

/** A column of 32-bit whole numbers that grows by doubling. */
export class GrowingInt32 {
  private data = new Int32Array(256);
  length = 0;

  /** Adds a value and returns its index. */
  push(value: number): number {
    if (this.length === this.data.length) this.grow(this.length + 1);
    this.data[this.length] = value;
    return this.length++;
  }

  at(index: number): number {
    return this.data[index]!;
  }

  set(index: number, value: number): void {
    this.data[index] = value;
  }

  /** Takes over the first `count` values of another column, with room for as many as that has. */
  copyFrom(other: GrowingInt32, count: number): void {
    this.data = new Int32Array(other.length + ROOM);
    this.data.set(other.data.subarray(0, count));
    this.length = count;
  }

  /** Adds the values of another column from `from` on, each as `change` gives it. */
  addFrom(other: GrowingInt32, from: number, change: ((value: number) => number) | null = null): void {
    const start = this.length;
    this.grow(start + other.length - from);
    this.data.set(other.data.subarray(from, other.length), start);
    this.length = start + other.length - from;
    if (change) for (let i = start; i < this.length; i++) this.data[i] = change(this.data[i]!);
  }

  /** Drops everything from `count` on. */
  cut(count: number): void {
    this.length = Math.min(this.length, count);
  }

  /** The values so far, to be read at once: the next value put may leave it behind. */
  view(): Int32Array {
    return this.data.subarray(0, this.length);
  }

  /** The values so far, as a copy of the exact length. */
  toArray(): Int32Array {
    return this.data.slice(0, this.length);
  }

  private grow(least: number): void {
    if (least <= this.data.length) return;
    const grown = new Int32Array(Math.max(least, this.data.length * 2));
    grown.set(this.data);
    this.data = grown;
  }
}
