import { length } from './pen.ts';
import { SheetProblem } from './readSvg.ts';

const PLACED = ['transform', 'clip-path'];

/** The shapes that are known, with the attributes that are their own. */
export const SHAPES: Readonly<Record<string, ReadonlySet<string>>> = {
  path: new Set([...PLACED, 'd']),
  rect: new Set([...PLACED, 'x', 'y', 'width', 'height', 'rx', 'ry']),
  circle: new Set([...PLACED, 'cx', 'cy', 'r']),
  ellipse: new Set([...PLACED, 'cx', 'cy', 'rx', 'ry']),
  line: new Set([...PLACED, 'x1', 'y1', 'x2', 'y2']),
  polyline: new Set([...PLACED, 'points']),
  polygon: new Set([...PLACED, 'points']),
};

/** A shape as path data in its own units; empty where it draws nothing. */
export function shapePath(name: string, attributes: Readonly<Record<string, string>>): string {
  const at = (key: string): number => length(attributes[key] ?? '0');
  switch (name) {
    case 'path': return attributes.d ?? '';
    case 'rect': return rect(at('x'), at('y'), at('width'), at('height'), attributes);
    case 'circle': return ellipse(at('cx'), at('cy'), at('r'), at('r'));
    case 'ellipse': return ellipse(at('cx'), at('cy'), at('rx'), at('ry'));
    case 'line': return `M${at('x1')} ${at('y1')}L${at('x2')} ${at('y2')}`;
    case 'polyline': case 'polygon': return points(attributes.points ?? '', name === 'polygon');
    default: throw new SheetProblem(`the shape “${name}” is not known`);
  }
}

function rect(x: number, y: number, w: number, h: number, { rx, ry }: Readonly<Record<string, string>>): string {
  if (!(w > 0) || !(h > 0)) return '';
  const [a, b] = [Math.min(length(rx ?? ry ?? '0'), w / 2), Math.min(length(ry ?? rx ?? '0'), h / 2)];
  if (a === 0 || b === 0) return `M${x} ${y}H${x + w}V${y + h}H${x}Z`;
  const turn = (toX: number, toY: number): string => `A${a} ${b} 0 0 1 ${toX} ${toY}`;
  return `M${x + a} ${y}H${x + w - a}${turn(x + w, y + b)}V${y + h - b}${turn(x + w - a, y + h)}H${x + a}${turn(x, y + h - b)}V${y + b}${turn(x + a, y)}Z`;
}

function ellipse(cx: number, cy: number, rx: number, ry: number): string {
  if (!(rx > 0) || !(ry > 0)) return '';
  return `M${cx + rx} ${cy}A${rx} ${ry} 0 0 1 ${cx - rx} ${cy}A${rx} ${ry} 0 0 1 ${cx + rx} ${cy}Z`;
}

function points(list: string, closed: boolean): string {
  const numbers = list.trim() === '' ? [] : list.trim().split(/[\s,]+/).map(length);
  if (numbers.length % 2 !== 0) throw new SheetProblem(`points="${list}": an even count of numbers was expected`);
  const d = numbers.map((value, index) => `${index === 0 ? 'M' : index % 2 === 0 ? 'L' : ' '}${value}`).join('');
  return d === '' ? '' : `${d}${closed ? 'Z' : ''}`;
}
