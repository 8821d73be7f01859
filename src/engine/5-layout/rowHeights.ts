import { stitchCode, stitchRow, STITCHES } from '../craft/stitches.ts';
import { FLAG } from '../3-fabric/fabric.ts';
import { stitchHeight } from './ground.ts';
import type { Ground } from './ground.ts';
import type { SlotPlan } from './placeRow.ts';

const CHAIN = stitchCode('ch');
const POST = FLAG.frontPost | FLAG.backPost;

/**
 * Head heights: by parents, so that mixed heights wave; then smoothed along the row so that they don't zigzag. A stitch round
 * a post begins lower than its base's head, so among others it ends level with them.
 */
export function rowHeights(ground: Ground, slots: Int32Array, stack: readonly [number, number], has: number, baseY: number, plan: SlotPlan): void {
  const count = slots.length;
  const y = plan.y;
  const { flags, kind } = ground.fabric;
  const held = (has & POST) !== 0 && (stack[1] > stack[0] || slots.some((slot) => !(flags[slot]! & POST) && kind[slot] !== CHAIN));
  let before = -1;
  for (let i = 0; i < count; i++) {
    y[i] = Number.isNaN(plan.baseY[i]!) || (held && flags[slots[i]!]! & POST) ? NaN : plan.baseY[i]! - slotHeight(ground, slots[i]!, stack);
    if (Number.isNaN(y[i]!)) continue;
    for (let k = before + 1; k < i; k++) y[k] = before < 0 ? y[i]! : y[before]! + ((y[i]! - y[before]!) * (k - before)) / (i - before);
    before = i;
  }
  for (let k = before + 1; k < count; k++) y[k] = before < 0 ? baseY - slotHeight(ground, slots[k]!, stack) : y[before]!;
  if (level(y)) return;
  const rough = y.slice();
  for (let i = 0; i < count; i++) {
    const left = rough[i - 1] ?? rough[i + 1] ?? rough[i]!;
    const right = rough[i + 1] ?? left;
    y[i] = 0.65 * rough[i]! + 0.35 * (left === right ? left : (left + right) / 2);
  }
}

function level(y: Float64Array): boolean {
  for (let i = 1; i < y.length; i++) {
    if (Math.abs(y[i]! - y[0]!) > 1e-9) return false;
  }
  return true;
}

/** Height of a slot in mm; a turning chain reaches as high as the stitch it stands for. */
function slotHeight(ground: Ground, slot: number, stack: readonly [number, number]): number {
  if (slot < stack[0] || slot >= stack[1]) return stitchHeight(ground, slot);
  const chains = stack[1] - stack[0];
  const stands = STITCHES.find((row) => row.turningChains === chains && row.legs === 0);
  return (stands ? stands.height : chains * stitchRow('ch').height) * ground.h;
}
