import type { Layout } from '../../5-layout/layout.ts';
import type { Mark } from '../../6-drawing/drawing.ts';
import { columnCount } from '../../4-colour/rowColumns.ts';
import { placementInSize } from '../../4-colour/placementInSize.ts';
import { shortName, type WorkedPattern, type WorkedSize } from '../workedSizes.ts';
import type { Bracket } from './bracketsBelow.ts';
import type { SharedChart } from './sizesTogether.ts';

/** Left and right edge of a stretch of columns `[from, to)` of a row as it is laid out; null where the row bends or is not there. */
function edgesOf({ grid }: WorkedSize, layout: Layout, row: number, from: number, to: number): readonly [number, number] | null {
  const { stitches, start } = grid.columns;
  if (from < 0 || to > columnCount(grid.columns, row) || to <= from) return null;
  const xs = [from, to - 1].flatMap((column) => {
    const at = (stitches[start[row]! + column]! - layout.first) * 8;
    return [layout.corners[at]!, layout.corners[at + 2]!];
  });
  return [Math.min(...xs), Math.max(...xs)];
}

/** Brackets of the repeats of the motifs that lie on a section, one repeat each, widths told apart; with their width in stitches. */
export function repeatBrackets({ drawn: pattern }: WorkedPattern, size: WorkedSize, section: string, layout: Layout): readonly (Bracket & { readonly stitches: number })[] {
  const seen = new Set<number>();
  return size.colours.fits.flatMap((fit) => {
    const whole = pattern.placements.find(({ id }) => id === fit.placement);
    const placement = whole && placementInSize(whole, size.size);
    const motif = pattern.motifs.find(({ id }) => id === placement?.motif);
    if (!placement || !motif || placement.section !== section || fit.across < 2) return [];
    const row = size.grid.rows.indexOf(section, placement.row);
    const stitches = motif.cells[0]!.length + placement.gap;
    if (row < 0 || seen.has(stitches)) return [];
    const edges = edgesOf(size, layout, row, Math.max(0, fit.leftOver.left), Math.max(0, fit.leftOver.left) + stitches);
    if (!edges) return [];
    seen.add(stitches);
    return [{ x0: edges[0], x1: edges[1], text: `${motif.name === '' ? '' : `${motif.name}: `}repeat of ${stitches} sts`, stitches }];
  });
}

/** Brackets and upright lines that say which stitches of a shared chart each size works; none for a chart of one width. */
export function sizeBrackets({ drawn, spans }: SharedChart, section: string, layout: Layout): { readonly brackets: readonly Bracket[]; readonly lines: readonly Mark[] } {
  const rows = drawn.grid.rows.of(section);
  const widths = new Set(spans.map(({ from, to }) => to - from));
  if (widths.size < 2 || rows.length === 0) return { brackets: [], lines: [] };
  const [y0, y1] = [rows[0]!, rows.at(-1)!].map((row) => heightsOf(drawn, layout, row)) as [readonly [number, number], readonly [number, number]];
  const [top, bottom] = [Math.min(y0[0], y1[0]), Math.max(y0[1], y1[1])];
  const found = spans.flatMap(({ size, from, to }) => {
    const edges = edgesOf(drawn, layout, rows[0]!, from, to);
    return edges ? [{ edges, words: `${shortName(size.name) || `size ${size.size + 1}`}: ${to - from} sts`, whole: to - from === Math.max(...widths) }] : [];
  });
  const xs = new Set(found.flatMap(({ edges, whole }) => (whole ? [] : edges)));
  return {
    brackets: found.sort((a, b) => a.edges[1] - a.edges[0] - (b.edges[1] - b.edges[0])).map(({ edges, words }) => ({ x0: edges[0], x1: edges[1], text: words })),
    lines: [...xs].sort((a, b) => a - b).map((x) => ({ kind: 'line', role: 'sizeLine', points: [x, top, x, bottom], row: null })),
  };
}

function heightsOf({ grid }: WorkedSize, layout: Layout, row: number): readonly [number, number] {
  const at = (grid.columns.stitches[grid.columns.start[row]!]! - layout.first) * 8;
  const ys = [1, 3, 5, 7].map((c) => layout.corners[at + c]!);
  return [Math.min(...ys), Math.max(...ys)];
}
