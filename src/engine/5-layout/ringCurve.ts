/**
 * Closed lines at every distance round a straight core: circles about a point (half length 0), stadiums about a foundation
 * chain. A *station* names a place on all of them at once, however far out: the lines through one station run straight outwards.
 */
export interface RingCurve {
  /** Half the length of the core, mm; it lies on the x axis about (0, 0). */
  readonly halfMm: number;
  /** Length that one radian of the round ends has as a station. */
  readonly unit: number;
  /** 1: stations run anticlockwise from the foot of the picture, -1: clockwise. */
  readonly sense: 1 | -1;
}

/** A turn in stations. */
export function turnOf({ halfMm, unit }: RingCurve): number {
  return 4 * halfMm + 2 * Math.PI * unit;
}

/** Length of the line at a radius, mm. */
export function lengthAt({ halfMm }: RingCurve, radius: number): number {
  return 4 * halfMm + 2 * Math.PI * radius;
}

/** Where a station lies along the line at a radius, mm from its start, turns added up. */
export function stationToMm(curve: RingCurve, station: number, radius: number): number {
  return convert(curve, station, curve.unit, radius);
}

/** The station at a distance along the line at a radius. */
export function mmToStation(curve: RingCurve, along: number, radius: number): number {
  return convert(curve, along, radius, curve.unit);
}

/** From the line whose ends have one radius to that with another: straight parts keep their length, ends are scaled. */
function convert(curve: RingCurve, along: number, from: number, to: number): number {
  const { halfMm } = curve;
  if (halfMm === 0) return (along / from) * to;
  const turn = 4 * halfMm + 2 * Math.PI * from;
  const turns = Math.floor(along / turn);
  let rest = along - turns * turn;
  let result = turns * (4 * halfMm + 2 * Math.PI * to);
  for (const [straight, length] of [[true, halfMm], [false, Math.PI], [true, 2 * halfMm], [false, Math.PI], [true, halfMm]] as const) {
    const here = straight ? length : length * from;
    const there = straight ? length : length * to;
    if (rest <= here) return result + (here === 0 ? 0 : (rest / here) * there);
    rest -= here;
    result += there;
  }
  return result;
}

/** A point of the plane and the way out from the core there. */
export interface RingPoint {
  readonly x: number;
  readonly y: number;
  readonly outX: number;
  readonly outY: number;
}

/** The point at a station and a radius; the way out has length 1. */
export function ringPoint(curve: RingCurve, station: number, radius: number): RingPoint {
  const { halfMm: half, unit, sense } = curve;
  const turn = turnOf(curve);
  let t = station - Math.floor(station / turn) * turn;
  const straight = (x: number, out: 1 | -1): RingPoint => ({ x: sense * x, y: out * radius, outX: 0, outY: out });
  const round = (middle: number, angle: number): RingPoint => {
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    return { x: sense * (middle + radius * sin), y: radius * cos, outX: sense * sin, outY: cos };
  };
  if (half === 0) return round(0, t / unit);
  if (t <= half) return straight(t, 1);
  t -= half;
  if (t <= Math.PI * unit) return round(half, t / unit);
  t -= Math.PI * unit;
  if (t <= 2 * half) return straight(half - t, -1);
  t -= 2 * half;
  if (t <= Math.PI * unit) return round(-half, Math.PI + t / unit);
  return straight(t - Math.PI * unit - half, 1);
}
