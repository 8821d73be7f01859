import { flushSync, mount } from 'svelte';
import type { Variant } from '../variant.ts';
import NodePerStitch from './NodePerStitch.svelte';

/** A keyed node per stitch, as one would write it first. */
export const nodePerStitch: Variant = (root, data) => {
  const component = mount(NodePerStitch, { target: root, props: { data } }) as { lay(stitches: readonly number[], yarn: number): void; move(view: { x: number; y: number; k: number }): void };
  flushSync();
  return {
    edit: (stitch, yarn) => component.lay([stitch], yarn),
    brush: (stitches, yarn) => component.lay(stitches.slice(-1), yarn),
    endBrush: (stitches, yarn) => component.lay(stitches.slice(-1), yarn),
    recolour: component.lay,
    isSettled: () => true,
    view: component.move,
    rest() {
      flushSync();
    },
  };
};
