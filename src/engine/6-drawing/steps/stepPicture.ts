import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Box } from '../../5-layout/layout.ts';
import type { Drawing } from '../drawing.ts';
import type { Look } from '../look.ts';
import { svgGlyph } from '../svgGlyph.ts';
import { svgSymbols } from '../svgSymbols.ts';
import { attributes, num, pathData } from '../svgText.ts';
import type { Step } from './rowSteps.ts';

/** Cells across and up that a picture shows at the most: more would be too small beside its words. */
export const STEP_CELLS = { across: 34, up: 24 } as const;

/** The picture of a step, moved so that its upper left corner is (0, 0), and its size in mm. */
export interface StepPicture {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Tints by what is done: rows before, the row in work, the stitches that the step makes. */
const TINTS = { before: '#f4eddd', now: '#e4d5b5', next: '#ffffff' } as const;
const MONO_TINTS = { before: '#f3f3f3', now: '#d4d4d4', next: '#ffffff' } as const;

/**
 * One step in a picture: what is done so far (rows before it lighter than the row in work), the stitch in hand in a thick frame, the
 * stitches that the step makes as broken outlines, and a pointer with a ring at the place where the hook goes next, told by shape
 * and not by colour alone. `drawing` is the section's own, with symbols; what is made later is left out. Shows a stretch of at most
 * `STEP_CELLS` about the hook. Linear in the section's stitches.
 */
export function stepPicture(fabric: Fabric, drawing: Drawing, look: Look, step: Step): StepPicture {
  const { stitches } = drawing;
  const tints = look.mono ? MONO_TINTS : TINTS;
  const shown = windowOf(drawing, step);
  const inside = (item: number): boolean => stitches.x[item]! > shown.x0 && stitches.x[item]! < shown.x1 && stitches.y[item]! > shown.y0 && stitches.y[item]! < shown.y1;
  const items = Array.from({ length: stitches.count }, (_, item) => item).filter(inside);
  const done = items.filter((item) => !stitches.ghost[item] && stitches.stitch[item]! < step.from);
  const ghosts = items.filter((item) => stitches.ghost[item] && stitches.stitch[item]! < step.from);
  const next = items.filter((item) => !stitches.ghost[item] && stitches.stitch[item]! >= step.from && stitches.stitch[item]! < step.to);
  const cells = (some: readonly number[]): string => some.filter((item) => stitches.filled[item]).map((item) => pathData(cornersOf(drawing, item), true)).join('');
  const isNow = (item: number): boolean => stitches.row[item] === step.row;
  const used = new Set([...done, ...ghosts].map((item) => stitches.glyph[item]!));
  const path = (d: string, more: Readonly<Record<string, string | number>>): string => (d === '' ? '' : `<path${attributes({ ...more, d })}/>`);
  const grid = { stroke: look.gridInk, 'stroke-width': look.gridMm, 'stroke-linejoin': 'round' };
  const hand = items.find((item) => !stitches.ghost[item] && stitches.stitch[item] === step.inHand);
  const body = [
    path(cells(done.filter((item) => !isNow(item))), { fill: tints.before, ...grid }),
    path(cells(done.filter(isNow)), { fill: tints.now, ...grid }),
    path(cells(next), { fill: tints.next, stroke: look.gridStrongInk, 'stroke-width': Math.max(0.25, look.gridMm), 'stroke-dasharray': '0.9 0.7' }),
    `<g${attributes({ 'stroke-width': look.symbolMm, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' })}>${svgSymbols(drawing, ghosts, look, new Uint8Array(0))}${svgSymbols(drawing, done, look, new Uint8Array(0))}</g>`,
    hand === undefined ? '' : path(pathData(cornersOf(drawing, hand), true), { fill: 'none', stroke: look.inks.rightSide, 'stroke-width': 0.75, 'stroke-linejoin': 'round' }),
    pointer(fabric, drawing, look, step, items),
  ].join('');
  const defs = drawing.glyphs.filter((_, glyph) => used.has(glyph)).map(svgGlyph).join('');
  const svg = `${defs === '' ? '' : `<defs>${defs}</defs>`}<g transform="translate(${num(-shown.x0)} ${num(-shown.y0)})">${body}</g>`;
  return { svg, widthMm: shown.x1 - shown.x0, heightMm: shown.y1 - shown.y0 };
}

function cornersOf({ stitches }: Drawing, item: number): readonly number[] {
  return [...stitches.corners.subarray(item * 8, item * 8 + 8)];
}

/** What a picture shows: the section as far as it is made with this step, cut to a stretch about the hook where that is too large. */
function windowOf({ stitches, cellWidthMm: w, cellHeightMm: h }: Drawing, step: Step): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  let [x, y] = [0, 0];
  for (let item = 0; item < stitches.count; item++) {
    const stitch = stitches.stitch[item]!;
    if (stitches.ghost[item] ? stitch >= step.to : stitch >= Math.max(step.to, step.from)) continue;
    for (let c = item * 8; c < item * 8 + 8; c += 2) {
      box.x0 = Math.min(box.x0, stitches.corners[c]!);
      box.x1 = Math.max(box.x1, stitches.corners[c]!);
      box.y0 = Math.min(box.y0, stitches.corners[c + 1]!);
      box.y1 = Math.max(box.y1, stitches.corners[c + 1]!);
    }
    if (stitch === (step.place >= 0 ? step.place : step.inHand) || (x === 0 && y === 0)) [x, y] = [stitches.x[item]!, stitches.y[item]!];
  }
  if (box.x0 > box.x1) return { x0: 0, y0: 0, x1: w, y1: h };
  const [acrossX, acrossY] = [cut(box.x0, box.x1, x, STEP_CELLS.across * w), cut(box.y0, box.y1, y, STEP_CELLS.up * h)];
  const pad = 1.4 * h;
  return { x0: acrossX[0] - 0.6, y0: acrossY[0] - pad, x1: acrossX[1] + 0.6, y1: acrossY[1] + 0.6 };
}

function cut(from: number, to: number, about: number, most: number): readonly [number, number] {
  if (to - from <= most) return [from, to];
  const start = Math.min(Math.max(from, about - most / 2), to - most);
  return [start, start + most];
}

/** A ring at the place where the hook goes, and an arrow that comes from outside the fabric to it. */
function pointer(fabric: Fabric, drawing: Drawing, look: Look, step: Step, items: readonly number[]): string {
  const { stitches, cellWidthMm: w, cellHeightMm: h } = drawing;
  const at = items.find((item) => stitches.stitch[item] === step.place && !stitches.ghost[item]) ?? items.find((item) => stitches.stitch[item] === step.place);
  if (step.place < 0 || at === undefined) return '';
  const c = at * 8;
  // The hook goes under the top of the place: the middle of the cell's upper edge.
  const [x, y] = [(stitches.corners[c + 4]! + stitches.corners[c + 6]!) / 2, (stitches.corners[c + 5]! + stitches.corners[c + 7]!) / 2];
  const [ux, uy] = [x - stitches.x[at]!, y - stitches.y[at]!];
  const long = Math.hypot(ux, uy) || 1;
  const [dx, dy] = [ux / long, uy / long];
  const r = 0.42 * Math.min(w, h);
  const [tipX, tipY] = [x + dx * r, y + dy * r];
  const [backX, backY] = [tipX + dx * 1.1 * h, tipY + dy * 1.1 * h];
  const side = 0.28 * Math.min(w, h);
  const head = [tipX, tipY, tipX + dx * 0.5 * h + dy * side, tipY + dy * 0.5 * h - dx * side, tipX + dx * 0.5 * h - dy * side, tipY + dy * 0.5 * h + dx * side];
  const ink = look.inks.attaching;
  const draw = (stroke: string, more: number): string => `<g${attributes({ stroke, fill: 'none', 'stroke-width': 0.5 + more, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' })}><circle${attributes({ cx: x, cy: y, r })}/><path${attributes({ d: pathData([backX, backY, tipX + dx * 0.4 * h, tipY + dy * 0.4 * h], false) })}/><path${attributes({ d: pathData(head, true), fill: stroke })}/></g>`;
  return fabric.count === 0 ? '' : draw(look.paper, 0.9) + draw(ink, 0);
}
