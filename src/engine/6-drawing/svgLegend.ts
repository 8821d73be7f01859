import type { Box } from '../5-layout/layout.ts';
import { stemOutline } from './attachMarks.ts';
import type { Drawing, Glyph, MarkRole } from './drawing.ts';
import { inkOn } from './inkOn.ts';
import type { LegendEntry } from './legend.ts';
import type { Look } from './look.ts';
import { printMark } from './printMark.ts';
import { cellColour } from './svgCells.ts';
import { svgGlyph } from './svgGlyph.ts';
import { svgMarks } from './svgMarks.ts';
import { attributes, escapeXml, num, pathData } from './svgText.ts';
import { textWidth } from './textSize.ts';
import { wrapText } from './wrapText.ts';

/** A legend as SVG text, and the room it takes, mm. */
export interface SetLegend {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Space between a picture and its words, and between columns, mm. */
const GAP_MM = 2;
/** A yarn's name takes another line from this width on, in sizes of its text: 48 characters. */
const WIDEST_NAME = 27;
/** From base line to base line, in sizes of the text. */
const LEADING = 1.25;

/** Sets a legend in as many columns as fit into `widthMm`, from (x, y) down; long names of yarns take several lines. Yarn cells have the chart's own cell shape. */
export function svgLegend(entries: readonly LegendEntry[], drawing: Drawing, look: Look, x: number, y: number, widthMm: number): SetLegend {
  if (entries.length === 0) return { svg: '', widthMm: 0, heightMm: 0 };
  const pictures = entries.map((entry) => picture(entry, drawing, look));
  const words = entries.map(({ kind, text }) => (kind === 'yarn' ? wrapText(text, look.textMm, WIDEST_NAME * look.textMm) : [text]));
  const boxWidth = Math.max(...pictures.map(({ box }) => box.x1 - box.x0));
  const entryWidth = boxWidth + GAP_MM + Math.max(...words.flat().map((text) => textWidth(text, look.textMm))) + 2 * GAP_MM;
  const columns = Math.max(1, Math.min(entries.length, Math.floor((widthMm + 2 * GAP_MM) / entryWidth)));
  const lines = Math.ceil(entries.length / columns);
  let svg = '';
  let top = y;
  for (let line = 0; line < lines; line++) {
    // Read down the columns: entry n of column c is c * lines + n.
    const row = Array.from({ length: columns }, (_, column) => column * lines + line).filter((n) => n < entries.length);
    const tall = Math.max(...row.map((n) => Math.max(pictures[n]!.box.y1 - pictures[n]!.box.y0, look.textMm * (1 + (words[n]!.length - 1) * LEADING))));
    row.forEach((n, column) => {
      const { box, svg: drawn } = pictures[n]!;
      const left = x + column * entryWidth;
      const middle = top + tall / 2;
      const [dx, dy] = [left + boxWidth / 2 - (box.x0 + box.x1) / 2, middle - (box.y0 + box.y1) / 2];
      svg += `<g${attributes({ transform: `translate(${num(dx)} ${num(dy)})` })}>${drawn}</g>`;
      words[n]!.forEach((text, nth) => {
        const down = (nth - (words[n]!.length - 1) / 2) * LEADING * look.textMm;
        svg += `<text${attributes({ x: left + boxWidth + GAP_MM, y: middle + down + 0.34 * look.textMm })}>${escapeXml(text)}</text>`;
      });
    });
    top += tall + 0.55 * look.textMm;
  }
  const group = attributes({ id: 'legend', 'font-family': look.font, 'font-size': look.textMm, fill: look.textInk });
  return { svg: `<g${group}>${svg}</g>`, widthMm: columns * entryWidth - 2 * GAP_MM, heightMm: top - y - 0.55 * look.textMm };
}

function picture(entry: LegendEntry, drawing: Drawing, look: Look): { readonly svg: string; readonly box: Box } {
  const [w, h] = [drawing.cellWidthMm, drawing.cellHeightMm];
  const cell: Box = { x0: 0, y0: 0, x1: w, y1: h };
  const corners = [0, h, w, h, w, 0, 0, 0];
  switch (entry.kind) {
    case 'yarn': {
      const mark = look.mono ? printMark(look.yarns[entry.yarn]?.mark ?? 'none', corners, 'whole') : null;
      const box = `<path${attributes({ fill: cellColour(look, entry.yarn), stroke: look.gridStrongInk, 'stroke-width': 0.2, d: pathData(corners, true) })}/>`;
      const marked = mark && look.yarns[entry.yarn]?.mark !== 'solid'
        ? (mark.filled ? `<path${attributes({ fill: look.markInk, d: mark.filled })}/>` : '') + (mark.stroked ? `<path${attributes({ fill: 'none', stroke: look.markInk, 'stroke-width': look.lineMm, d: mark.stroked })}/>` : '')
        : '';
      return { svg: box + marked, box: cell };
    }
    case 'stitch': {
      const { glyph } = entry;
      const ink = entry.ghost ? look.ghostInk : inkOn(look, entry.ink, look.paper);
      const box = glyphBox(glyph);
      return { svg: `<use${attributes({ 'xlink:href': `#${glyph.id}`, stroke: ink, fill: ink, 'stroke-width': look.symbolMm, 'stroke-linecap': 'round' })}/>`, box };
    }
    case 'line':
      return { svg: unnamed(svgMarks([{ kind: 'line', role: entry.role, points: [0, h / 2, w * 1.4, h / 2], row: null }], [entry.role], look)), box: { ...cell, x1: w * 1.4 } };
    case 'area': {
      const points = areaSample(entry.role, w, h) ?? corners;
      return { svg: unnamed(svgMarks([{ kind: 'area', role: entry.role, points, row: null }], [entry.role], look)), box: cell };
    }
  }
}

/** Areas that have a shape of their own: the stem of an attaching stitch, the mark at a round's start. Null: a cell. */
function areaSample(role: MarkRole, w: number, h: number): number[] | null {
  if (role === 'attach') return stemOutline(0.75 * w, 0.15 * h, 0.3 * w, 0.8 * h, Math.min(w, h));
  return role === 'seam' ? [0.5 * w, 0.26 * h, 0.63 * w, 0.5 * h, 0.5 * w, 0.74 * h, 0.37 * w, 0.5 * h] : null;
}

/** The same group without its id, which the chart already has. */
function unnamed(svg: string): string {
  return svg.replace(/^<g id="[^"]*">/, '<g>');
}

/** Bounds of a glyph's strokes, with at least some height and width. */
export function glyphBox(glyph: Glyph): Box {
  const box = { x0: -0.5, y0: 0, x1: 0.5, y1: 0.5 };
  const add = (x: number, y: number): void => {
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
  };
  for (const stroke of glyph.strokes) {
    if (stroke.kind === 'oval') {
      const r = Math.max(stroke.rx, stroke.ry);
      add(stroke.x - (stroke.turnRad === 0 ? stroke.rx : r), stroke.y - (stroke.turnRad === 0 ? stroke.ry : r));
      add(stroke.x + (stroke.turnRad === 0 ? stroke.rx : r), stroke.y + (stroke.turnRad === 0 ? stroke.ry : r));
    } else for (let i = 0; i + 1 < stroke.points.length; i += 2) add(stroke.points[i]!, stroke.points[i + 1]!);
  }
  return box;
}

/** Definitions of a legend's symbols that are not among `known` glyphs. */
export function legendDefs(entries: readonly LegendEntry[], known: readonly Glyph[]): string {
  const ids = new Set(known.map(({ id }) => id));
  return entries.map((entry) => {
    if (entry.kind !== 'stitch' || ids.has(entry.glyph.id)) return '';
    ids.add(entry.glyph.id);
    return svgGlyph(entry.glyph);
  }).join('');
}
