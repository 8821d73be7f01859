import type { Web } from './web.ts';

/**
 * Unit normals at heads `[from, end)`, pointing out of the right side: from left to right neighbour, crossed with from base
 * to head. Zero where a head has no neighbours or no base and nothing stands on it.
 */
export function headNormals(web: Web, at: Float64Array, normals: Float64Array, from = 0, end = web.count): void {
  const { left, right, baseStart, bases } = web;
  normals.fill(0, from * 3, end * 3);
  for (let i = from; i < end; i++) {
    const l = (left[i]! < 0 ? i : left[i]!) * 3;
    const r = (right[i]! < 0 ? i : right[i]!) * 3;
    const ax = at[r]! - at[l]!;
    const ay = at[r + 1]! - at[l + 1]!;
    const az = at[r + 2]! - at[l + 2]!;
    const first = baseStart[i]!;
    const last = baseStart[i + 1]!;
    let [ux, uy, uz] = [0, 0, 0];
    for (let k = first; k < last; k++) {
      const b = bases[k]! * 3;
      ux += at[i * 3]! - at[b]!;
      uy += at[i * 3 + 1]! - at[b + 1]!;
      uz += at[i * 3 + 2]! - at[b + 2]!;
    }
    const nx = ay * uz - az * uy;
    const ny = az * ux - ax * uz;
    const nz = ax * uy - ay * ux;
    const length = Math.hypot(nx, ny, nz);
    if (length < 1e-9) continue;
    // Spread over the stitch and what it stands on, so that both ends of a cell lean the same way.
    const spread = (head: number, share: number): void => {
      normals[head] = normals[head]! + (share * nx) / length;
      normals[head + 1] = normals[head + 1]! + (share * ny) / length;
      normals[head + 2] = normals[head + 2]! + (share * nz) / length;
    };
    spread(i * 3, 1);
    for (let k = first; k < last; k++) if (bases[k]! >= from) spread(bases[k]! * 3, 1 / (last - first));
  }
  for (let i = from * 3; i < end * 3; i += 3) {
    const length = Math.hypot(normals[i]!, normals[i + 1]!, normals[i + 2]!);
    if (length < 1e-9) continue;
    for (let c = 0; c < 3; c++) normals[i + c] = normals[i + c]! / length;
  }
}
