import { FLAG } from '../../../../src/engine/3-fabric/fabric.ts';
import type { Fabric } from '../../../../src/engine/3-fabric/fabric.ts';
import type { Solid } from '../../../../src/engine/5-layout/solid/solid.ts';
import { STANDS } from '../../../../src/engine/5-layout/solid/standing.ts';
import type { Web, WebRow } from '../../../../src/engine/5-layout/solid/web.ts';

export type Point = readonly [x: number, y: number, z: number];

export const pointOf = (points: Float32Array, i: number): Point => [points[i * 3]!, points[i * 3 + 1]!, points[i * 3 + 2]!];
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const crossed = (a: Point, b: Point): Point => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const dotted = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const distance = (a: Point, b: Point): number => Math.hypot(...minus(a, b));

/** Relative differences from the gauge: rms, 95th percentile and largest. */
export interface Strain {
  readonly rms: number;
  readonly p95: number;
  readonly most: number;
}

function strainOf(values: number[]): Strain {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  return { rms: Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length)), p95: sizes[Math.floor(sizes.length * 0.95)] ?? 0, most: sizes.at(-1) ?? 0 };
}

/**
 * How far stitches are from their width and height in the gauge. Stitches that are squeezed on purpose are left out: those drawn
 * shut, and the ends of turned short rows (four stitches), where two rows share one base. What stands in a row end or under a chain
 * is as far from the middle of that side, half a stitch beyond the last, or from the chain's top, as it is high.
 */
export function strains(fabric: Fabric, web: Web, solid: Solid): { width: Strain; height: Strain } {
  const width: number[] = [];
  const height: number[] = [];
  const { rows, rowOf, right, baseStart, bases, cellWidthMm } = web;
  for (let i = 0; i < web.count; i++) {
    const row = rows[rowOf[i]!]!;
    const j = right[i]!;
    if (j >= 0 && !row.drawnShut) width.push(distance(pointOf(solid.heads, i), pointOf(solid.heads, j)) / ((cellWidthMm * (web.width[i]! + web.width[j]!)) / 2) - 1);
    const eased = row.partial && Math.min(i - row.first, row.end - 1 - i) < 4;
    if (baseStart[i + 1]! - baseStart[i]! !== 1 || eased || fabric.flags[web.stitch[i]!]! & FLAG.attaching) continue;
    const base = bases[baseStart[i]!]!;
    const tall = web.height[i]! + (web.stands[i] === STANDS.under ? web.height[base]! : 0);
    height.push(distance(pointOf(solid.heads, i), footOf(web, solid, i, base)) / (cellWidthMm * tall) - 1);
  }
  return { width: strainOf(width), height: strainOf(height) };
}

/** Where a stitch stands: on the head of its base, or beside it at the middle of the row's side. */
function footOf(web: Web, solid: Solid, i: number, base: number): Point {
  const head = pointOf(solid.heads, base);
  if (web.stands[i] !== STANDS.leftEnd && web.stands[i] !== STANDS.rightEnd) return head;
  const atLeft = web.stands[i] === STANDS.leftEnd;
  const inwards = minus(head, pointOf(solid.heads, atLeft ? web.right[base]! : web.left[base]!));
  const below = pointOf(solid.heads, web.bases[atLeft ? web.baseStart[base]! : web.baseStart[base + 1]! - 1]!);
  return plus(plus(head, minus(below, head), 0.5), inwards, (web.cellWidthMm * web.width[base]!) / 2 / Math.hypot(...inwards));
}

/** Volume inside the cells in ml, with openings closed by a fan to their middle; positive where the right side is out. */
export function volumeMl(solid: Solid): number {
  let six = 0;
  for (const [a, b, c] of triangles(solid)) six += dotted(a, crossed(b, c));
  for (const loop of openLoops(solid)) {
    const middle = loop.reduce((sum, corner) => plus(sum, pointOf(solid.corners, corner), 1 / loop.length), [0, 0, 0] as Point);
    // A loop runs along its cells; the fan that closes it against them.
    loop.forEach((corner, k) => {
      six += dotted(middle, crossed(pointOf(solid.corners, loop[(k + 1) % loop.length]!), pointOf(solid.corners, corner)));
    });
  }
  return six / 6 / 1000;
}

const plus = (a: Point, b: Point, share: number): Point => [a[0] + b[0] * share, a[1] + b[1] * share, a[2] + b[2] * share];

function triangles(solid: Solid): [Point, Point, Point][] {
  const found: [Point, Point, Point][] = [];
  eachCell(solid, (corners) => {
    for (let k = 1; k + 1 < corners.length; k++) found.push([pointOf(solid.corners, corners[0]!), pointOf(solid.corners, corners[k]!), pointOf(solid.corners, corners[k + 1]!)]);
  });
  return found;
}

function eachCell(solid: Solid, visit: (corners: readonly number[], cell: number) => void): void {
  for (let cell = 0; cell < solid.cells.length; cell++) visit([...solid.outline.subarray(solid.outlineStart[cell]!, solid.outlineStart[cell + 1]!)], cell);
}

/** For each edge, in the direction that its cell runs along it: the cells there. */
export function edgesOf(solid: Solid): Map<string, number[]> {
  const edges = new Map<string, number[]>();
  eachCell(solid, (corners, cell) => corners.forEach((a, k) => {
    const key = `${a} ${corners[(k + 1) % corners.length]!}`;
    edges.set(key, [...(edges.get(key) ?? []), cell]);
  }));
  return edges;
}

/** Closed loops of edges that have a cell on one side only. */
export function openLoops(solid: Solid): number[][] {
  const edges = edgesOf(solid);
  const next = new Map<number, number[]>();
  for (const key of edges.keys()) {
    const [a, b] = key.split(' ').map(Number) as [number, number];
    if (!edges.has(`${b} ${a}`)) next.set(a, [...(next.get(a) ?? []), b]);
  }
  const loops: number[][] = [];
  for (let start = next.keys().next(); !start.done; start = next.keys().next()) {
    const loop: number[] = [];
    for (let at: number | undefined = start.value; at !== undefined; ) {
      const ways: number[] | undefined = next.get(at);
      const to: number | undefined = ways?.pop();
      if (ways?.length === 0) next.delete(at);
      if (to === undefined) break;
      loop.push(at);
      at = to;
    }
    if (loop.length > 0) loops.push(loop);
    else next.delete(start.value);
  }
  return loops;
}

/** Neighbouring cells that are folded on each other: their right sides point more than a right angle apart. */
export function folds(solid: Solid): number {
  const normals: Point[] = [];
  eachCell(solid, (corners) => {
    let sum: Point = [0, 0, 0];
    for (let k = 1; k + 1 < corners.length; k++) {
      sum = plus(sum, crossed(minus(pointOf(solid.corners, corners[k]!), pointOf(solid.corners, corners[0]!)), minus(pointOf(solid.corners, corners[k + 1]!), pointOf(solid.corners, corners[0]!))), 1);
    }
    normals.push(sum);
  });
  const edges = edgesOf(solid);
  let count = 0;
  for (const [key, cells] of edges) {
    const [a, b] = key.split(' ');
    for (const other of edges.get(`${b!} ${a!}`) ?? []) for (const cell of cells) if (cell < other && dotted(normals[cell]!, normals[other]!) < 0) count++;
  }
  return count;
}

/** The cells of some sections only, by name; corners as they are. */
export function sectionsOf(fabric: Fabric, solid: Solid, names: readonly string[]): Solid {
  const cells: number[] = [];
  const outlineStart = [0];
  const topStart: number[] = [];
  const outline: number[] = [];
  eachCell(solid, (corners, cell) => {
    const stitch = solid.cells[cell]!;
    if (!names.includes(fabric.sections[fabric.rows[fabric.row[stitch]!]!.section]!.name)) return;
    cells.push(stitch);
    topStart.push(outline.length + solid.topStart[cell]! - solid.outlineStart[cell]!);
    outline.push(...corners);
    outlineStart.push(outline.length);
  });
  return { ...solid, cells: Int32Array.from(cells), outlineStart: Int32Array.from(outlineStart), topStart: Int32Array.from(topStart), outline: Int32Array.from(outline) };
}

/** Way round a closed line of corners, mm. */
export function lengthOfLoop(solid: Solid, loop: readonly number[]): number {
  return loop.reduce((sum, corner, k) => sum + distance(pointOf(solid.corners, corner), pointOf(solid.corners, loop[(k + 1) % loop.length]!)), 0);
}

/** Middle of the heads of a row. */
export function middleOf(solid: Solid, row: WebRow): Point {
  let middle: Point = [0, 0, 0];
  for (let i = row.first; i < row.end; i++) middle = plus(middle, pointOf(solid.heads, i), 1 / (row.end - row.first));
  return middle;
}

/** Angle in degrees by which the way from round to round turns between a section and another. */
export function bendDeg(fabric: Fabric, web: Web, solid: Solid, from: string, to: string): number {
  const way = (name: string): Point => {
    const rows = web.rows.filter((row) => row.wraps && fabric.sections[fabric.rows[row.row]!.section]!.name === name);
    return minus(middleOf(solid, rows.at(-4)!), middleOf(solid, rows[4]!));
  };
  const [a, b] = [way(from), way(to)];
  return (Math.acos(dotted(a, b) / Math.hypot(...a) / Math.hypot(...b)) * 180) / Math.PI;
}
