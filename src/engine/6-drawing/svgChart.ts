import type { WorkedRow } from '../3-fabric/fabric.ts';
import type { Drawing } from './drawing.ts';
import type { Look } from './look.ts';
import { ghostLook, svgCells } from './svgCells.ts';
import { svgMarks } from './svgMarks.ts';
import { svgSymbols } from './svgSymbols.ts';
import { attributes } from './svgText.ts';

/**
 * The chart's groups in drawing order: bands, open bands, `cells` with a group a row (`row-12`), grid, `symbols` with a group a
 * row (`row-12-symbols`), ghosts (with tinted cells), guides, numbers.
 */
export function svgChart(drawing: Drawing, rows: readonly WorkedRow[], look: Look, yarnOf: Uint8Array): string {
  const byRow = new Map<number, number[]>();
  const ghosts: number[] = [];
  const { stitches, marks } = drawing;
  for (let item = 0; item < stitches.count; item++) {
    if (stitches.ghost[item]) {
      ghosts.push(item);
      continue;
    }
    const list = byRow.get(stitches.row[item]!);
    if (list) list.push(item);
    else byRow.set(stitches.row[item]!, [item]);
  }
  const names = rowNames([...byRow.keys()], rows);
  const cells = look.fills === 'none' ? '' : group('cells', [...byRow].map(([row, items]) => named(names.get(row)!, svgCells(drawing, items, look, yarnOf))));
  const pen = { 'stroke-width': look.symbolMm, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' };
  const suffix = look.fills === 'none' ? '' : '-symbols';
  const symbols = group('symbols', [...byRow].map(([row, items]) => named(`${names.get(row)!}${suffix}`, svgSymbols(drawing, items, look, yarnOf))), pen);
  const chart = [
    look.fills === 'none' ? svgMarks(marks, ['bandRS', 'bandWS'], look) : '',
    look.fills === 'none' ? svgMarks(marks, ['open'], look) : '',
    look.fills === 'none' ? '' : group('ghost-cells', [svgCells(drawing, ghosts, ghostLook(look), yarnOf)]),
    group('ghosts', [svgSymbols(drawing, ghosts, look, yarnOf)], pen),
    cells,
    svgMarks(marks, ['grid', 'grid5', 'grid10', 'frame'], look),
    look.fills === 'none' ? '' : svgMarks(outlined(marks), ['open'], { ...look, openFill: 'none' }),
    symbols,
    svgMarks(marks, ['seam', 'centre', 'sizeLine', 'attach', 'leader', 'direction', 'repeat', 'join', 'rowNumber', 'stitchNumber', 'repeatText', 'openText', 'caption'], look),
  ];
  return `<g id="chart">${chart.join('')}</g>`;
}

function outlined(marks: Drawing['marks']): Drawing['marks'] {
  return marks.filter((mark) => mark.role === 'open' && mark.kind === 'area');
}

function group(id: string, inner: readonly string[], more: Readonly<Record<string, string | number>> = {}): string {
  const text = inner.join('');
  return text === '' ? '' : `<g${attributes({ id, ...more })}>${text}</g>`;
}

function named(id: string, inner: string): string {
  return inner === '' ? '' : `<g id="${id}">${inner}</g>`;
}

/** An id a row: `row-12`, `round-3`, `foundation`; numbers that occur twice are told apart by a letter. */
function rowNames(used: readonly number[], rows: readonly WorkedRow[]): Map<number, string> {
  const taken = new Set<string>();
  const names = new Map<number, string>();
  for (const index of used) {
    const row = rows[index];
    const base = row && row.number !== null ? `row-${row.number}` : `row-${row?.word ?? 'x'}`;
    let name = base;
    for (let n = 2; taken.has(name); n++) name = `${base}-again-${n}`;
    taken.add(name);
    names.set(index, name);
  }
  return names;
}
