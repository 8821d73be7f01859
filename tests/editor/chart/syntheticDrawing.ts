import type { Yarn } from '../../../src/engine/1-pattern/pattern.ts';
import type { Drawing, Glyph, Mark } from '../../../src/engine/6-drawing/drawing.ts';

/** A drawing of a given size, made without the engine: a straight panel, or one whose rows swing and lean. */
export interface SyntheticShape {
  readonly columns: number;
  readonly rows: number;
  readonly tilted?: boolean;
  readonly cellWidthMm?: number;
  readonly cellHeightMm?: number;
}

/** Single crochet, half double crochet, chain, slip stitch: enough to have crosses, stems, ovals and dots. */
const GLYPHS: readonly Glyph[] = [
  { id: 'sc', name: 'sc', strokes: [{ kind: 'line', points: [-1.2, 1, 1.2, 3.2] }, { kind: 'line', points: [-1.2, 3.2, 1.2, 1] }] },
  { id: 'hdc', name: 'hdc', strokes: [{ kind: 'line', points: [0, 0.4, 0, 3.6] }, { kind: 'line', points: [-1.2, 0.4, 1.2, 0.4] }] },
  { id: 'ch', name: 'ch', strokes: [{ kind: 'oval', x: 0, y: 2, rx: 1.4, ry: 0.8, turnRad: 0, filled: false }] },
  { id: 'sl', name: 'sl st', strokes: [{ kind: 'oval', x: 0, y: 2, rx: 0.7, ry: 0.7, turnRad: 0, filled: true }] },
  { id: 'blo', name: 'sc in back loop only', strokes: [{ kind: 'line', points: [-1.2, 1, 1.2, 3.2] }, { kind: 'line', points: [-1.2, 3.2, 1.2, 1] }, { kind: 'curve', points: [-1.2, 3.5, 0, 4.1, 1.2, 3.5] }] },
];

/** Stitches in working order, row 0 at the bottom, RS rows (even) from right to left. */
export function syntheticDrawing({ columns, rows, tilted = false, cellWidthMm = 4, cellHeightMm = 3.8 }: SyntheticShape): Drawing {
  const count = columns * rows;
  const at = (column: number, row: number): [number, number] => {
    const x = column * cellWidthMm, y = -row * cellHeightMm;
    if (!tilted) return [x, y];
    const lean = (column / columns - 0.5) * 0.9;
    const radius = 1.2 * columns * cellWidthMm + row * cellHeightMm;
    return [radius * Math.sin(lean), -radius * Math.cos(lean) + 0.6 * Math.sin(column * 0.7) * cellHeightMm];
  };
  const stitches = {
    count,
    stitch: new Int32Array(count), row: new Int32Array(count), ghost: new Uint8Array(count),
    x: new Float32Array(count), y: new Float32Array(count), corners: new Float32Array(count * 8), filled: new Uint8Array(count).fill(1),
    glyph: new Int32Array(count), glyphX: new Float32Array(count), glyphY: new Float32Array(count), glyphTurnRad: new Float32Array(count),
    ink: new Uint8Array(count),
  };
  const bounds = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (let i = 0; i < count; i++) {
    const row = Math.floor(i / columns);
    const nth = i % columns;
    const column = row % 2 === 0 ? columns - 1 - nth : nth;
    const corners = [at(column, row), at(column + 1, row), at(column + 1, row + 1), at(column, row + 1)].flat();
    stitches.corners.set(corners, i * 8);
    for (let c = 0; c < 8; c += 2) {
      bounds.x0 = Math.min(bounds.x0, corners[c]!);
      bounds.x1 = Math.max(bounds.x1, corners[c]!);
      bounds.y0 = Math.min(bounds.y0, corners[c + 1]!);
      bounds.y1 = Math.max(bounds.y1, corners[c + 1]!);
    }
    stitches.stitch[i] = i;
    stitches.row[i] = row;
    stitches.x[i] = (corners[0]! + corners[2]! + corners[4]! + corners[6]!) / 4;
    stitches.y[i] = (corners[1]! + corners[3]! + corners[5]! + corners[7]!) / 4;
    stitches.glyph[i] = row % 16 === 12 ? 4 : (row * 7 + column * 13) % 19 === 0 ? 1 + ((row + column) % 3) : 0;
    stitches.glyphX[i] = (corners[4]! + corners[6]!) / 2;
    stitches.glyphY[i] = (corners[5]! + corners[7]!) / 2;
    stitches.glyphTurnRad[i] = Math.atan2(corners[3]! - corners[1]!, corners[2]! - corners[0]!);
    stitches.ink[i] = nth === columns - 1 && row % 8 === 7 ? 2 : nth === 0 && row % 12 === 0 ? 3 : row % 2;
  }
  const marks = tilted ? rowMarks(rows, columns, at, cellWidthMm) : [...gridMarks(rows, columns, cellWidthMm, cellHeightMm), ...rowMarks(rows, columns, at, cellWidthMm)];
  const margin = cellWidthMm * 4;
  return {
    bounds: { x0: bounds.x0 - margin, y0: bounds.y0 - cellHeightMm, x1: bounds.x1 + margin, y1: bounds.y1 + cellHeightMm * 2 },
    cellWidthMm, cellHeightMm, stitches, glyphs: GLYPHS, marks,
  };
}

/** Yarns to colour it with; the first three are the demo's. */
export const YARNS: readonly Yarn[] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'solid' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'none' },
  { letter: 'C', name: 'lamp orange', colour: '#e08a2e', mark: 'dot' },
  { letter: 'D', name: 'moss', colour: '#3d6b4f', mark: 'slash' },
  { letter: 'E', name: 'plum', colour: '#5b2f4f', mark: 'cross' },
  { letter: 'F', name: 'sand', colour: '#cdb892', mark: 'bars' },
];

/** A picture of waves and diamonds in `yarns` yarns, a yarn for each stitch number. */
export function syntheticYarns({ columns, rows }: SyntheticShape, yarns: number): Uint8Array {
  const yarnOf = new Uint8Array(columns * rows);
  for (let i = 0; i < yarnOf.length; i++) {
    const row = Math.floor(i / columns);
    const nth = i % columns;
    const column = row % 2 === 0 ? columns - 1 - nth : nth;
    const wave = Math.round(3 * Math.sin(column / 3) + row) % 12;
    const diamond = Math.abs((column % 14) - 7) + Math.abs((row % 18) - 9);
    yarnOf[i] = wave < 3 ? 1 % yarns : diamond < 4 ? 2 % yarns : diamond === 8 ? 3 % yarns : Math.floor(row / 40) % yarns;
  }
  return yarnOf;
}

function rowMarks(rows: number, columns: number, at: (column: number, row: number) => [number, number], cellWidthMm: number): Mark[] {
  const marks: Mark[] = [];
  for (let row = 0; row < rows; row++) {
    const right = row % 2 === 0;
    const [x, y] = at(right ? columns : 0, row + 0.5);
    const out = right ? 1 : -1;
    const label = x + out * cellWidthMm * 2.4;
    marks.push({ kind: 'text', role: 'rowNumber', x: label, y: y + 0.9, text: String(row + 1), sizeMm: 2.6, anchor: right ? 'start' : 'end', turnRad: 0, row });
    const tip = x + out * cellWidthMm * 0.5;
    marks.push({ kind: 'line', role: 'direction', points: [x + out * cellWidthMm * 1.4, y, tip, y, tip + out, y - 0.6], row });
    marks.push({ kind: 'area', role: row % 2 === 0 ? 'bandRS' : 'bandWS', points: [...at(0, row), ...at(columns, row), ...at(columns, row + 1), ...at(0, row + 1)], row });
  }
  return marks;
}

function gridMarks(rows: number, columns: number, width: number, height: number): Mark[] {
  const marks: Mark[] = [];
  const role = (n: number): 'grid' | 'grid5' | 'grid10' => (n % 10 === 0 ? 'grid10' : n % 5 === 0 ? 'grid5' : 'grid');
  for (let c = 0; c <= columns; c++) marks.push({ kind: 'line', role: role(columns - c), points: [c * width, 0, c * width, -rows * height], row: null });
  for (let r = 0; r <= rows; r++) marks.push({ kind: 'line', role: role(r), points: [0, -r * height, columns * width, -r * height], row: null });
  for (let c = 5; c <= columns; c += 5) {
    marks.push({ kind: 'text', role: 'stitchNumber', x: (columns - c + 0.5) * width, y: 3, text: String(c), sizeMm: 2.4, anchor: 'middle', turnRad: 0, row: null });
  }
  return marks;
}
