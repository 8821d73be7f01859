import type { SolidView } from '../../engine/6-drawing/solidView.ts';

/** A view with how large it is shown (1: all of it fits). */
export interface SolidLook extends SolidView {
  readonly zoom: number;
}

/** What turns a solid: dragging moves its front along, keys turn it by steps. */
export type Turn = 'left' | 'right' | 'up' | 'down' | 'larger' | 'smaller' | 'reset';

const STEP_RAD = Math.PI / 12;
const FINE_RAD = Math.PI / 60;
const ZOOM_STEP = 1.25;
const MOST_ZOOM = 8;
const KEYS: Readonly<Record<string, Turn>> = {
  ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down', '+': 'larger', '=': 'larger', '-': 'smaller', '0': 'reset', Home: 'reset',
};

/** What a key does; null for keys that do nothing here. */
export function turnOfKey(key: string): Turn | null {
  return Object.hasOwn(KEYS, key) ? KEYS[key]! : null;
}

/** A look turned by one step (`fine`: a small one); `rest` is what it is set back to. */
export function turnBy(look: SolidLook, turn: Turn, rest: SolidView, fine = false): SolidLook {
  const step = fine ? FINE_RAD : STEP_RAD;
  switch (turn) {
    case 'left': return turned(look, -step, 0);
    case 'right': return turned(look, step, 0);
    case 'up': return turned(look, 0, -step);
    case 'down': return turned(look, 0, step);
    case 'larger': return zoomed(look, ZOOM_STEP);
    case 'smaller': return zoomed(look, 1 / ZOOM_STEP);
    case 'reset': return { ...rest, zoom: 1 };
  }
}

/** A look after a drag by shares of the picture's width: its whole width is half a turn. */
export function dragBy(look: SolidLook, xShare: number, yShare: number): SolidLook {
  return turned(look, xShare * Math.PI, yShare * Math.PI);
}

/** A look enlarged by a factor, never smaller than all of it. */
export function zoomed(look: SolidLook, factor: number): SolidLook {
  return { ...look, zoom: Math.max(1, Math.min(MOST_ZOOM, look.zoom * factor)) };
}

/** Part of the way (0 … 1) from one look to another, the short way round. */
export function between(from: SolidLook, to: SolidLook, share: number): SolidLook {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return { yawRad: mix(to.yawRad - wrapped(to.yawRad - from.yawRad), to.yawRad), pitchRad: mix(from.pitchRad, to.pitchRad), zoom: mix(from.zoom, to.zoom) };
}

/** A look in words, from the front; degrees rounded. */
export function lookWords(look: SolidLook): string {
  const degrees = (rad: number): number => Math.round((rad * 180) / Math.PI);
  const yaw = degrees(wrapped(look.yawRad));
  const pitch = degrees(look.pitchRad);
  const parts = [
    ...(yaw === 0 ? [] : [Math.abs(yaw) === 180 ? 'from behind' : `turned ${Math.abs(yaw)}° to the ${yaw > 0 ? 'right' : 'left'}`]),
    ...(pitch === 0 ? [] : [`${Math.abs(pitch)}° from ${pitch > 0 ? 'above' : 'below'}`]),
    ...(look.zoom > 1.01 ? [`${look.zoom.toFixed(1)} times as large`] : []),
  ];
  return parts.length === 0 ? 'Seen from the front.' : `Seen ${parts.join(', ')}.`;
}

function turned(look: SolidLook, yawRad: number, pitchRad: number): SolidLook {
  return { ...look, yawRad: wrapped(look.yawRad + yawRad), pitchRad: Math.max(-Math.PI / 2, Math.min(Math.PI / 2, look.pitchRad + pitchRad)) };
}

/** An angle as -π … π. */
function wrapped(rad: number): number {
  const whole = 2 * Math.PI;
  return rad - whole * Math.round(rad / whole);
}
