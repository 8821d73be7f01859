import type { Gauge } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import { disc } from './disc.ts';
import { growsFromRing } from './growsFromRing.ts';
import { flat } from './flat.ts';
import { gaugeCell } from './gaugeCell.ts';
import type { Cell } from './gaugeCell.ts';
import { sectionRows } from './ground.ts';
import type { Layout } from './layout.ts';
import { mirror } from './mirror.ts';
import { tube } from './tube.ts';
import { turned } from './turned.ts';

/** How a section is laid out besides its gauge. */
export interface LayOutOptions {
  /** Left-handed: mirrored. Default right. */
  readonly hand?: 'right' | 'left';
  /** Stitches repeated in grey on either side of a tube. Default 4. */
  readonly tubeMargin?: number;
  /** Lean of unturned rounds, stitches a round. Default 0: straight columns. */
  readonly leanStitches?: number;
}

/**
 * Lays out one section of the fabric, in mm of the gauge, by what the section is in the graph of stitches: turned short rows,
 * closed rounds (a disc when they grow from a ring, else a tube), or rows back and forth. Linear in the section's stitches. Refuses a section that isn't there.
 */
export function layOut(fabric: Fabric, section: number, gauge: Gauge, options: LayOutOptions = {}): Layout {
  const cell = gaugeCell(gauge);
  const layout = laid(fabric, section, cell, options);
  return options.hand === 'left' ? mirror(layout) : layout;
}

function laid(fabric: Fabric, section: number, cell: Cell, { tubeMargin = 4, leanStitches = 0 }: LayOutOptions): Layout {
  switch (sectionShape(fabric, section)) {
    case 'flat': return flat(fabric, section, cell);
    case 'tube': return tube(fabric, section, cell, { marginStitches: tubeMargin, leanStitches });
    case 'turned': return turned(fabric, section, cell);
    case 'disc': return disc(fabric, section, cell);
  }
}

/** What a section is, from its stitches alone. */
export function sectionShape(fabric: Fabric, section: number): Layout['kind'] {
  const rows = sectionRows(fabric, section);
  if (rows.some((row) => attaches(fabric, row))) return 'turned';
  let inRounds = 0;
  let stitches = 0;
  for (const row of rows) {
    stitches += row.end - row.first;
    if (row.round) inRounds += row.end - row.first;
  }
  if (inRounds * 2 <= stitches) return 'flat';
  return growsFromRing(fabric, rows) ? 'disc' : 'tube';
}

/** Whether a row of turned short rows ends in a stitch whose base isn't in the row below. */
function attaches(fabric: Fabric, row: WorkedRow): boolean {
  if (row.round) return false;
  for (let stitch = row.end - 1; stitch >= row.first; stitch--) {
    if (fabric.flags[stitch]! & FLAG.attaching) return true;
  }
  return false;
}
