/** Runs something once what is on the page now has been painted and shown: in a task after the frame after next. Returns how to call it off. */
export function afterPaint(run: () => void): () => void {
  let timer = 0;
  let frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(() => (timer = window.setTimeout(run, 0)));
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
