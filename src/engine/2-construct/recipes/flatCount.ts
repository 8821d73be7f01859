/** Stitches more in each round of a flat disc, unrounded: the circle grows by 2π × the height of a round, in stitch widths. */
export function flatMore(heightToWidth: number): number {
  return 2 * Math.PI * heightToWidth;
}

/** Stitches of round `round` (from 1) of a flat disc. */
export function flatCount(round: number, heightToWidth: number): number {
  return Math.max(3, Math.round(flatMore(heightToWidth) * round));
}

/**
 * Stitches in each of `rounds` rounds of a ball: a round at latitude θ is a circle of sin θ of the equator's, which has
 * 2 × rounds × height ÷ width of a stitch (2 × rounds where stitches are square), with θ = (i − ½)π ÷ rounds.
 */
export function ballCounts(rounds: number, heightToWidth: number): readonly number[] {
  return Array.from({ length: rounds }, (_, i) => Math.max(3, Math.round(2 * rounds * heightToWidth * Math.sin(((i + 0.5) * Math.PI) / rounds))));
}
