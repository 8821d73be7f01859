import type { Yarn } from '../1-pattern/pattern.ts';
import type { Solid } from '../5-layout/solid/solid.ts';
import { shadedColour, shadeOf, SHADES } from './solidShade.ts';
import { turnPoints } from './solidView.ts';
import type { SolidView } from './solidView.ts';

/** One filled path of the picture, in mm about the middle of the solid, y down. Later paths lie over earlier ones. */
export interface SolidPath {
  readonly d: string;
  readonly fill: string;
}

/** What may be left out of the picture. */
export interface SolidDetail {
  /** The two strands of each stitch: what makes it read as crochet, and half of the work. */
  readonly strands: boolean;
}

/** Slices of depth from back to front, at most this many mm thick: within one, cells of one fill are one path. Thicker without strands. */
const SLICE_MM = 3;
const PLAIN_SLICE_MM = 6;
const MOST_SLICES = 120;
/** With strands the ground between them is darker, they lighter. */
const GROUND = 0.86;
const STRAND = 1.1;

/**
 * The picture of a solid in its yarns: cells from back to front (painter's order), shaded by the way they face. `yarnOf` is the
 * yarn index of each stitch number. Cells of one yarn and light in one slice of depth share a path. Cost n log n in cells.
 */
export function solidPaths(solid: Solid, yarnOf: Uint8Array, yarns: readonly Yarn[], view: SolidView, detail: SolidDetail): SolidPath[] {
  const seen = turnPoints(solid.corners, view);
  const normals = turnPoints(solid.normals, view);
  const { outline, outlineStart, topStart, cells } = solid;
  const count = cells.length;
  const depth = new Float32Array(count);
  const fill = new Int32Array(count);
  const facing = new Uint8Array(count);
  let [far, near] = [Infinity, -Infinity];
  for (let cell = 0; cell < count; cell++) {
    const from = outlineStart[cell]!;
    const end = outlineStart[cell + 1]!;
    let [z, nx, ny, nz, area] = [0, 0, 0, 0, 0];
    for (let k = from; k < end; k++) {
      const a = outline[k]! * 3;
      const b = outline[k + 1 < end ? k + 1 : from]! * 3;
      z += seen[a + 2]! / (end - from);
      nx += normals[a]!;
      ny += normals[a + 1]!;
      nz += normals[a + 2]!;
      area += seen[a]! * seen[b + 1]! - seen[b]! * seen[a + 1]!;
    }
    const length = Math.hypot(nx, ny, nz) || 1;
    depth[cell] = z;
    // Outlines run anticlockwise seen on the right side: clockwise area, with y down, is negative.
    facing[cell] = area < 0 ? 1 : 0;
    fill[cell] = yarnOf[cells[cell]!]! * SHADES + shadeOf(nx / length, ny / length, nz / length, area < 0);
    far = Math.min(far, depth[cell]!);
    near = Math.max(near, depth[cell]!);
  }

  const slices = Math.max(1, Math.min(MOST_SLICES, Math.ceil((near - far) / (detail.strands ? SLICE_MM : PLAIN_SLICE_MM))));
  const sliceOf = (cell: number): number => (near > far ? Math.min(slices - 1, Math.floor((slices * (depth[cell]! - far)) / (near - far))) : 0);
  const layers = Array.from({ length: slices * 2 }, () => new Map<number, number[]>());
  for (let cell = 0; cell < count; cell++) {
    const layer = layers[sliceOf(cell) * 2 + facing[cell]!]!;
    const same = layer.get(fill[cell]!);
    if (same) same.push(cell);
    else layer.set(fill[cell]!, [cell]);
  }

  const paths: SolidPath[] = [];
  const colours = new Map<string, string>();
  const colourOf = (key: number, lift: number): string => {
    const name = `${key} ${lift}`;
    let colour = colours.get(name);
    if (!colour) colours.set(name, (colour = shadedColour(yarns[Math.floor(key / SHADES)]?.colour ?? '', key % SHADES, lift)));
    return colour;
  };
  layers.forEach((layer, l) => {
    const keys = [...layer.keys()].sort((a, b) => a - b);
    const strands = detail.strands && l % 2 === 1;
    for (const key of keys) paths.push({ d: layer.get(key)!.map((cell) => cellPath(cell)).join(''), fill: colourOf(key, strands ? GROUND : 1) });
    if (strands) for (const key of keys) paths.push({ d: layer.get(key)!.map((cell) => strandPath(cell)).join(''), fill: colourOf(key, STRAND) });
  });
  return paths;

  function cellPath(cell: number): string {
    let d = 'M';
    for (let k = outlineStart[cell]!; k < outlineStart[cell + 1]!; k++) {
      const at = outline[k]! * 3;
      d += `${k > outlineStart[cell]! ? 'L' : ''}${short(seen[at]!)} ${short(seen[at + 1]!)}`;
    }
    return `${d}Z`;
  }

  /** Two strands from the top corners to the middle of the bottom, each a lens. */
  function strandPath(cell: number): string {
    const from = outlineStart[cell]!;
    const top = topStart[cell]!;
    const end = outlineStart[cell + 1]!;
    const corner = (k: number): readonly [number, number] => [seen[outline[k]! * 3]!, seen[outline[k]! * 3 + 1]!];
    const [bl, br, tr, tl] = [corner(from), corner(top - 1), corner(top), corner(end - 1)];
    const inside = (u: number, v: number): string => {
      const x = (bl[0] * (1 - u) + br[0] * u) * (1 - v) + (tl[0] * (1 - u) + tr[0] * u) * v;
      const y = (bl[1] * (1 - u) + br[1] * u) * (1 - v) + (tl[1] * (1 - u) + tr[1] * u) * v;
      return `${short(x)} ${short(y)}`;
    };
    return [0, 1].map((side) => {
      const u = (share: number): number => (side ? 1 - share : share);
      return `M${inside(u(0.08), 0.96)}Q${inside(u(0.0), 0.2)} ${inside(u(0.49), 0.06)}Q${inside(u(0.56), 0.74)} ${inside(u(0.08), 0.96)}Z`;
    }).join('');
  }
}

/** Hundredths of a mm, the shortest way. */
function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}
