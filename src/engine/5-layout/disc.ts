import { stitchCode } from '../craft/stitches.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { discAngles } from './discAngles.ts';
import { discRadii, START_ROOM } from './discRadii.ts';
import type { Annulus } from './discRadii.ts';
import { finish } from './finish.ts';
import type { Cell } from './gaugeCell.ts';
import { newGround, sectionRows, setStitch } from './ground.ts';
import type { Ground } from './ground.ts';
import type { LaidRow, Layout } from './layout.ts';
import { rowSlots } from './rowSlots.ts';
import type { RowSlots } from './rowSlots.ts';

const RING = stitchCode('ring');

/**
 * Rounds worked from a ring outwards, as a disc about (0, 0): anticlockwise for a right-handed maker with the right side
 * facing, starting at the foot of the picture, where a free strip keeps the rounds' numbers. Radii grow by stitch height,
 * and never so slowly that a full round is squeezed below four fifths of its width, so a ruffled disc stays legible (not
 * isometric). Linear cost.
 */
export function disc(fabric: Fabric, section: number, cell: Cell): Layout {
  const ground = newGround(fabric, section, cell);
  const rows = sectionRows(fabric, section);
  const slots = rows.map((row, r) => rowSlots(fabric, row, rows[r + 1] ?? null));
  const radii = discRadii(ground, slots);
  // Angle of each placed stitch, anticlockwise from the foot of the picture.
  const angles = new Float64Array(ground.end - ground.first);
  const laid: LaidRow[] = [];
  rows.forEach((row, r) => {
    const around = radii[r]!;
    const strip = stripOf(ground, around);
    placeRound(ground, slots[r]!, around, angles, discAngles(ground, row, slots[r]!, angles, strip), row.first);
    if (row.round) laid.push({ row: row.index, startsAt: 'right', ...labelOf(around, strip) });
  });
  return finish(ground, 'disc', laid, [], []);
}

/** Angle of the strip that is kept free at the start of a round. */
function stripOf({ w }: Ground, { outer }: Annulus): number {
  return Math.min(Math.PI, (START_ROOM * w) / Math.max(outer, 1e-9));
}

/** The point at an angle (anticlockwise from the foot of the picture) and a radius. */
function polar(angle: number, radius: number): [number, number] {
  return [radius * Math.sin(angle), radius * Math.cos(angle)];
}

/** A cell between two angles and two radii; seen with its head outwards, what is worked later stands to the left. */
function sector(from: number, to: number, inner: number, outer: number): number[] {
  return [...polar(to, inner), ...polar(from, inner), ...polar(from, outer), ...polar(to, outer)];
}

function placeRound(ground: Ground, slots: RowSlots, around: Annulus, angles: Float64Array, fitted: Float64Array, rowFirst: number): void {
  const order = slots.reversed ? slots.slots.toReversed() : slots.slots;
  const half = (2 * Math.PI - stripOf(ground, around)) / Math.max(1, order.length) / 2;
  const edge = (k: number): number => (k === 0 ? fitted[0]! - half : k === order.length ? fitted[k - 1]! + half : (fitted[k - 1]! + fitted[k]!) / 2);
  order.forEach((slot, k) => {
    const angle = fitted[k]!;
    angles[slot - ground.first] = angle;
    const [from, end] = slots.stack;
    if (slot < from || slot >= end) {
      setStitch(ground, slot, polar(angle, around.outer), footOf(ground, slot, polar(angle, around.inner), rowFirst), sector(edge(k), edge(k + 1), around.inner, around.outer));
      return;
    }
    const radius = (n: number): number => around.inner + ((around.outer - around.inner) * n) / (end - from);
    for (let n = 0; n < end - from; n++) setStitch(ground, from + n, polar(angle, radius(n + 1)), polar(angle, radius(n)), sector(edge(k), edge(k + 1), radius(n), radius(n + 1)));
  });
  placeExtras(ground, slots, around);
}

/** Mean head of the bases; straight below where there are none, or where the base is a ring as a whole. */
function footOf({ fabric, first, placed, headX, headY, w }: Ground, slot: number, below: [number, number], rowFirst: number): [number, number] {
  let [x, y, count] = [0, 0, 0];
  for (let b = fabric.baseStart[slot]!; b < fabric.baseStart[slot + 1]!; b++) {
    const base = fabric.bases[b]!;
    if (base < first || base >= rowFirst || !placed[base - first] || fabric.kind[base] === RING) continue;
    [x, y, count] = [x + headX[base - first]!, y + headY[base - first]!, count + 1];
  }
  return count === 0 || Math.hypot(x / count - below[0], y / count - below[1]) > 3 * w ? below : [x / count, y / count];
}

/** Turning chains and joins in the free strip, the ring in the middle, picots on their stitches. */
function placeExtras(ground: Ground, { turning, joins, rings, perched }: RowSlots, around: Annulus): void {
  const { w, h } = ground;
  const { inner, outer } = around;
  const middle = (inner + outer) / 2;
  const strip = stripOf(ground, around);
  const small = (stitch: number, angle: number, low: number, high: number, half: number): void => {
    const turn = half / Math.max(Math.abs(middle), 1e-9);
    setStitch(ground, stitch, polar(angle, high), polar(angle, low), sector(angle - turn, angle + turn, low, high));
  };
  const tall = Math.min(0.44 * h, (outer - inner) / Math.max(1, turning.length));
  turning.forEach((stitch, k) => small(stitch, strip / 2 - (0.25 * w) / outer, middle + (k - turning.length / 2) * tall, middle + (k + 1 - turning.length / 2) * tall, 0.16 * w));
  joins.forEach((stitch, k) => small(stitch, (0.25 + 0.3 * k) * (w / outer) - strip / 2, middle - 0.12 * h, middle + 0.12 * h, 0.14 * w));
  // A magic ring stands in the middle, a ring of chains lies round it.
  const away = rings.length > 1 ? Math.max(0.3 * h, inner - 0.35 * h) : -0.22 * h;
  rings.forEach((stitch, k) => {
    const angle = (2 * Math.PI * (k + 0.5)) / rings.length;
    setStitch(ground, stitch, polar(angle, away + 0.4 * h), polar(angle, away), sector(angle - 0.3, angle + 0.3, away, away + 0.4 * h));
  });
  for (const stitch of perched) {
    const below = Math.max(0, stitch - 1 - ground.first);
    const [x, y] = [ground.headX[below]!, ground.headY[below]!];
    const out = Math.hypot(x, y);
    small(stitch, Math.atan2(x, y), out, out + 0.8 * h, 0.3 * w);
  }
}

/** A round's number in the middle of the free strip; its start at the strip's edge. */
function labelOf({ inner, outer }: Annulus, strip: number): Pick<LaidRow, 'labelX' | 'labelY' | 'startX' | 'startY'> {
  const middle = (inner + outer) / 2;
  const [labelX, labelY] = polar(0, middle);
  const [startX, startY] = polar(strip / 2, middle);
  return { labelX, labelY, startX, startY };
}
