import { LIMITS } from '../1-pattern/limits.ts';
import { averageCells, type CellLight } from './averageCells.ts';
import { cleanCells } from './cleanCells.ts';
import { boxOf, type OnProgress, type Picture, type PictureBox } from './picture.ts';
import { reduceColours, type Dither, type ReducingYarn } from './reduceColours.ts';

/** How a picture becomes a motif. */
export interface PictureSettings {
  /** The part of the picture; null for all of it. */
  readonly part: PictureBox | null;
  /** Cells across. */
  readonly across: number;
  /** Cells up; null for as many as keep the picture's shape on cells of the true shape. */
  readonly up: number | null;
  /** Size of a cell: `gaugeCell` of the pattern's gauge. */
  readonly cell: { readonly widthMm: number; readonly heightMm: number };
  /** The yarns to reduce to. */
  readonly yarns: readonly ReducingYarn[];
  /** 0 smooth to 1 crisp; 0.5 leaves the picture as it is. */
  readonly detail: number;
  readonly dither: Dither;
  /** Whether lone cells take the yarn of those around them. */
  readonly isCleaned: boolean;
}

/** Cells up that keep the shape of a part of a picture on cells of the true shape, at least 1 and at most the greatest side of a motif. */
export function cellsUp(part: Pick<PictureBox, 'width' | 'height'>, across: number, cell: PictureSettings['cell']): number {
  const up = Math.round((part.height / part.width) * across * (cell.widthMm / cell.heightMm));
  return Math.min(Math.max(up, 1), LIMITS.motifSide);
}

/**
 * The cells of a motif that shows a picture: averaged over cells of the true shape in linear light, made smoother or crisper,
 * reduced to the yarns by perceptual distance, cleaned. Cells of which less than half is covered stay empty (`.`). The
 * same settings always give the same cells. Meant for a worker: `onProgress` is called every few rows of pixels, and what it
 * says is heard. Null if it was stopped. Linear in pixels, then in cells × yarns.
 */
export function pictureMotif(picture: Picture, settings: PictureSettings, onProgress: OnProgress = () => undefined): readonly string[] | null {
  const { across, cell, detail, yarns } = settings;
  const box = boxOf(picture, settings.part);
  const up = settings.up ?? cellsUp(box, across, cell);
  for (const [what, side] of [['across', across], ['up', up]] as const) {
    if (!(Number.isInteger(side) && side >= 1 && side <= LIMITS.motifSide)) throw new RangeError(`${side} cells ${what} asked for, 1 to ${LIMITS.motifSide} expected`);
  }
  const light = averageCells(picture, box, across, up, (done) => onProgress(done * AVERAGING));
  if (!light) return null;
  const indices = reduceColours(withDetail(light, detail), yarns, settings.dither, (done) => onProgress(AVERAGING + done * (1 - AVERAGING)));
  if (!indices) return null;
  const cells = Array.from({ length: up }, (_, y) =>
    Array.from({ length: across }, (_, x) => (light.cover[y * across + x]! < 0.5 ? '.' : yarns[indices[y * across + x]!]!.letter)).join(''),
  );
  return settings.isCleaned ? cleanCells(cells, yarns.map((yarn) => yarn.letter).join('')) : cells;
}

/** About how much of the work the averaging of a large picture is. */
const AVERAGING = 0.8;

/**
 * Cells blended with their neighbours (detail under 0.5) or set off against them (over 0.5, an unsharp mask of up to twice the
 * difference). The blend is the 3 × 3 binomial one; only covered cells count.
 */
function withDetail(light: CellLight, detail: number): CellLight {
  const strength = detail < 0.5 ? 2 * detail - 1 : 4 * detail - 2;
  if (strength === 0) return light;
  const { across, up, cover } = light;
  const rgb = new Float64Array(light.rgb.length);
  for (let y = 0; y < up; y++) {
    for (let x = 0; x < across; x++) {
      const at = y * across + x;
      let weight = 0;
      const blend = [0, 0, 0];
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const [toX, toY] = [x + dx, y + dy];
          if (toX < 0 || toX >= across || toY < 0 || toY >= up) continue;
          const share = (dx === 0 ? 2 : 1) * (dy === 0 ? 2 : 1) * cover[toY * across + toX]!;
          weight += share;
          for (const channel of [0, 1, 2] as const) blend[channel]! += share * light.rgb[3 * (toY * across + toX) + channel]!;
        }
      }
      for (const channel of [0, 1, 2] as const) {
        const own = light.rgb[3 * at + channel]!;
        rgb[3 * at + channel] = weight === 0 ? own : Math.min(Math.max(own + strength * (own - blend[channel]! / weight), 0), 1);
      }
    }
  }
  return { ...light, rgb };
}
