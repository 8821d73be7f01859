import { flushSync, mount } from 'svelte';
import { scaledAbout, type ViewTransform } from '../../../src/editor/chart/viewTransform.ts';
import type { BenchData, Variant } from '../variant.ts';
import Layered from './Layered.svelte';

/** The chart as it ships, driven by the pointer events that a person would make. */
export const layered: Variant = (root, data: BenchData) => {
  const component = mount(Layered, { target: root, props: { data } }) as { edit(stitch: number, yarn: number): void; lay(stitches: readonly number[], yarn: number): void; ghost(stitches: readonly number[], yarn: number): void };
  flushSync();
  const frame = root.querySelector<HTMLElement>('.chart')!;
  const middle = { x: frame.clientWidth / 2, y: frame.clientHeight / 2 };
  let at: ViewTransform = data.whole;
  let held: { x: number; y: number; from: ViewTransform } | null = null;
  const mouse = (target: EventTarget, type: string, x: number, y: number): void => {
    target.dispatchEvent(new MouseEvent(type, { clientX: x, clientY: y, button: 1, bubbles: true, cancelable: true, view: window }));
  };
  return {
    edit: component.edit,
    brush: component.ghost,
    endBrush: component.lay,
    recolour: component.lay,
    isSettled: () => frame.getAttribute('aria-busy') !== 'true',
    view(next) {
      if (next.k !== at.k) {
        const deltaY = -Math.log2(next.k / at.k) / 0.002;
        frame.dispatchEvent(new WheelEvent('wheel', { deltaY, clientX: middle.x, clientY: middle.y, bubbles: true, cancelable: true }));
        at = scaledAbout(at, next.k / at.k, middle.x, middle.y, [0, Infinity]);
        return;
      }
      if (!held) {
        held = { ...middle, from: at };
        mouse(frame, 'mousedown', middle.x, middle.y);
      }
      mouse(window, 'mousemove', held.x + next.x - held.from.x, held.y + next.y - held.from.y);
      at = next;
    },
    rest() {
      if (held) mouse(window, 'mouseup', held.x + at.x - held.from.x, held.y + at.y - held.from.y);
      held = null;
    },
  };
};
