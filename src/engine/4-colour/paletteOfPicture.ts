import { converter, formatHex } from 'culori';
import { boxOf, CHUNK_ROWS, LINEAR, type OnProgress, type Picture, type PictureBox } from './picture.ts';

/** A colour taken from a picture. */
export interface PictureColour {
  /** `#rrggbb`. */
  readonly colour: string;
  /** Part of the picture that it stands for, 0 to 1. */
  readonly share: number;
}

const toOklab = converter('oklab');

/** Distinct shades that are told apart for each channel before they are grouped. */
const SHADES = 32;
const ROUNDS = 24;

/**
 * The colours that a picture is best shown in, at most `count`, the most frequent first: shades are counted, then grouped by
 * nearness in Oklab (Lloyd's k-means, begun with the most frequent shade and going on with the one that is most and furthest
 * from all before, so that nothing is left to chance). A group's colour is the mean of its light. Fewer where the picture
 * has fewer shades; none where it is transparent (pixels under half alpha don't count). Linear in pixels. Null if it was stopped.
 */
export function paletteOfPicture(picture: Picture, count: number, part: PictureBox | null = null, onProgress: OnProgress = () => undefined): readonly PictureColour[] | null {
  if (!(Number.isInteger(count) && count >= 1)) throw new RangeError(`${count} colours asked for, 1 or more expected`);
  const shades = countShades(picture, boxOf(picture, part), onProgress);
  if (!shades) return null;
  const total = shades.reduce((sum, shade) => sum + shade.weight, 0);
  return grouped(shades, count)
    .map((group) => ({ colour: formatHex({ mode: 'lrgb', r: group.light[0]!, g: group.light[1]!, b: group.light[2]! }), share: group.weight / total }))
    .reduce<PictureColour[]>((list, one) => {
      // Two groups may round to one colour.
      const same = list.findIndex((other) => other.colour === one.colour);
      if (same < 0) list.push(one);
      else list[same] = { ...one, share: list[same]!.share + one.share };
      return list;
    }, [])
    .sort((a, b) => b.share - a.share || (a.colour < b.colour ? -1 : 1));
}

interface Shade {
  readonly weight: number;
  /** Mean linear light. */
  readonly light: readonly number[];
  /** Oklab. */
  readonly at: readonly [number, number, number];
}

function countShades({ width, rgba }: Picture, box: PictureBox, onProgress: OnProgress): Shade[] | null {
  const bins = new Float64Array(SHADES ** 3 * 4);
  const [left, right] = [Math.floor(box.x), Math.ceil(box.x + box.width)];
  const [top, bottom] = [Math.floor(box.y), Math.ceil(box.y + box.height)];
  for (let y = top; y < bottom; y++) {
    for (let at = (y * width + left) * 4, end = (y * width + right) * 4; at < end; at += 4) {
      if (rgba[at + 3]! < 128) continue;
      const [r, g, b] = [rgba[at]!, rgba[at + 1]!, rgba[at + 2]!];
      const bin = (((r >> 3) * SHADES + (g >> 3)) * SHADES + (b >> 3)) * 4;
      bins[bin]! += 1;
      bins[bin + 1]! += LINEAR[r]!;
      bins[bin + 2]! += LINEAR[g]!;
      bins[bin + 3]! += LINEAR[b]!;
    }
    if ((y + 1) % CHUNK_ROWS === 0 && onProgress((y - top) / (bottom - top)) === false) return null;
  }
  const shades: Shade[] = [];
  for (let bin = 0; bin < bins.length; bin += 4) {
    const weight = bins[bin]!;
    if (weight > 0) shades.push(shadeOf(weight, [bins[bin + 1]! / weight, bins[bin + 2]! / weight, bins[bin + 3]! / weight]));
  }
  return shades;
}

function shadeOf(weight: number, light: readonly number[]): Shade {
  const { l, a, b } = toOklab({ mode: 'lrgb', r: light[0]!, g: light[1]!, b: light[2]! });
  return { weight, light, at: [l, a, b] };
}

function grouped(shades: readonly Shade[], count: number): readonly Shade[] {
  let groups = beginnings(shades, count);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = groups.map(() => [0, 0, 0, 0]);
    for (const shade of shades) {
      const sum = sums[nearestGroup(shade, groups)]!;
      sum[0]! += shade.weight;
      for (const channel of [0, 1, 2] as const) sum[channel + 1]! += shade.weight * shade.light[channel]!;
    }
    const next = sums.filter((sum) => sum[0]! > 0).map(([weight, r, g, b]) => shadeOf(weight!, [r! / weight!, g! / weight!, b! / weight!]));
    const isSettled = next.length === groups.length && next.every((group, i) => distance(group, groups[i]!) < 1e-12);
    groups = next;
    if (isSettled) break;
  }
  return groups;
}

function beginnings(shades: readonly Shade[], count: number): readonly Shade[] {
  const away = new Float64Array(shades.length).fill(Number.POSITIVE_INFINITY);
  const groups: Shade[] = [];
  while (groups.length < Math.min(count, shades.length)) {
    let best = 0;
    let most = -1;
    for (const [i, shade] of shades.entries()) {
      const score = groups.length === 0 ? shade.weight : shade.weight * away[i]!;
      if (score > most) [best, most] = [i, score];
    }
    if (most <= 0) break;
    const next = shades[best]!;
    groups.push(next);
    for (const [i, shade] of shades.entries()) away[i] = Math.min(away[i]!, distance(shade, next));
  }
  return groups;
}

function nearestGroup(shade: Shade, groups: readonly Shade[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < groups.length; i++) {
    const away = distance(shade, groups[i]!);
    if (away < least) [best, least] = [i, away];
  }
  return best;
}

/** Squared distance in Oklab. */
function distance(one: Shade, other: Shade): number {
  return (one.at[0] - other.at[0]) ** 2 + (one.at[1] - other.at[1]) ** 2 + (one.at[2] - other.at[2]) ** 2;
}
