import type { Mark, MarkRole } from './drawing.ts';
import type { Look } from './look.ts';
import { LEAST_TEXT_MM } from './textSize.ts';
import { attributes, escapeXml, num, pathData } from './svgText.ts';

interface RoleStyle {
  readonly stroke?: string;
  readonly widthMm?: number;
  readonly dash?: string;
  readonly fill?: string;
  /** Areas that must be seen on any yarn lie on a halo of the paper's colour, this wide about their outline. */
  readonly haloMm?: number;
}

/** Lines, areas and texts of the given roles, in the drawing's order, as one group each role under its own id. */
export function svgMarks(marks: readonly Mark[], roles: readonly MarkRole[], look: Look): string {
  return roles.map((role) => {
    const own = marks.filter((mark) => mark.role === role);
    return own.length === 0 ? '' : roleGroup(role, own, look);
  }).join('');
}

function roleGroup(role: MarkRole, marks: readonly Mark[], look: Look): string {
  const { stroke, widthMm, dash, fill, haloMm } = roleStyle(role, look);
  const lines = marks.flatMap((mark) => (mark.kind === 'line' ? [pathData(mark.points, false)] : [])).join('');
  const areas = marks.flatMap((mark) => (mark.kind === 'area' ? [pathData(mark.points, true)] : [])).join('');
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [svgText(mark, look.paper)] : [])).join('');
  const pen = { stroke, 'stroke-width': widthMm, 'stroke-dasharray': dash, 'stroke-linejoin': 'round', 'stroke-linecap': dash ? 'butt' : 'round' };
  // A dashed outline of a small mark would be no outline.
  const outline = dash ? { ...pen, 'stroke-dasharray': null } : pen;
  return `<g id="${groupId(role)}">`
    + (areas && haloMm ? `<path${attributes({ fill: 'none', stroke: look.paper, 'stroke-width': haloMm, 'stroke-linejoin': 'round', d: areas })}/>` : '')
    + (areas ? `<path${attributes({ fill: fill ?? 'none', ...(stroke && role !== 'attach' ? outline : {}), d: areas })}/>` : '')
    + (lines ? `<path${attributes({ fill: 'none', ...pen, d: lines })}/>` : '')
    + (texts ? `<g${attributes({ fill: textInk(role, look), 'font-family': look.font })}>${texts}</g>` : '') + '</g>';
}

/** One text mark; words that lie over others' lines keep clear of them by a halo in the colour of `paper`. */
export function svgText(mark: Extract<Mark, { kind: 'text' }>, paper: string | null): string {
  const turn = mark.turnRad === 0 ? null : `rotate(${num((mark.turnRad * 180) / Math.PI)} ${num(mark.x)} ${num(mark.y)})`;
  const size = Math.max(LEAST_TEXT_MM, mark.sizeMm);
  const halo = mark.role === 'openText' && paper !== null ? { stroke: paper, 'stroke-width': 0.18 * size, 'stroke-linejoin': 'round', 'paint-order': 'stroke' } : {};
  return `<text${attributes({ x: mark.x, y: mark.y, 'font-size': size, 'text-anchor': mark.anchor === 'start' ? null : mark.anchor, transform: turn, ...halo })}>${escapeXml(mark.text)}</text>`;
}

function groupId(role: MarkRole): string {
  return `marks-${role.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`).replace('-r-s', '-rs').replace('-w-s', '-ws')}`;
}

function textInk(role: MarkRole, look: Look): string {
  return role === 'openText' ? look.openInk : look.textInk;
}

/** Stroke and fill of a role. */
function roleStyle(role: MarkRole, look: Look): RoleStyle {
  switch (role) {
    case 'grid': return { stroke: look.gridInk, widthMm: look.gridMm };
    case 'grid5': return { stroke: look.gridStrongInk, widthMm: look.grid5Mm };
    case 'grid10': return { stroke: look.gridStrongInk, widthMm: look.grid10Mm };
    case 'frame': return { stroke: look.gridStrongInk, widthMm: look.grid5Mm };
    case 'bandRS': return { fill: look.bandRS, stroke: look.bandRS, widthMm: 0.2 };
    case 'bandWS': return { fill: look.bandWS, stroke: look.bandWS, widthMm: 0.2 };
    case 'open': return { fill: look.openFill, stroke: look.openInk, widthMm: look.openFill === 'none' ? 0.35 : 0.2, ...(look.openFill === 'none' ? { haloMm: 0.85 } : {}) };
    case 'seam': return { stroke: look.seamInk, widthMm: Math.max(0.35, look.lineMm), dash: '1.6 1', fill: look.seamInk };
    case 'centre': return { stroke: look.gridStrongInk, widthMm: look.lineMm, dash: '1.2 0.9' };
    case 'join': return { stroke: look.inks.attaching, widthMm: Math.max(0.35, look.lineMm), dash: '0.4 0.9' };
    case 'sizeLine': return { stroke: look.textInk, widthMm: 2 * look.lineMm };
    case 'leader': return { stroke: look.gridInk, widthMm: 0.2 };
    case 'attach': return { stroke: look.inks.attaching, widthMm: Math.max(0.4, look.lineMm), fill: look.inks.attaching, haloMm: 0.7 };
    case 'direction': case 'repeat': case 'repeatText': case 'rowNumber': case 'stitchNumber': case 'openText': case 'title': case 'caption': case 'legendText':
      return { stroke: look.textInk, widthMm: look.lineMm };
    case 'scale': return { stroke: look.textInk, widthMm: look.lineMm, fill: look.textInk };
    case 'legendBox': return { stroke: look.gridStrongInk, widthMm: 0.2 };
  }
}
