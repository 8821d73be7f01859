export type Point = readonly [x: number, y: number];

/** Path data of a closed outline, to a tenth of a millimetre. */
export function closedPath(points: readonly Point[]): string {
  return `M${points.map(pointText).join('L')}Z`;
}

/** A point as path data has it. */
export function pointText([x, y]: Point): string {
  return `${tenths(x)} ${tenths(y)}`;
}

/** A number to one decimal. A piece has many thousands of them, and `toFixed` takes ten times as long. */
function tenths(mm: number): string {
  const whole = Math.round(Math.abs(mm) * 10);
  const digit = whole % 10;
  return `${mm < 0 && whole > 0 ? '-' : ''}${(whole - digit) / 10}.${digit}`;
}
