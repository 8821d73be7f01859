/** A press that moves less is a press. */
const SLACK_PX = 6;

/**
 * Lets something be dragged from an element onto the chart. `start` is told once it moves; over the chart, the chart is
 * told that the pointer hovers, so that it points at stitches as ever; `drop` is told where it is let go over the chart.
 * Returns the function that stops it.
 */
export function dragOntoChart(element: HTMLElement, start: () => void, drop: () => void): () => void {
  let press: { readonly id: number; readonly x: number; readonly y: number; isDrag: boolean } | null = null;
  let swallow = false;

  const chartUnder = (event: PointerEvent) => document.elementFromPoint(event.clientX, event.clientY)?.closest<HTMLElement>('.chart') ?? null;

  function down(event: PointerEvent): void {
    swallow = false;
    if (event.button !== 0) return;
    press = { id: event.pointerId, x: event.clientX, y: event.clientY, isDrag: false };
    element.setPointerCapture(event.pointerId);
  }
  function move(event: PointerEvent): void {
    if (!press || event.pointerId !== press.id) return;
    if (!press.isDrag) {
      if (Math.hypot(event.clientX - press.x, event.clientY - press.y) < SLACK_PX) return;
      press.isDrag = true;
      start();
    }
    const { clientX, clientY } = event;
    chartUnder(event)?.dispatchEvent(new PointerEvent('pointermove', { clientX, clientY, pointerType: 'mouse', bubbles: true }));
  }
  function up(event: PointerEvent): void {
    const before = press;
    press = null;
    if (!before?.isDrag) return;
    swallow = true;
    if (event.type !== 'pointerup' || !chartUnder(event)) return;
    // The chart points at stitches once a frame.
    requestAnimationFrame(() => requestAnimationFrame(drop));
  }
  /** The press that was a drag is no click on the element. */
  function click(event: MouseEvent): void {
    if (!swallow) return;
    swallow = false;
    event.stopImmediatePropagation();
    event.preventDefault();
  }

  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', up);
  element.addEventListener('click', click, true);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', up);
    element.removeEventListener('click', click, true);
  };
}
