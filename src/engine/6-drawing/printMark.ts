import type { PrintMark } from '../1-pattern/pattern.ts';
import { num, pathData } from './svgText.ts';

/** Path data of a yarn's print mark in one cell, split into what is filled and what is stroked. */
export interface MarkPath {
  readonly filled: string;
  readonly stroked: string;
}

type Corners = readonly number[];

/** Where a mark stands in its cell: over the whole of it, or small in the corner that a symbol leaves free. */
export type MarkPlace = 'whole' | 'corner';

/**
 * The mark that tells a yarn apart in black and white. Marks differ by shape, not only by tone. `corners`: bottom left,
 * bottom right, top right, top left (x, y each); the mark follows a cell that is turned or slanted.
 */
export function printMark(mark: PrintMark, corners: Corners, place: MarkPlace): MarkPath {
  const size = place === 'whole' ? 1 : 0.6;
  const [u0, v0] = place === 'whole' ? [0.5, 0.5] : [0.79, 0.21];
  const at = (u: number, v: number): readonly [number, number] => inCell(corners, u0 + (u - 0.5) * size, v0 + (v - 0.5) * size);
  const line = (...uv: readonly number[]): string => {
    const points: number[] = [];
    for (let i = 0; i + 1 < uv.length; i += 2) points.push(...at(uv[i]!, uv[i + 1]!));
    return pathData(points, false);
  };
  switch (mark) {
    case 'none': return { filled: '', stroked: '' };
    case 'dot': return { filled: circle(corners, at(0.5, 0.5), 0.17 * size), stroked: '' };
    case 'ring': return { filled: '', stroked: circle(corners, at(0.5, 0.5), 0.26 * size) };
    case 'slash': return { filled: '', stroked: line(0.2, 0.2, 0.8, 0.8) };
    case 'cross': return { filled: '', stroked: line(0.5, 0.22, 0.5, 0.78) + line(0.22, 0.5, 0.78, 0.5) };
    case 'bars': return { filled: '', stroked: line(0.18, 0.26, 0.82, 0.26) + line(0.18, 0.5, 0.82, 0.5) + line(0.18, 0.74, 0.82, 0.74) };
    case 'wedge': return { filled: `${line(0.16, 0.16, 0.84, 0.16, 0.16, 0.84)}Z`, stroked: '' };
    case 'solid': return { filled: `${line(0, 0, 1, 0, 1, 1, 0, 1)}Z`, stroked: '' };
  }
}

/** Point of a cell: u from left to right, v from bottom to top. */
function inCell(c: Corners, u: number, v: number): readonly [number, number] {
  const at = (k: 0 | 1): number => (c[k]! * (1 - u) + c[2 + k]! * u) * (1 - v) + (c[6 + k]! * (1 - u) + c[4 + k]! * u) * v;
  return [at(0), at(1)];
}

function circle(c: Corners, [x, y]: readonly [number, number], part: number): string {
  const side = Math.min(Math.hypot(c[2]! - c[0]!, c[3]! - c[1]!), Math.hypot(c[6]! - c[0]!, c[7]! - c[1]!));
  const r = side * part;
  return `M${num(x - r)} ${num(y)}A${num(r)} ${num(r)} 0 1 0 ${num(x + r)} ${num(y)}A${num(r)} ${num(r)} 0 1 0 ${num(x - r)} ${num(y)}Z`;
}
