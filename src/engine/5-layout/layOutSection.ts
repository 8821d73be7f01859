import type { Gauge } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import { finish } from './finish.ts';
import { flat } from './flat.ts';
import { gaugeCell } from './gaugeCell.ts';
import { newGround, sectionRows } from './ground.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { goesRoundOnce, growsFromRing } from './growsFromRing.ts';
import type { Layout, LayoutKind, PlacedPart, TurnedView } from './layout.ts';
import { mirror } from './mirror.ts';
import { ovalCore } from './ovalCore.ts';
import { piecesOf } from './piecesOf.ts';
import { placeRest } from './placeRest.ts';
import { rounds } from './rounds.ts';
import { sideBySide } from './sideBySide.ts';
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
  /** Rounds of a tube rise by one round on their way round, as a spiral does. Default false: level rounds. */
  readonly spiral?: boolean;
  /** Closed rounds unrolled, or about their middle (from a ring outwards, else inwards as a toe is seen from its tip). Default by what they are. */
  readonly rounds?: 'auto' | 'tube' | 'disc';
  /** Turned short rows as a wedge with its flanks bent up, in columns, or as a fan. Default wedge. */
  readonly view?: TurnedView;
}

/**
 * Lays out one section of the fabric, in mm of the gauge. Each piece of the section is laid out by what it is in the graph of stitches: turned
 * short rows, closed rounds (about a point or a foundation chain when they grow from it, else a tube), or rows back and forth; several
 * pieces stand side by side. Linear in the section's stitches. Refuses a section that isn't there.
 */
export function layOut(fabric: Fabric, section: number, gauge: Gauge, options: LayOutOptions = {}): Layout {
  const { widthMm, heightMm } = gaugeCell(gauge);
  const ground = newGround(fabric, section, { widthMm, heightMm });
  const parts = piecesOf(fabric, sectionRows(fabric, section)).map((rows) => ({ rows, placed: placePart({ ...ground, outside: new Map() }, rows, options) }));
  const beside = sideBySide(ground, parts);
  placeRest(ground);
  const layout = finish(ground, beside);
  return options.hand === 'left' ? mirror(layout) : layout;
}

function placePart(ground: Ground, rows: readonly IndexedRow[], options: LayOutOptions): PlacedPart {
  const { tubeMargin = 4, leanStitches = 0, spiral = false, view = 'wedge' } = options;
  const { fabric } = ground;
  switch (shapeOf(fabric, rows, options.rounds ?? 'auto')) {
    case 'flat': return flat(ground, rows);
    case 'tube': return tube(ground, rows, { marginStitches: tubeMargin, leanStitches, spiral });
    case 'turned': return turned(ground, rows, view);
    case 'disc': return rounds(ground, rows, { inwards: !growsFromRing(fabric, rows), core: null });
    case 'oval': return rounds(ground, rows, { inwards: false, core: ovalCore(fabric, rows) });
  }
}

/** What a section is, from its stitches alone. */
export function sectionShape(fabric: Fabric, section: number): LayoutKind {
  return shapeOf(fabric, sectionRows(fabric, section), 'auto');
}

function shapeOf(fabric: Fabric, rows: readonly IndexedRow[], wanted: 'auto' | 'tube' | 'disc'): LayoutKind {
  if (rows.some((row) => attaches(fabric, row))) return 'turned';
  let inRounds = 0;
  let stitches = 0;
  for (const row of rows) {
    stitches += row.end - row.first;
    if (row.round) inRounds += row.end - row.first;
  }
  if (inRounds * 2 <= stitches) return 'flat';
  if (wanted === 'tube') return 'tube';
  const core = ovalCore(fabric, rows);
  if (core) return goesRoundOnce(fabric, rows, core.chains.length) ? 'oval' : 'tube';
  return growsFromRing(fabric, rows) || wanted === 'disc' ? 'disc' : 'tube';
}

/** Whether a row of turned short rows ends in a stitch whose base isn't in the row below. */
function attaches(fabric: Fabric, row: WorkedRow): boolean {
  if (row.round) return false;
  for (let stitch = row.end - 1; stitch >= row.first; stitch--) {
    if (fabric.flags[stitch]! & FLAG.attaching) return true;
  }
  return false;
}
