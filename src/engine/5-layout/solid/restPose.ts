import { across, cross, dot, lengthOf, plus, pointAt, times, unit } from './vector.ts';
import type { Vector } from './vector.ts';
import type { Web, WebRow } from './web.ts';

/** Rows from the start and from the end that tell which way the piece runs there. */
const ROWS_TOLD = 10;
/** A bend of less than this between start and end is no foot; radians. */
const LEAST_BEND = 0.6;
/** A piece this open is a tube or a cap, no disc: 0 flat, 1 a tube. */
const LEAST_OPEN = 0.35;

/** The way a piece stands for the first look: directions that are shown to the right, upwards and to the viewer, and how far it is then turned. */
export interface RestPose {
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
  readonly yawRad: number;
  readonly pitchRad: number;
}

/**
 * Stands a piece up: with a foot, leg upright and toe to the left; a cap with its crown up; a tube as it grows, the start of its
 * rows at the back; a disc or panel lies facing the viewer, right side up.
 */
export function restPose(web: Web, at: Float64Array, openness: number): RestPose {
  const rounds = web.rows.filter((row) => row.wraps && row.setInto < 0);
  const start = wayOf(web, at, rounds.slice(0, ROWS_TOLD));
  const end = wayOf(web, at, rounds.slice(-ROWS_TOLD));
  if (!start || !end || openness < LEAST_OPEN) return lying(web, at);
  const startShut = web.rows.some((row) => row.centre);
  const hasHeel = web.rows.some((row) => row.partial || row.setInto >= 0);
  if (hasHeel && Math.acos(Math.max(-1, Math.min(1, dot(start, end)))) > LEAST_BEND) {
    const up = startShut ? end : times(start, -1);
    const toe = startShut ? times(start, -1) : end;
    return posed(unit(across(times(toe, -1), up), [1, 0, 0]), up, -0.45, 0.12);
  }
  const whole = wayOf(web, at, rounds) ?? start;
  const up = startShut ? times(whole, -1) : whole;
  const ring = rounds[0]!;
  const back = unit(across(plus(pointAt(at, ring.first), middleOf(web, at, ring), -1), up), [0, 1, 0]);
  return posed(unit(cross(up, times(back, -1)), [1, 0, 0]), up, 0, 0.25);
}

/** The way of growth over some rounds: out of their rings and from the first to the last middle. */
function wayOf(web: Web, at: Float64Array, rounds: readonly WebRow[]): Vector | null {
  const first = rounds[0];
  const last = rounds.at(-1);
  if (!first || !last || first === last) return null;
  const way = plus(middleOf(web, at, last), middleOf(web, at, first), -1);
  return lengthOf(way) < 1e-6 ? null : unit(way);
}

function middleOf({ count }: Web, at: Float64Array, { first, end }: { readonly first: number; readonly end: number }): Vector {
  let middle: Vector = [0, 0, 0];
  for (let i = first; i < end && i < count; i++) middle = plus(middle, pointAt(at, i), 1 / (end - first));
  return middle;
}

/** Facing the viewer: right side by the mean normal, rows of a panel upwards, the start of a disc's rounds at its foot. */
function lying(web: Web, at: Float64Array): RestPose {
  const { left, right, baseStart, bases, count } = web;
  let facing: Vector = [0, 0, 0];
  let up: Vector = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    if (baseStart[i] === baseStart[i + 1] || (left[i]! < 0 && right[i]! < 0)) continue;
    const rise = plus(pointAt(at, i), pointAt(at, bases[baseStart[i]!]!), -1);
    up = plus(up, rise);
    facing = plus(facing, cross(plus(pointAt(at, right[i]! < 0 ? i : right[i]!), pointAt(at, left[i]! < 0 ? i : left[i]!), -1), rise));
  }
  const z = unit(facing);
  const rounds = web.rows.filter((row) => row.wraps);
  const last = rounds.at(-1);
  if (last) up = plus(middleOf(web, at, last), pointAt(at, last.first), -1);
  const y = unit(across(up, z), unit(across([0, 1, 0], z), [1, 0, 0]));
  return posed(unit(cross(y, z), [1, 0, 0]), y, 0, 0);
}

function posed(x: Vector, y: Vector, yawRad: number, pitchRad: number): RestPose {
  return { x, y, z: unit(cross(x, y)), yawRad, pitchRad };
}
