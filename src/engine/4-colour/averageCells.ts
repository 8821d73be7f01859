import { CHUNK_ROWS, LINEAR, type OnProgress, type Picture, type PictureBox } from './picture.ts';

/** The mean light of each cell of a picture laid out in cells: linear red, green, blue (not multiplied by alpha), and how much of the cell is covered, 0 to 1. */
export interface CellLight {
  readonly across: number;
  readonly up: number;
  /** `rgb[3 * (y * across + x)]` and the two after it; row 0 is the top one. */
  readonly rgb: Float64Array;
  readonly cover: Float64Array;
}

/**
 * Averages a part of a picture over cells, in linear light and by area: a pixel on the border of two cells counts for each by
 * the part that lies in it; transparent ones count by their alpha. Linear in pixels and in cells. Null if it was stopped.
 */
export function averageCells(picture: Picture, box: PictureBox, across: number, up: number, onProgress: OnProgress = () => undefined): CellLight | null {
  const { width, rgba } = picture;
  const columns = spans(box.x, box.width, across, picture.width);
  const rows = spans(box.y, box.height, up, picture.height);
  const sum = new Float64Array(across * up * 4);
  const line = new Float64Array(across * 4);
  const lastRow = rows.last[up - 1]!;
  let cell = 0;
  for (let y = rows.first[0]!; y <= lastRow; y++) {
    for (let x = 0; x < across; x++) {
      const [first, last] = [columns.first[x]!, columns.last[x]!];
      let [r, g, b, covered] = [0, 0, 0, 0];
      for (let pixel = first, at = (y * width + first) * 4; pixel <= last; pixel++, at += 4) {
        const alpha = (rgba[at + 3]! / 255) * (pixel === first ? columns.firstShare[x]! : pixel === last ? columns.lastShare[x]! : 1);
        r += LINEAR[rgba[at]!]! * alpha;
        g += LINEAR[rgba[at + 1]!]! * alpha;
        b += LINEAR[rgba[at + 2]!]! * alpha;
        covered += alpha;
      }
      line[4 * x] = r;
      line[4 * x + 1] = g;
      line[4 * x + 2] = b;
      line[4 * x + 3] = covered;
    }
    while (cell < up && rows.last[cell]! < y) cell++;
    for (let into = cell; into < up && rows.first[into]! <= y; into++) {
      const share = y === rows.first[into] ? rows.firstShare[into]! : y === rows.last[into] ? rows.lastShare[into]! : 1;
      const offset = into * across * 4;
      for (let i = 0; i < line.length; i++) sum[offset + i]! += line[i]! * share;
    }
    if ((y + 1) % CHUNK_ROWS === 0 && onProgress((y - rows.first[0]!) / (lastRow - rows.first[0]! + 1)) === false) return null;
  }
  return divided(sum, across, up, (box.width / across) * (box.height / up));
}

/** The pixels that each cell lies over, first to last, and how much of the first and of the last one lies in it; those between lie in it wholly. */
interface Spans {
  readonly first: Int32Array;
  readonly last: Int32Array;
  readonly firstShare: Float64Array;
  readonly lastShare: Float64Array;
}

function spans(from: number, length: number, cells: number, pixels: number): Spans {
  const edge = (cell: number) => from + (length * cell) / cells;
  const first = Int32Array.from({ length: cells }, (_, cell) => Math.min(Math.floor(edge(cell)), pixels - 1));
  const last = Int32Array.from({ length: cells }, (_, cell) => Math.min(Math.max(Math.ceil(edge(cell + 1)) - 1, first[cell]!), pixels - 1));
  const share = (cell: number, pixel: number) => Math.max(Math.min(edge(cell + 1), pixel + 1) - Math.max(edge(cell), pixel), 0);
  return { first, last, firstShare: Float64Array.from(first, (pixel, cell) => share(cell, pixel)), lastShare: Float64Array.from(last, (pixel, cell) => share(cell, pixel)) };
}

function divided(sum: Float64Array, across: number, up: number, area: number): CellLight {
  const rgb = new Float64Array(across * up * 3);
  const cover = new Float64Array(across * up);
  for (let i = 0; i < across * up; i++) {
    const alpha = sum[4 * i + 3]!;
    cover[i] = Math.min(alpha / area, 1);
    if (alpha > 0) for (let channel = 0; channel < 3; channel++) rgb[3 * i + channel] = sum[4 * i + channel]! / alpha;
  }
  return { across, up, rgb, cover };
}
