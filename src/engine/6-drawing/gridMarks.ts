import type { Fabric } from '../3-fabric/fabric.ts';
import { stitchCode } from '../craft/stitches.ts';
import { sectionRows } from '../5-layout/ground.ts';
import type { Layout } from '../5-layout/layout.ts';
import { rowSlots } from '../5-layout/rowSlots.ts';
import { levelRow } from './levelRow.ts';
import type { Mark, MarkRole } from './drawing.ts';

/** Rows one on another whose cells are the same exact columns. */
export interface Block {
  readonly x0: number;
  readonly x1: number;
  /** Bottom (larger y) and tops of the rows from the bottom up. */
  readonly y0: number;
  readonly tops: number[];
  readonly rows: number[];
  readonly columns: number;
  /** Of turned rows: no columns that run through. */
  readonly plain: boolean;
}

/** Rows that are no exact columns, as slots from left to right. */
export interface GridParts {
  readonly blocks: readonly Block[];
  readonly shaped: readonly Int32Array[];
}

const CLOSE = 1e-3;
const CHAIN = stitchCode('ch');

/** Parts a section into blocks of exact columns and shaped rows. */
export function gridParts(fabric: Fabric, layout: Layout): GridParts {
  const blocks: Block[] = [];
  const shaped: Int32Array[] = [];
  const turned = new Set(layout.parts.flatMap(({ kind, rows }) => (kind === 'turned' ? rows : [])));
  sectionRows(fabric, layout.section).forEach((row, r, rows) => {
    if (row.word === 'foundation') return;
    const { slots } = rowSlots(fabric, row, rows[r + 1] ?? null);
    if (slots.length === 0) return;
    const straight = straightRow(fabric, layout, slots);
    if (!straight) {
      shaped.push(slots);
      return;
    }
    const last = blocks.at(-1);
    if (last && Math.abs(last.x0 - straight.x0) < CLOSE && Math.abs(last.x1 - straight.x1) < CLOSE && Math.abs(last.tops.at(-1)! - straight.bottom) < CLOSE) {
      last.tops.push(straight.top);
      last.rows.push(row.index);
    } else {
      blocks.push({ x0: straight.x0, x1: straight.x1, y0: straight.bottom, tops: [straight.top], rows: [row.index], columns: slots.length, plain: turned.has(row.index) });
    }
  });
  return { blocks, shaped };
}

function straightRow(fabric: Fabric, layout: Layout, slots: Int32Array): { x0: number; x1: number; top: number; bottom: number } | null {
  const c = layout.corners;
  const level = levelRow(layout, slots, false);
  if (level) return Math.abs(level.x1 - level.x0 - slots.length * layout.cellWidthMm) > CLOSE || hasChain(fabric, slots) ? null : level;
  const first = (slots[0]! - layout.first) * 8;
  const last = (slots.at(-1)! - layout.first) * 8;
  const [x0, x1] = [Math.min(c[first]!, c[last]!), Math.max(c[first + 2]!, c[last + 2]!)];
  const [top, bottom] = [c[first + 7]!, c[first + 1]!];
  if (Math.abs(x1 - x0 - slots.length * layout.cellWidthMm) > CLOSE) return null;
  for (const slot of slots) {
    const i = (slot - layout.first) * 8;
    if (fabric.kind[slot] === CHAIN) return null;
    const level = Math.abs(c[i + 1]! - bottom) < CLOSE && Math.abs(c[i + 3]! - bottom) < CLOSE && Math.abs(c[i + 5]! - top) < CLOSE && Math.abs(c[i + 7]! - top) < CLOSE;
    const upright = Math.abs(c[i]! - c[i + 6]!) < CLOSE && Math.abs(c[i + 2]! - c[i + 4]!) < CLOSE;
    if (!level || !upright) return null;
  }
  return { x0, x1, top, bottom };
}

function hasChain({ kind }: Fabric, slots: Int32Array): boolean {
  for (let k = 0; k < slots.length; k++) if (kind[slots[k]!] === CHAIN) return true;
  return false;
}

/**
 * Grid lines. Blocks get full lines, every 5th and 10th apart, counted from the side where right-side rows start and from row
 * 1; turned short rows have no columns that run through, so theirs are all light. Shaped rows get the outlines of their
 * cells when `outlines` is set.
 */
export function gridMarks(fabric: Fabric, layout: Layout, parts: GridParts, outlines: boolean): Mark[] {
  const marks: Mark[] = parts.blocks.flatMap((block) => blockLines(fabric, layout, block));
  if (outlines) for (const slots of parts.shaped) marks.push(...cellLines(layout, slots));
  const order: readonly MarkRole[] = ['grid', 'grid5', 'grid10'];
  return marks.sort((a, b) => order.indexOf(a.role) - order.indexOf(b.role));
}

/** The side that stitches are counted from: where right-side rows start. */
export function countsFromRight(fabric: Fabric, layout: Layout): boolean {
  const laid = layout.rows.find(({ row }) => fabric.rows[row]!.side === 'RS' && fabric.rows[row]!.word !== 'foundation') ?? layout.rows.at(-1);
  return !laid || laid.startsAt === 'right';
}

function weight(n: number): MarkRole {
  return n % 10 === 0 ? 'grid10' : n % 5 === 0 ? 'grid5' : 'grid';
}

function blockLines(fabric: Fabric, layout: Layout, { x0, x1, y0, tops, rows, columns, plain }: Block): Mark[] {
  const marks: Mark[] = [];
  const top = tops.at(-1)!;
  const fromRight = countsFromRight(fabric, layout);
  for (let k = 0; k <= columns; k++) {
    const x = x0 + ((x1 - x0) * k) / columns;
    const n = fromRight ? columns - k : k;
    marks.push({ kind: 'line', role: plain ? 'grid' : n === 0 || n === columns ? 'frame' : weight(n), points: [x, y0, x, top], row: null });
  }
  [y0, ...tops].forEach((y, k, all) => {
    const n = k === 0 ? (fabric.rows[rows[0]!]!.number ?? 1) - 1 : fabric.rows[rows[k - 1]!]!.number;
    marks.push({ kind: 'line', role: plain ? 'grid' : k === 0 || k === all.length - 1 ? 'frame' : n === null ? 'grid' : weight(n), points: [x0, y, x1, y], row: null });
  });
  return marks;
}

function cellLines(layout: Layout, slots: Int32Array): Mark[] {
  const c = layout.corners;
  return Array.from(slots, (slot) => {
    const i = (slot - layout.first) * 8;
    return { kind: 'line', role: 'grid', points: [c[i]!, c[i + 1]!, c[i + 2]!, c[i + 3]!, c[i + 4]!, c[i + 5]!, c[i + 6]!, c[i + 7]!, c[i]!, c[i + 1]!], row: null } satisfies Mark;
  });
}
