import type { Gauge } from '../1-pattern/pattern.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import type { Fabric, WorkedRow } from '../3-fabric/fabric.ts';
import { finish } from './finish.ts';
import { flat } from './flat.ts';
import { gaugeCell } from './gaugeCell.ts';
import { newGround, sectionRows } from './ground.ts';
import type { StoodRows } from './finishKept.ts';
import type { Ground, IndexedRow } from './ground.ts';
import { goesRoundOnce, growsFromRing } from './growsFromRing.ts';
import { layOutAgain, startsOf, type KeptLayout } from './layOutAgain.ts';
import type { Layout, LayoutKind, PlacedPart, TurnedView } from './layout.ts';
import { mirror } from './mirror.ts';
import { ovalCore } from './ovalCore.ts';
import { piecesOf } from './piecesOf.ts';
import { placeRest } from './placeRest.ts';
import { rounds } from './rounds.ts';
import { sideBySide } from './sideBySide.ts';
import { tube, type TubeOptions } from './tube.ts';
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

/** What stays beside a layout, as long as that is held: the layout as it is without mirroring, and its rows. */
interface Beside {
  readonly layout: Layout;
  readonly kept: KeptLayout;
  readonly options: string;
}

const KEPT = new WeakMap<Layout, Beside>();

/**
 * Lays out one section of the fabric, in mm of the gauge. Each piece of the section is laid out by what it is in the graph of stitches: turned
 * short rows, closed rounds (about a point or a foundation chain when they grow from it, else a tube), or rows back and forth; several
 * pieces stand side by side. Linear in the section's stitches. With the layout of an earlier fabric, rows of one flat piece or tube that stand as
 * they did are kept: the numbers are the very same as without it. Refuses a section that isn't there.
 */
export function layOut(fabric: Fabric, section: number, gauge: Gauge, options: LayOutOptions = {}, previous: Layout | null = null): Layout {
  const cell = gaugeCell(gauge);
  const pieces = piecesOf(fabric, sectionRows(fabric, section));
  const rows = pieces.length === 1 ? pieces[0]! : null;
  const kind = rows && shapeOf(fabric, rows, options.rounds ?? 'auto');
  const before = previous ? KEPT.get(previous) : undefined;
  const isSame = before && before.kept.kind === kind && before.layout.section === section && before.options === wordsOf(options) && before.kept.cell.widthMm === cell.widthMm && before.kept.cell.heightMm === cell.heightMm;
  const again = isSame ? layOutAgain(before.layout, before.kept, fabric, section) : null;
  if (again) return beside(again.layout, again.kept, options);

  const ground = newGround(fabric, section, cell);
  const parts = pieces.map((rows) => ({ rows, placed: placePart({ ...ground, outside: new Map() }, rows, options) }));
  const placed = sideBySide(ground, parts);
  placeRest(ground);
  const layout = finish(ground, placed);
  const stood = parts[0]?.placed.stood ?? [];
  const starts = rows && stood.length > 0 && stood.every(({ isWhole }) => isWhole) ? startsOf(fabric, rows) : null;
  return beside(layout, starts && (kind === 'flat' || kind === 'tube') ? { fabric, cell, kind, tube: tubeOptions(options), stood, starts } : null, options);
}

/**
 * The rows of a layout that may be kept, as they stand, and the first stitch of each; null for what is laid out as a whole each time.
 * `mirroredAt`: sum of the two x that were changed for each other, for a left-handed maker.
 */
export function stoodRows(layout: Layout): (StoodRows & { readonly mirroredAt: number | null }) | null {
  const known = KEPT.get(layout);
  return known ? { stood: known.kept.stood, starts: known.kept.starts, mirroredAt: known.layout === layout ? null : layout.bounds.x0 + layout.bounds.x1 } : null;
}

/** The layout as it was asked for, with what an edit may keep of it. */
function beside(layout: Layout, kept: KeptLayout | null, options: LayOutOptions): Layout {
  const shown = options.hand === 'left' ? mirror(layout) : layout;
  if (kept) KEPT.set(shown, { layout, kept, options: wordsOf(options) });
  return shown;
}

/** Options that give the same layout have the same words. */
function wordsOf({ hand = 'right', rounds = 'auto', ...options }: LayOutOptions): string {
  return JSON.stringify([hand, rounds, tubeOptions(options)]);
}

function tubeOptions({ tubeMargin = 4, leanStitches = 0, spiral = false }: LayOutOptions): TubeOptions {
  return { marginStitches: tubeMargin, leanStitches, spiral };
}

function placePart(ground: Ground, rows: readonly IndexedRow[], options: LayOutOptions): PlacedPart {
  const { view = 'wedge' } = options;
  const { fabric } = ground;
  switch (shapeOf(fabric, rows, options.rounds ?? 'auto')) {
    case 'flat': return flat(ground, rows);
    case 'tube': return tube(ground, rows, tubeOptions(options));
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
