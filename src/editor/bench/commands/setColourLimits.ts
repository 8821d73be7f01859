import type { ColourLimits } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** From where on the checks ask; what is `undefined` is as the technique has it. No step where nothing changes. */
export function setColourLimits(change: { readonly [F in keyof ColourLimits]?: ColourLimits[F] | undefined }): Command {
  return ({ pattern, at }) => {
    const told = Object.fromEntries(Object.entries({ ...pattern.colourLimits, ...change }).filter(([, value]) => value !== undefined)) as ColourLimits;
    const limits = Object.keys(told).length > 0 ? told : null;
    if (JSON.stringify(limits) === JSON.stringify(pattern.colourLimits ?? null)) return null;
    return { label: 'Limits of the colours', at, edits: [{ kind: 'setColourLimits', limits }] };
  };
}
