import type { Fabric } from '../3-fabric/fabric.ts';
import type { Box, Layout } from '../5-layout/layout.ts';
import { attachMarks } from './attachMarks.ts';
import { bandMarks } from './bandMarks.ts';
import { columnMarks } from './columnMarks.ts';
import type { RepeatBracket } from './columnMarks.ts';
import type { Drawing, Mark } from './drawing.ts';
import { drawnStitches } from './drawnStitches.ts';
import { newGlyphTable } from './glyph.ts';
import { gridMarks, gridParts } from './gridMarks.ts';
import type { Block } from './gridMarks.ts';
import { guideMarks } from './guideMarks.ts';
import { rowMarks } from './rowMarks.ts';
import { stoodRows } from '../5-layout/layOutSection.ts';
import { keptItems, type DrawnBefore } from './keptItems.ts';
import type { SymbolSet } from './symbols/symbolSet.ts';
import { LEAST_TEXT_MM, textWidth } from './textSize.ts';

/** What is drawn besides the stitches' cells. */
export interface DrawOptions {
  /** The family of symbols, or none. `'all'`: as `'us'`. */
  readonly symbols: SymbolSet | 'all' | 'none';
  /** Row numbers with their arrows, stitch numbers below. */
  readonly numbers: boolean;
  readonly grid: boolean;
  readonly repeatBrackets?: readonly RepeatBracket[];
  /** Size of numbers, mm; never under 6 pt. Default: 0.42 of a row's height. */
  readonly textMm?: number;
}

/** What each drawing was drawn of and how, as long as it is held. */
const DRAWN = new WeakMap<Drawing, DrawnBefore & { readonly set: SymbolSet | null }>();

/**
 * Draws one laid out section, at the layout's own scale (lay out with `gaugeAtScale` for a print of n mm per stitch). Marks come
 * in drawing order: bands first, then grid, guides and numbers. Linear in stitches, but for one sort of the grid lines. With an earlier
 * drawing, what stands where it stood is copied from there: the drawing is the very same as without it.
 */
export function draw(fabric: Fabric, layout: Layout, options: DrawOptions, previous: Drawing | null = null): Drawing {
  const table = options.symbols === 'none' ? null : newGlyphTable(options.symbols === 'jis' ? 'jis' : 'us');
  const set = table?.set ?? null;
  const before = previous ? DRAWN.get(previous) : undefined;
  const stitches = drawnStitches(fabric, layout, table, before?.set === set ? keptItems(fabric, layout, before) : null);
  const sizeMm = Math.max(LEAST_TEXT_MM, options.textMm ?? 0.42 * layout.cellHeightMm);
  const parts = gridParts(fabric, layout);
  const numbered = options.numbers ? lowestBlocks(layout, parts.blocks) : [];
  const brackets = options.repeatBrackets ?? [];
  const columns = (brackets.length > 0 ? lowestBlocks(layout, parts.blocks) : numbered).flatMap((block) => columnMarks(fabric, layout, block, sizeMm, options.numbers, brackets));
  const marks: Mark[] = [
    ...(table ? bandMarks(fabric, layout) : []),
    ...(options.grid ? gridMarks(fabric, layout, parts, !table || layout.kind === 'turned') : []),
    ...guideMarks(fabric, layout, sizeMm, numbered.length > 0 ? 1.6 * sizeMm : 0),
    ...(table ? [] : attachMarks(fabric, layout)),
    ...(options.numbers ? rowMarks(fabric, layout, sizeMm) : []),
    ...columns,
  ];
  const drawing: Drawing = { bounds: boundsOf(layout.bounds, marks), cellWidthMm: layout.cellWidthMm, cellHeightMm: layout.cellHeightMm, stitches, glyphs: table?.glyphs ?? [], marks, ...(table ? { symbols: table.set } : {}) };
  if (stoodRows(layout)) DRAWN.set(drawing, { drawing, fabric, layout, set });
  return drawing;
}

/** The lowest block of exact columns of each piece; turned rows have none that run through. */
function lowestBlocks(layout: Layout, blocks: readonly Block[]): Block[] {
  return layout.parts.flatMap(({ rows }) => {
    const own = new Set(rows);
    const lowest = blocks.find((block) => own.has(block.rows[0]!));
    return lowest && !lowest.plain ? [lowest] : [];
  });
}

/** The layout's bounds grown round all marks. */
function boundsOf(bounds: Box, marks: readonly Mark[]): Box {
  const box = { ...bounds };
  const add = (x: number, y: number): void => {
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
  };
  for (const mark of marks) {
    if (mark.kind === 'text') {
      const width = textWidth(mark.text, mark.sizeMm);
      const from = mark.anchor === 'start' ? 0 : mark.anchor === 'end' ? -width : -width / 2;
      const [sin, cos] = [Math.sin(mark.turnRad), Math.cos(mark.turnRad)];
      for (const across of [from, from + width]) for (const down of [-0.8 * mark.sizeMm, 0.25 * mark.sizeMm]) add(mark.x + across * cos - down * sin, mark.y + across * sin + down * cos);
    } else {
      for (let i = 0; i + 1 < mark.points.length; i += 2) add(mark.points[i]!, mark.points[i + 1]!);
    }
  }
  return box;
}
