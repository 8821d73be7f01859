import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { stitchRow, STITCHES, stitchOfCode } from '../../craft/stitches.ts';
import type { StitchKind } from '../../craft/stitches.ts';
import type { Cell } from '../gaugeCell.ts';
import { newGround } from '../ground.ts';
import { slotWidth } from '../slotWidth.ts';
import { markRows } from './markRows.ts';
import { standing } from './standing.ts';
import { strandsOf } from './strands.ts';
import type { Strand } from './strands.ts';
import type { Web, WebRow } from './web.ts';
import { wrappingRows } from './wrappingRows.ts';

/** Stitches that stand out of the fabric, so that their row is no taller for them. */
const STANDS_OUT: ReadonlySet<StitchKind> = new Set(['bobble', 'puff', 'popcorn', 'cluster']);

/**
 * The web of the largest piece in a fabric: stitches tied together by bases, rows and seams. Smaller pieces (a hanging
 * loop, a button) are left out. Linear.
 */
export function webOf(fabric: Fabric, cell: Cell): Web {
  const { strands: all, standsFor } = strandsOf(fabric);
  const strands = largestPiece(fabric, all, standsFor);
  const wraps = wrappingRows(fabric, strands);
  const ground = newGround(fabric, 0, cell);

  const count = strands.reduce((sum, strand) => sum + strand.stitches.length, 0);
  const stitch = new Int32Array(count);
  const rowOf = new Int32Array(count);
  const headOf = new Int32Array(fabric.count).fill(-1);
  let head = 0;
  strands.forEach((strand, r) => {
    for (const each of strand.stitches) {
      stitch[head] = each;
      rowOf[head] = r;
      headOf[each] = head++;
    }
  });

  const left = new Int32Array(count);
  const right = new Int32Array(count);
  const width = new Float64Array(count);
  const height = new Float64Array(count);
  const attaches = new Uint8Array(count);
  const selvedge = new Uint8Array(count);
  const baseStart = new Int32Array(count + 1);
  const bases: number[] = [];
  const rows: WebRow[] = [];
  let first = 0;
  strands.forEach((strand, r) => {
    const end = first + strand.stitches.length;
    const round = wraps[r]! && end - first > 1;
    for (let i = first; i < end; i++) {
      left[i] = i > first ? i - 1 : round ? end - 1 : -1;
      right[i] = i + 1 < end ? i + 1 : round ? first : -1;
      width[i] = slotWidth(ground, stitch[i]!) / ground.w;
      height[i] = (heightOf(fabric, strand, stitch[i]!) * cell.heightMm) / cell.widthMm;
      baseStart[i] = bases.length;
      bases.push(...basesOf(fabric, standsFor, headOf, stitch[i]!, first));
      attaches[i] = fabric.flags[stitch[i]!]! & FLAG.attaching ? 1 : 0;
    }
    for (const i of [first, end - 1]) {
      if (!round && baseStart[i] === (i + 1 < end ? baseStart[i + 1] : bases.length) && bases.length > baseStart[first]!) selvedge[i] = 1;
    }
    rows.push({ row: strand.row, first, end, wraps: round, partial: false, centre: strand.centre, drawnShut: false, setInto: -1 });
    first = end;
  });
  baseStart[count] = bases.length;
  const worked = { count, stitch, rowOf, rows, left, right, baseStart, bases: Int32Array.from(bases), width, height, attaches, selvedge, cellWidthMm: cell.widthMm, leftOut: sectionsWithout(fabric, headOf) };
  orderBases(worked);
  const web = { ...worked, stands: standing(fabric, worked), sewn: sewnHeads(fabric, headOf) };
  return { ...web, rows: markRows(fabric, web) };
}

/** Base heads without doubles. */
function basesOf(fabric: Fabric, standsFor: Int32Array, headOf: Int32Array, stitch: number, before: number): number[] {
  const found: number[] = [];
  for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
    const stand = standsFor[fabric.bases[b]!]!;
    const head = stand < 0 ? -1 : headOf[stand]!;
    if (head >= 0 && head < before && !found.includes(head)) found.push(head);
  }
  return found;
}

/** Sorts each stitch's bases from left to right: along the neighbours where they are linked. */
function orderBases({ count, baseStart, bases, left }: Pick<Web, 'count' | 'baseStart' | 'bases' | 'left'>): void {
  for (let i = 0; i < count; i++) {
    const own = bases.subarray(baseStart[i]!, baseStart[i + 1]!);
    if (own.length < 2) continue;
    own.sort();
    // In a round a decrease over the place where the ends meet starts at the far end.
    const start = own.findIndex((base) => !own.includes(left[base]!));
    if (start > 0) own.set([...own.subarray(start), ...own.subarray(0, start)]);
  }
}

/** Height in single-crochet heights; a turning chain is as high as the stitch it stands for. */
function heightOf(fabric: Fabric, { stack }: Strand, stitch: number): number {
  const chains = stack[1] - stack[0];
  if (chains > 0 && stitch === stack[1] - 1) {
    const stands = STITCHES.find((row) => row.turningChains === chains && row.legs === 0);
    return stands ? stands.height : chains * stitchRow('ch').height;
  }
  const { height, kind } = stitchOfCode(fabric.kind[stitch]!);
  if (STANDS_OUT.has(kind)) return Math.min(height, tallestBeside(fabric, stitch));
  return height * (fabric.flags[stitch]! & FLAG.spike ? 2 : 1);
}

/** Tallest plain stitch of a stitch's row; any height where there is none. */
function tallestBeside(fabric: Fabric, stitch: number): number {
  const { first, end } = fabric.rows[fabric.row[stitch]!]!;
  let tallest = 0;
  for (let other = first; other < end; other++) {
    const { height, legs, kind } = stitchOfCode(fabric.kind[other]!);
    if (legs === 0 && kind !== 'ch') tallest = Math.max(tallest, height);
  }
  return tallest || Infinity;
}

function largestPiece(fabric: Fabric, strands: readonly Strand[], standsFor: Int32Array): Strand[] {
  const strandOf = new Int32Array(fabric.count).fill(-1);
  strands.forEach((strand, s) => strand.stitches.forEach((stitch) => (strandOf[stitch] = s)));
  const piece = strands.map((_, s) => s);
  const rootOf = (s: number): number => {
    while (piece[s] !== s) s = piece[s] = piece[piece[s]!]!;
    return s;
  };
  strands.forEach((strand, s) => {
    for (const stitch of strand.stitches) {
      for (let b = fabric.baseStart[stitch]!; b < fabric.baseStart[stitch + 1]!; b++) {
        const stand = standsFor[fabric.bases[b]!]!;
        const other = stand < 0 ? -1 : strandOf[stand]!;
        if (other >= 0) piece[rootOf(Math.max(other, s))] = rootOf(Math.min(other, s));
      }
    }
  });
  const size = new Map<number, number>();
  strands.forEach((strand, s) => size.set(rootOf(s), (size.get(rootOf(s)) ?? 0) + strand.stitches.length));
  let largest = -1;
  for (const [root, stitches] of size) if (largest < 0 || stitches > size.get(largest)!) largest = root;
  return strands.filter((_, s) => rootOf(s) === largest);
}

function sectionsWithout(fabric: Fabric, headOf: Int32Array): number[] {
  return [...fabric.sections.keys()].filter((section) => {
    const { firstRow, endRow } = fabric.sections[section]!;
    const rows = fabric.rows.slice(firstRow, endRow).filter((row) => row.end > row.first);
    return rows.length > 0 && !rows.some((row) => headOf.subarray(row.first, row.end).some((head) => head >= 0));
  });
}

/** Pairs of heads that are joined where a ring is closed flat. */
function sewnHeads(fabric: Fabric, headOf: Int32Array): Int32Array {
  const pairs = fabric.closings.flatMap(({ pairs: own }) => own.map(([a, b]) => [headOf[a]!, headOf[b]!]));
  return Int32Array.from(pairs.filter(([a, b]) => a! >= 0 && b! >= 0 && a !== b).flat());
}
