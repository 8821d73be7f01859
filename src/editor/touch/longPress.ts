const LONG_PRESS_MS = 500;
/** A finger that moves less still rests. */
const SLACK_PX = 8;

/**
 * Tells of a finger that rests on a thing, with its place in the window; the lift and the menu of the system that would follow are kept
 * from it. Nothing for mice and pens, which have a button for it, and on fields that take text.
 */
export function longPress(onpress: (x: number, y: number) => void): (thing: HTMLElement) => () => void {
  return (thing) => {
    let timer = 0;
    let from: readonly [number, number] | null = null;
    let isDone = false;
    const stop = () => {
      clearTimeout(timer);
      from = null;
    };
    const down = (event: PointerEvent) => {
      isDone = false;
      stop();
      if (event.pointerType !== 'touch' || !event.isPrimary || (event.target instanceof Element && event.target.closest('input, textarea, select'))) return;
      from = [event.clientX, event.clientY];
      timer = window.setTimeout(() => {
        isDone = true;
        if (from) onpress(...from);
      }, LONG_PRESS_MS);
    };
    const move = (event: PointerEvent) => {
      if (from && Math.hypot(event.clientX - from[0], event.clientY - from[1]) > SLACK_PX) stop();
    };
    const swallow = (event: Event) => {
      if (!isDone) return;
      event.preventDefault();
      event.stopPropagation();
      if (event.type === 'click') isDone = false;
    };
    const listeners = { pointerdown: down, pointermove: move, pointerup: stop, pointercancel: stop, contextmenu: swallow, click: swallow } as const;
    for (const [type, listener] of Object.entries(listeners)) thing.addEventListener(type, listener as EventListener, true);
    return () => {
      stop();
      for (const [type, listener] of Object.entries(listeners)) thing.removeEventListener(type, listener as EventListener, true);
    };
  };
}
