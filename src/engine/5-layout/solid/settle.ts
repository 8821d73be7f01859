import { headNormals } from './headNormals.ts';
import { sweep } from './relax.ts';
import type { Springs } from './springs.ts';
import type { Web } from './web.ts';

/** Sweeps over the whole piece. More is worse: the bend of a heel is nearly free and drifts. */
const SWEEPS = 250;
const MOMENTUM = 0.9;
/** Nothing moves on by more than a stitch a sweep. */
const FASTEST = 1;
/** What lies in a plane is grown nearly at rest, and springs in a plane fold over when they are driven: a few sweeps without momentum. */
const PLANE_SWEEPS = 60;
/** Push outwards at the start, stitch widths a sweep; goes down to nothing. */
const PRESSURE = 0.02;
const SWEEPS_A_NORMAL = 4;
/** A piece is filled the more the more open it is, fully from a third on; discs are not. */
const FILLING = 3;

/**
 * Lets a grown piece settle, in place: momentum, springs, and a push outwards that stands for a foot or for stuffing. `openness` as
 * grown; `plane` for a piece that lies in one. `onShare` is told what share of the sweeps is done.
 */
export function settle(web: Web, springs: Springs, at: Float64Array, openness: number, plane: boolean, onShare: (share: number) => void = () => undefined): void {
  const before = at.slice();
  const normals = new Float64Array(at.length);
  const full = plane ? 0 : PRESSURE * Math.min(1, FILLING * openness);
  const momentum = plane ? 0 : MOMENTUM;
  const sweeps = plane ? PLANE_SWEEPS : SWEEPS;
  for (let k = 0; k < sweeps; k++) {
    if (full > 0 && k % SWEEPS_A_NORMAL === 0) headNormals(web, at, normals);
    const pressure = full * (1 - k / sweeps);
    for (let c = 0; c < at.length; c++) {
      const here = at[c]!;
      at[c] = here + Math.max(-FASTEST, Math.min(FASTEST, momentum * (here - before[c]!))) + pressure * normals[c]!;
      before[c] = here;
    }
    sweep(at, springs, 0, springs.a.length, k % 2 === 1);
    onShare((k + 1) / sweeps);
  }
}
