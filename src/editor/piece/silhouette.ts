import type { Fabric, WorkedRow } from '../../engine/3-fabric/fabric.ts';
import { FLAG } from '../../engine/3-fabric/fabric.ts';
import { stitchOfCode } from '../../engine/craft/stitches.ts';
import { sectionShape } from '../../engine/5-layout/layOutSection.ts';
import { closedPath, pointText, type Point } from './closedPath.ts';
import { discBand } from './discBand.ts';
import { visibleRuns } from './visibleRuns.ts';
import type { Run } from './visibleRuns.ts';

/** A section of the piece as it lies on the table. Millimetres, y down. */
export interface Band {
  readonly section: number;
  /** Closed outline, for the eye and the pointer. */
  readonly outline: string;
  /** Path data by yarn index. */
  readonly yarns: readonly { readonly yarn: number; readonly d: string }[];
  readonly middle: Point;
}

export interface Silhouette {
  readonly bands: readonly Band[];
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Where the next row begins: the middle of the edge, the way the work grows, the way to the back of the piece. */
interface Edge {
  readonly at: Point;
  readonly grow: Point;
  readonly back: Point;
  readonly widthMm: number;
}

/** A row as a strip of its size. */
export interface Strip {
  readonly row: WorkedRow;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly runs: readonly Run[];
}

const along = (p: Point, v: Point, by: number): Point => [p[0] + v[0] * by, p[1] + v[1] * by];
const between = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];

/**
 * The piece as it lies flat: every row a strip of its width and height, folded where it is seamed or in the round. A
 * section of turned short rows on a folded edge bends the work by a right angle, as a heel does; its bend is a quarter
 * circle and not to scale, everything else is.
 */
export function silhouette(fabric: Fabric, yarn: Uint8Array, cellWidthMm: number, cellHeightMm: number): Silhouette {
  const bands: Band[] = [];
  let edge: Edge = { at: [0, 0], grow: [0, 1], back: [1, 0], widthMm: 0 };
  let apartX = 0;
  const rowsOf = fabric.sections.map((section) => fabric.rows.slice(section.firstRow, section.endRow));
  const turnedIn = rowsOf.map((rows, index) => sectionShape(fabric, index) === 'turned' && rows.some((row) => row.ring));
  const folded = foldedSections(fabric, rowsOf, turnedIn);
  rowsOf.forEach((rows, index) => {
    const turned = turnedIn[index]!;
    const round = index === 0 && isDisc(fabric, rowsOf);
    const strips = rows.flatMap((row) => strip(fabric, yarn, row, folded[index]! && !turned && !round, cellWidthMm, cellHeightMm));
    if (strips.length === 0) return;
    if (turned && folded[index] && edge.widthMm > 0) {
      const [band, next] = bend(index, strips, edge);
      bands.push(band);
      edge = next;
      return;
    }
    if (round) {
      bands.push(discBand(index, strips));
      apartX = strips.reduce((sum, each) => sum + each.heightMm, 0);
      return;
    }
    const joins = index === 0 || standsOnEarlier(fabric, rows);
    const first = strips[0]!;
    const from: Edge = joins ? edge : { at: [apartX + first.widthMm / 2 + cellWidthMm * 4, 0], grow: [0, 1], back: [1, 0], widthMm: 0 };
    const [band, next] = stack(index, strips, from);
    bands.push(band);
    apartX = Math.max(apartX, ...strips.map((each) => from.at[0] + (from.back[0] * each.widthMm) / 2));
    if (joins) edge = next;
  });
  return { bands, ...boxOf(bands) };
}

/** Whether the piece is a disc that nothing is worked on to, so that it lies round and not folded. */
function isDisc(fabric: Fabric, rowsOf: readonly (readonly WorkedRow[])[]): boolean {
  return sectionShape(fabric, 0) === 'disc' && !rowsOf.slice(1).some((rows) => rows.length > 0 && standsOnEarlier(fabric, rows));
}

/** Which sections lie folded: in rounds, seamed, or carried on by a section that is. */
function foldedSections(fabric: Fabric, rowsOf: readonly (readonly WorkedRow[])[], turnedIn: readonly boolean[]): boolean[] {
  const folded = fabric.sections.map(
    ({ firstRow, endRow }, index) => rowsOf[index]!.some((row) => row.round || row.ring) || fabric.seams.some((seam) => seam.row >= firstRow && seam.row < endRow),
  );
  for (let index = folded.length - 2; index >= 0; index--) {
    if (folded[index + 1] && !turnedIn[index + 1] && standsOnEarlier(fabric, rowsOf[index + 1]!)) folded[index] = true;
  }
  return folded;
}

function strip(fabric: Fabric, yarn: Uint8Array, row: WorkedRow, folded: boolean, cellWidthMm: number, cellHeightMm: number): Strip[] {
  if (row.made === 0 || row.word === 'foundation') return [];
  let height = 0;
  for (let stitch = row.first; stitch < row.end; stitch++) {
    if (fabric.flags[stitch]! & FLAG.counts) height += stitchOfCode(fabric.kind[stitch]!).height;
  }
  const widthMm = (row.made * cellWidthMm) / (folded ? 2 : 1);
  return [{ row, widthMm, heightMm: (height / row.made) * cellHeightMm, runs: visibleRuns(fabric, yarn, row, folded) }];
}

/** Whether any stitch of the section's rows is worked into a stitch of an earlier section. */
function standsOnEarlier(fabric: Fabric, rows: readonly WorkedRow[]): boolean {
  const first = rows[0]?.first ?? 0;
  return rows.some((row) => {
    for (let b = fabric.baseStart[row.first]!; b < fabric.baseStart[row.end]!; b++) if (fabric.bases[b]! < first) return true;
    return false;
  });
}

function stack(section: number, strips: readonly Strip[], from: Edge): [Band, Edge] {
  const left: Point[] = [];
  const right: Point[] = [];
  const paths = new Map<number, string>();
  let at = from.at;
  let below = strips[0]!.widthMm;
  for (const { widthMm, heightMm, runs } of strips) {
    const next = along(at, from.grow, heightMm);
    const corners = [along(at, from.back, -below / 2), along(at, from.back, below / 2), along(next, from.back, widthMm / 2), along(next, from.back, -widthMm / 2)] as const;
    const edge = (share: number) => ({ low: pointText(between(corners[0], corners[1], share)), high: pointText(between(corners[3], corners[2], share)) });
    // Where a run ends the next one begins.
    let begin = edge(0);
    for (const run of runs) {
      const end = edge(run.to);
      paths.set(run.yarn, `${paths.get(run.yarn) ?? ''}M${begin.low}L${end.low}L${end.high}L${begin.high}Z`);
      begin = end;
    }
    left.push(corners[0], corners[3]);
    right.push(corners[1], corners[2]);
    at = next;
    below = widthMm;
  }
  const band = { section, outline: closedPath([...left, ...right.reverse()]), yarns: listed(paths), middle: between(from.at, at, 0.5) };
  return [band, { ...from, at, widthMm: below }];
}

function bend(section: number, strips: readonly Strip[], from: Edge): [Band, Edge] {
  const ankle = along(from.at, from.back, -from.widthMm / 2);
  const spoke = (turn: number, radius: number): Point => along(along(ankle, from.back, Math.cos(turn) * radius), from.grow, Math.sin(turn) * radius);
  const paths = new Map<number, string>();
  const step = Math.PI / 2 / strips.length;
  strips.forEach(({ runs }, i) => {
    for (const run of runs) {
      const inner = from.widthMm * run.from;
      const outer = from.widthMm * run.to;
      const quad = [spoke(i * step, inner), spoke(i * step, outer), spoke((i + 1) * step, outer), spoke((i + 1) * step, inner)];
      paths.set(run.yarn, (paths.get(run.yarn) ?? '') + closedPath(quad));
    }
  });
  const arc = Array.from({ length: strips.length + 1 }, (_, i) => spoke(i * step, from.widthMm));
  const band = { section, outline: closedPath([ankle, ...arc]), yarns: listed(paths), middle: spoke(Math.PI / 4, from.widthMm * 0.6) };
  const grow: Point = [-from.back[0], -from.back[1]];
  return [band, { at: along(ankle, from.grow, from.widthMm / 2), grow, back: from.grow, widthMm: from.widthMm }];
}

function listed(paths: ReadonlyMap<number, string>): Band['yarns'] {
  return [...paths].map(([yarn, d]) => ({ yarn, d }));
}

function boxOf(bands: readonly Band[]): Pick<Silhouette, 'x0' | 'y0' | 'x1' | 'y1'> {
  const numbers = bands.flatMap((band) => (band.outline.match(/-?[\d.]+/g) ?? []).map(Number));
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  if (xs.length === 0) return { x0: 0, y0: 0, x1: 1, y1: 1 };
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}
