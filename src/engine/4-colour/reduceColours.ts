import { converter } from 'culori';
import { colourDifference, labOf, type Lab } from '../craft/colourDifference.ts';
import type { CellLight } from './averageCells.ts';
import type { OnProgress } from './picture.ts';

/** How colours between two yarns are rendered. */
export type Dither =
  /** Each cell in the yarn nearest to it. */
  | 'none'
  /** Two yarns in a fixed pattern of 4 × 4 cells. Thresholds: B. E. Bayer, 1973. */
  | 'ordered'
  /** What a cell's yarn is off by goes to the cells after it. R. W. Floyd, L. Steinberg, 1976, rows to and fro. */
  | 'floydSteinberg';

/** A yarn to reduce to. */
export interface ReducingYarn {
  readonly letter: string;
  /** `#rrggbb`. */
  readonly colour: string;
}

const toLab = converter('lab65');
const toLight = converter('lrgb');

/** L*a*b* of linear light, clamped to what can be shown. */
function labOfLight(r: number, g: number, b: number): Lab {
  const clamp = (value: number) => Math.min(Math.max(value, 0), 1);
  const lab = toLab({ mode: 'lrgb', r: clamp(r), g: clamp(g), b: clamp(b) });
  return { l: lab.l, a: lab.a, b: lab.b };
}

interface Palette {
  readonly labs: readonly Lab[];
  /** Linear red, green, blue of each. */
  readonly light: readonly Light[];
  /** Darkest and lightest of each channel: how far an error is followed, so that what no yarn can show isn't smeared over the rest. */
  readonly least: Light;
  readonly most: Light;
}

type Light = readonly [r: number, g: number, b: number];

/**
 * For each cell the index of the yarn that shows it, by perceptual distance (CIEDE2000); of equally near ones the first. Null if
 * it was stopped. Cost: cells × yarns. Refuses an empty list of yarns.
 */
export function reduceColours(cells: CellLight, yarns: readonly ReducingYarn[], dither: Dither, onProgress: OnProgress = () => undefined): Uint8Array | null {
  if (yarns.length === 0) throw new RangeError('0 yarns given to reduce a picture to, at least 1 expected');
  const palette = paletteOf(yarns);
  const { across, up, rgb } = cells;
  const out = new Uint8Array(across * up);
  const error = dither === 'floydSteinberg' ? new Float64Array(across * up * 3) : null;
  for (let y = 0; y < up; y++) {
    const isBack = error !== null && y % 2 === 1;
    for (let step = 0; step < across; step++) {
      const x = isBack ? across - 1 - step : step;
      const at = y * across + x;
      const light = [rgb[3 * at]! + (error?.[3 * at] ?? 0), rgb[3 * at + 1]! + (error?.[3 * at + 1] ?? 0), rgb[3 * at + 2]! + (error?.[3 * at + 2] ?? 0)] as const;
      out[at] = dither === 'ordered' ? mixed(light, palette, BAYER[(y % 4) * 4 + (x % 4)]!) : nearest(labOfLight(...light), palette.labs);
      if (error) spreadError(error, cells, x, y, isBack ? -1 : 1, light, palette, out[at]!);
    }
    if (onProgress((y + 1) / up) === false) return null;
  }
  return out;
}

function paletteOf(yarns: readonly ReducingYarn[]): Palette {
  const light = yarns.map((yarn): Light => {
    const { r, g, b } = toLight(yarn.colour)!;
    return [r, g, b];
  });
  const extreme = (pick: (...values: number[]) => number): Light => [pick(...light.map((one) => one[0])), pick(...light.map((one) => one[1])), pick(...light.map((one) => one[2]))];
  return { labs: yarns.map((yarn) => labOf(yarn.colour)), light, least: extreme(Math.min), most: extreme(Math.max) };
}

/** The yarn nearest to a colour; of equally near ones the first. */
export function nearest(lab: Lab, labs: readonly Lab[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, one] of labs.entries()) {
    const difference = colourDifference(lab, one);
    if (difference < least) [best, least] = [i, difference];
  }
  return best;
}

// Thresholds (k + ½) / 16, so that a share of k / 16 of the cells is over the threshold.
const BAYER = [0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5].map((k) => (k + 0.5) / 16);

/**
 * The nearest yarn or the one that mixes best with it, by how much of it the mix needs. Yarns side by side mix as light
 * does. Of mixes equally near the quieter is taken: a tenth of the difference of its two yarns counts against it.
 */
function mixed(light: Light, { labs, light: yarns }: Palette, threshold: number): number {
  const wanted = labOfLight(...light);
  const first = nearest(wanted, labs);
  const from = yarns[first]!;
  const alone = colourDifference(wanted, labs[first]!);
  let second = first;
  let part = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, to] of yarns.entries()) {
    const way = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
    const length = way[0] ** 2 + way[1] ** 2 + way[2] ** 2;
    if (length === 0) continue;
    const share = Math.min(Math.max(((light[0] - from[0]) * way[0] + (light[1] - from[1]) * way[1] + (light[2] - from[2]) * way[2]) / length, 0), 1);
    if (share === 0) continue;
    const difference = colourDifference(wanted, labOfLight(from[0] + share * way[0], from[1] + share * way[1], from[2] + share * way[2]));
    const noise = colourDifference(labs[first]!, labs[i]!) / 10;
    if (difference < alone - 1e-9 && difference + noise < least) [second, part, least] = [i, share, difference + noise];
  }
  return part > threshold ? second : first;
}

function spreadError(error: Float64Array, { across, up, cover }: CellLight, x: number, y: number, step: 1 | -1, wanted: Light, { light, least, most }: Palette, yarn: number): void {
  const off = ([0, 1, 2] as const).map((channel) => {
    const span = most[channel] - least[channel];
    return Math.min(Math.max(wanted[channel], least[channel] - span), most[channel] + span) - light[yarn]![channel];
  });
  const put = (toX: number, toY: number, share: number) => {
    const to = toY * across + toX;
    if (toX < 0 || toX >= across || toY >= up || cover[to] === 0) return;
    for (const channel of [0, 1, 2] as const) error[3 * to + channel]! += off[channel]! * share;
  };
  put(x + step, y, 7 / 16);
  put(x - step, y + 1, 3 / 16);
  put(x, y + 1, 5 / 16);
  put(x + step, y + 1, 1 / 16);
}
