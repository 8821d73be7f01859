import type { FriezeGroup } from '../craft/friezeGroups.ts';
import type { MotifPoint } from './motifPoints.ts';

/** Whether a strip that repeats after `period` stitches can have a group: a glide goes half a repeat. */
export function isFriezePossible(group: FriezeGroup, period: number): boolean {
  return (group !== 'p11g' && group !== 'p2mg') || period % 2 === 0;
}

/**
 * All images of a cell in a strip `height` rows high that repeats after `period` stitches, the cell itself first; some may
 * coincide. `axis`: the first mirror line or turn centre across the strip in half stitches, 0 the middle of column 0, 1
 * between columns 0 and 1 (groups without either pass over it; p2mg has a mirror line there). The line along the strip is
 * its middle. Source: the groups' generators as in common reference works, for a strip mirrored about y = 0.
 */
export function friezeImages(group: FriezeGroup, period: number, height: number, axis: number, { x, y }: MotifPoint): readonly MotifPoint[] {
  if (!isFriezePossible(group, period)) throw new RangeError(`${group} asked of a strip that repeats after ${period} stitches: half a repeat has to be whole`);
  const at = (column: number) => ((column % period) + period) % period;
  const down = height - 1 - y;
  const same = { x, y };
  const across = { x: at(axis - x), y };
  const along = { x, y: down };
  const turned = { x: at(axis - x), y: down };
  const glided = { x: at(x + period / 2), y: down };
  switch (group) {
    case 'p1':
      return [same];
    case 'p11g':
      return [same, glided];
    case 'p1m1':
      return [same, across];
    case 'p2':
      return [same, turned];
    case 'p2mg':
      return [same, across, glided, { x: at(axis - x + period / 2), y: down }];
    case 'p11m':
      return [same, along];
    case 'p2mm':
      return [same, across, along, turned];
  }
}

/** Where the mirror lines and turn centres of a strip lie: on stitches (rows) or between them. */
export interface StripLines {
  /** At the left and right end of the drawn piece. */
  readonly left: 'on' | 'between';
  readonly right: 'on' | 'between';
  /** Along the strip, at the bottom of the piece (groups that are mirrored top and bottom). */
  readonly along: 'on' | 'between';
}

/**
 * The smallest strip of a group that a drawn piece (rows of letters, top first) gives: it is repeated, mirrored, turned and
 * glided until the strip is closed. Where a line lies on a stitch, that stitch is shared; where a shared stitch would have
 * to be two things, the upper cell wins. Refuses a piece of one stitch with lines on both sides of it, which gives no strip.
 */
export function makeStrip(piece: readonly string[], group: FriezeGroup, lines: StripLines): readonly string[] {
  const width = piece[0]?.length ?? 0;
  // Twice the way from the line at the left end to the line at the right end.
  const apart = 2 * width - (lines.left === 'on' ? 1 : 0) - (lines.right === 'on' ? 1 : 0);
  const period = group === 'p1' || group === 'p11m' ? width : group === 'p11g' ? 2 * width : group === 'p2mg' ? 2 * apart : apart;
  if (period < 1) throw new RangeError(`a piece of ${width} stitches asked to be a strip with lines on both of its ends`);
  const isMirrored = group === 'p11m' || group === 'p2mm';
  const height = isMirrored ? 2 * piece.length - (lines.along === 'on' ? 1 : 0) : piece.length;
  const axis = lines.left === 'on' ? 0 : -1;
  return Array.from({ length: height }, (_, y) =>
    Array.from({ length: period }, (_, x) => {
      const drawn = friezeImages(group, period, height, axis, { x, y }).filter((image) => image.x < width && image.y < piece.length);
      const first = drawn.reduce((best, one) => (one.x < best.x || (one.x === best.x && one.y < best.y) ? one : best), drawn[0]!);
      return piece[first.y]![first.x]!;
    }).join(''),
  );
}
