/**
 * Closed lines at every distance round a core: circles about a point, stadiums about a foundation chain, polygons about a point. A
 * *station* names a place on all of them at once, however far out.
 */
export interface RingCurve {
  /** Half the length of the core, mm; it lies on the x axis about (0, 0). 0: about a point. */
  readonly halfMm: number;
  /** Corners of a polygon about a point, its first side at the foot of the picture; 0: round. */
  readonly sides: number;
  /** Radius at which stations are told as lengths, mm. */
  readonly unit: number;
  /** 1: stations run anticlockwise from the foot of the picture, -1: clockwise. */
  readonly sense: 1 | -1;
}

/** Length of a round line a mm of radius: of a circle 2π. */
export function roundness({ sides }: RingCurve): number {
  return sides > 0 ? 2 * sides * Math.tan(Math.PI / sides) : 2 * Math.PI;
}

/** A turn in stations. */
export function turnOf(curve: RingCurve): number {
  return lengthAt(curve, curve.unit);
}

/** Length of the line at a radius (of a polygon: the distance of its sides), mm. */
export function lengthAt(curve: RingCurve, radius: number): number {
  return 4 * curve.halfMm + roundness(curve) * radius;
}

/** Where a station lies along the line at a radius, mm from its start, turns added up. */
export function stationToMm(curve: RingCurve, station: number, radius: number): number {
  return convert(curve.halfMm, station, curve.unit, radius);
}

/** The station at a distance along the line at a radius. */
export function mmToStation(curve: RingCurve, along: number, radius: number): number {
  return convert(curve.halfMm, along, radius, curve.unit);
}

/** From the line at one radius to that at another: straight parts of a stadium keep their length, all else is scaled. */
function convert(half: number, along: number, from: number, to: number): number {
  if (half === 0) return (along / from) * to;
  const turn = 4 * half + 2 * Math.PI * from;
  const turns = Math.floor(along / turn);
  const [a, b] = [Math.PI * from, Math.PI * to];
  const rest = along - turns * turn;
  const start = turns * (4 * half + 2 * b);
  if (rest <= half) return start + rest;
  if (rest <= half + a) return start + half + ((rest - half) / a) * b;
  if (rest <= 3 * half + a) return start + b + (rest - a);
  if (rest <= 3 * half + 2 * a) return start + 3 * half + b + ((rest - 3 * half - a) / a) * b;
  return start + 2 * b + (rest - 2 * a);
}

/** The line through one station at every radius: its point at radius R is (x + R dx, y + R dy); `outX`, `outY` point straight out, length 1. */
export interface RingRay {
  x: number;
  y: number;
  dx: number;
  dy: number;
  outX: number;
  outY: number;
}

/** The ray at a station. `into` is filled and returned, so that a loop needs one object. */
export function ringRay(curve: RingCurve, station: number, into: RingRay = { x: 0, y: 0, dx: 0, dy: 0, outX: 0, outY: 0 }): RingRay {
  const { halfMm: half, sides, unit, sense } = curve;
  if (half === 0 && sides === 0) return round(into, 0, station / unit, sense);
  const turn = turnOf(curve);
  let t = station - Math.floor(station / turn) * turn;
  if (sides > 0) {
    const side = Math.min(sides - 1, Math.floor((t / turn) * sides));
    const angle = (2 * Math.PI * side) / sides;
    const along = ((t / turn) * sides - side - 0.5) * (roundness(curve) / sides);
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    return fill(into, 0, sense * (along * cos + sin), cos - along * sin, sense * sin, cos);
  }
  if (t <= half) return fill(into, sense * t, 0, 1, 0, 1);
  t -= half;
  if (t <= Math.PI * unit) return round(into, half, t / unit, sense);
  t -= Math.PI * unit;
  if (t <= 2 * half) return fill(into, sense * (half - t), 0, -1, 0, -1);
  t -= 2 * half;
  if (t <= Math.PI * unit) return round(into, -half, Math.PI + t / unit, sense);
  return fill(into, sense * (t - Math.PI * unit - half), 0, 1, 0, 1);
}

/** The point at a station and a radius. */
export function ringPoint(curve: RingCurve, station: number, radius: number): [x: number, y: number] {
  const { x, y, dx, dy } = ringRay(curve, station);
  return [x + radius * dx, y + radius * dy];
}

function round(into: RingRay, middle: number, angle: number, sense: number): RingRay {
  const sin = sense * Math.sin(angle);
  const cos = Math.cos(angle);
  return fill(into, sense * middle, sin, cos, sin, cos);
}

function fill(into: RingRay, x: number, dx: number, dy: number, outX: number, outY: number): RingRay {
  into.x = x;
  into.y = 0;
  into.dx = dx;
  into.dy = dy;
  into.outX = outX;
  into.outY = outY;
  return into;
}
