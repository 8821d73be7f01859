/** Runs something once what is on the page now has been painted: in a task after the next frame. Returns how to call it off. */
export function afterPaint(run: () => void): () => void {
  let timer = 0;
  const frame = requestAnimationFrame(() => (timer = window.setTimeout(run, 0)));
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
