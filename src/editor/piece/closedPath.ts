export type Point = readonly [x: number, y: number];

/** Path data of a closed outline, to a tenth of a millimetre. */
export function closedPath(points: readonly Point[]): string {
  return `M${points.map((p) => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`).join('L')}Z`;
}
