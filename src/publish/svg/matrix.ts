import { SheetProblem } from './readSvg.ts';

/** An affine map as SVG and PDF write it: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const UNMOVED: Matrix = [1, 0, 0, 1, 0, 0];

/** The map that does `inner` first, then `outer`. */
export function within(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export function moved(x: number, y: number): Matrix {
  return [1, 0, 0, 1, x, y];
}

/** Reads a transform attribute: translate, scale, rotate (with or without a centre) and matrix, one after another. */
export function readTransform(text: string): Matrix {
  let made = UNMOVED;
  const rest = text.replace(/\s*([a-zA-Z]+)\s*\(([^)]*)\)\s*,?/g, (_, kind: string, list: string) => {
    made = within(made, one(kind, list.trim().split(/[\s,]+/).map(Number), text));
    return '';
  });
  if (rest.trim() !== '') throw new SheetProblem(`transform “${text}” can't be read`);
  return made;
}

function one(kind: string, [p = 0, q, r, s = 0, t = 0, u = 0]: readonly number[], text: string): Matrix {
  if ([p, q ?? 0, r ?? 0, s, t, u].some((value) => !Number.isFinite(value))) throw new SheetProblem(`transform “${text}” has something that is no number`);
  switch (kind) {
    case 'translate': return moved(p, q ?? 0);
    case 'scale': return [p, 0, 0, q ?? p, 0, 0];
    case 'matrix': return [p, q ?? 0, r ?? 0, s, t, u];
    case 'rotate': {
      const turn = (p * Math.PI) / 180;
      const about = moved(q ?? 0, r ?? 0);
      return within(within(about, [Math.cos(turn), Math.sin(turn), -Math.sin(turn), Math.cos(turn), 0, 0]), moved(-(q ?? 0), -(r ?? 0)));
    }
    default: throw new SheetProblem(`transform “${kind}” is not known: translate, scale, rotate or matrix was expected`);
  }
}
