import type { Springs } from './springs.ts';

/** Moves the ends of springs `[from, end)` towards their rest length, once over all, in order or against it. */
export function sweep(at: Float64Array, springs: Springs, from: number, end: number, backwards: boolean): void {
  const { a, b, rest, firmness, pushesOnly } = springs;
  const step = backwards ? -1 : 1;
  const stop = backwards ? from - 1 : end;
  for (let s = backwards ? end - 1 : from; s !== stop; s += step) {
    const i = a[s]! * 3;
    const j = b[s]! * 3;
    const dx = at[j]! - at[i]!;
    const dy = at[j + 1]! - at[i + 1]!;
    const dz = at[j + 2]! - at[i + 2]!;
    const squared = dx * dx + dy * dy + dz * dz;
    const wanted = rest[s]!;
    if (pushesOnly[s]! && squared >= wanted * wanted) continue;
    const length = Math.sqrt(squared);
    if (length < 1e-9) continue;
    const move = (0.5 * firmness[s]! * (length - wanted)) / length;
    at[i] = at[i]! + dx * move;
    at[i + 1] = at[i + 1]! + dy * move;
    at[i + 2] = at[i + 2]! + dz * move;
    at[j] = at[j]! - dx * move;
    at[j + 1] = at[j + 1]! - dy * move;
    at[j + 2] = at[j + 2]! - dz * move;
  }
}
