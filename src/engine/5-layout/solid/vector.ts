/** A point or direction in space. */
export type Vector = readonly [x: number, y: number, z: number];

export const plus = (a: Vector, b: Vector, share = 1): Vector => [a[0] + b[0] * share, a[1] + b[1] * share, a[2] + b[2] * share];
export const times = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const lengthOf = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);
export const pointAt = (at: Float64Array | Float32Array, i: number): Vector => [at[i * 3]!, at[i * 3 + 1]!, at[i * 3 + 2]!];

/** A direction of length 1; `otherwise` where `a` has none. */
export function unit(a: Vector, otherwise: Vector = [0, 0, 1]): Vector {
  const length = lengthOf(a);
  return length < 1e-9 ? otherwise : times(a, 1 / length);
}

/** `a` without its part along the unit vector `axis`. */
export function across(a: Vector, axis: Vector): Vector {
  return plus(a, axis, -dot(a, axis));
}

export function setPoint(at: Float64Array, i: number, point: Vector): void {
  at[i * 3] = point[0];
  at[i * 3 + 1] = point[1];
  at[i * 3 + 2] = point[2];
}
