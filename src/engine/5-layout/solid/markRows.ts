import type { Fabric } from '../../3-fabric/fabric.ts';
import { STANDS } from './standing.ts';
import type { Web, WebRow } from './web.ts';

/** The rows of a web with what only the whole tells of each: whether it is partial, drawn shut, or set into an opening. */
export function markRows(fabric: Fabric, web: Omit<Web, 'cellWidthMm' | 'leftOut'>): WebRow[] {
  return markSetIn(web, markShut(fabric, web, markPartial(fabric, web)));
}

/** A row that doesn't meet its own start is partial on a round, on a partial row, or where stitches are left beside it. */
function markPartial(fabric: Fabric, web: Pick<Web, 'rows' | 'rowOf' | 'baseStart' | 'bases' | 'attaches'>): WebRow[] {
  const partial: boolean[] = [];
  return web.rows.map((row, r) => {
    const { left } = fabric.rows[row.row]!;
    let short = left.ahead + left.behind > 0;
    for (let i = row.first; i < row.end && !short; i++) {
      short = web.attaches[i] === 1;
      for (let b = web.baseStart[i]!; b < web.baseStart[i + 1]! && !short; b++) {
        const below = web.rowOf[web.bases[b]!]!;
        short = (web.rows[below]!.wraps && !web.rows[below]!.centre) || partial[below]!;
      }
    }
    partial[r] = short && !row.wraps;
    return { ...row, partial: partial[r] };
  });
}

/** A round that nothing stands on is drawn shut where its tops aren't open at the end and aren't sewn flat. */
function markShut(fabric: Fabric, { stitch, bases, sewn }: Pick<Web, 'stitch' | 'bases' | 'sewn'>, rows: readonly WebRow[]): WebRow[] {
  const kept = new Uint8Array(stitch.length);
  for (const head of [...bases, ...sewn]) kept[head] = 1;
  const open = new Set(fabric.openAtEnd);
  return rows.map((row) => {
    let drawnShut = row.wraps;
    for (let i = row.first; i < row.end && drawnShut; i++) drawnShut = kept[i] === 0 && !open.has(stitch[i]!);
    return { ...row, drawnShut };
  });
}

/** Rounds worked into an opening: partly into the undersides of the chains over it; and those that stand on them. */
function markSetIn({ rowOf, baseStart, bases, stands }: Pick<Web, 'rowOf' | 'baseStart' | 'bases' | 'stands'>, rows: readonly WebRow[]): WebRow[] {
  const marked: WebRow[] = [];
  rows.forEach((row) => {
    let setInto = row.wraps && baseStart[row.first] !== baseStart[row.end] ? Infinity : -1;
    let under = -1;
    for (let i = row.first; i < row.end; i++) {
      for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) {
        const below = rowOf[bases[k]!]!;
        if (stands[i] === STANDS.under && baseStart[rows[below]!.first] !== baseStart[rows[below]!.end]) under = below;
        setInto = Math.min(setInto, marked[below]!.setInto);
      }
    }
    marked.push({ ...row, setInto: row.wraps && under >= 0 ? under : setInto });
  });
  return marked;
}
