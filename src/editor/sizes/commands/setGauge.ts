import { dequal } from 'dequal/lite';
import type { Swatch } from '../../../engine/1-pattern/pieceFacts.ts';
import type { Command } from '../../bench/benchState.ts';

/** Takes the pattern's gauge, and its hook where that is known, from a swatch: over 10 cm, fractions kept. */
export function setGauge({ stitch, stitches, widthCm, rows, heightCm, hookMm }: Swatch): Command {
  return ({ pattern, at }) => {
    const gauge = { stitches: Number(((stitches * 10) / widthCm).toFixed(2)), rows: Number(((rows * 10) / heightCm).toFixed(2)), overCm: 10, stitch };
    const isGauge = dequal(gauge, pattern.gauge);
    const isHook = hookMm === null || hookMm === pattern.hookMm;
    if (isGauge && isHook) return null;
    return { label: 'Take the gauge from the swatch', at, edits: [{ kind: 'set', field: 'gauge', value: gauge }, ...(isHook ? [] : [{ kind: 'set', field: 'hookMm', value: hookMm } as const])] };
  };
}
