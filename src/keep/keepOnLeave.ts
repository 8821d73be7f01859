import type { Desk } from './desk.ts';

/**
 * Writes what waits when the page is hidden or left (a phone may end it without another word), and asks before a page is
 * closed whose changes could not be kept. Returns the function that stops it.
 */
export function keepOnLeave(desk: Pick<Desk, 'flush' | 'settle' | 'state'>, page: Window = window): () => void {
  const flush = () => void desk.flush();
  const onVisibility = () => {
    if (page.document.visibilityState === 'hidden') void desk.settle();
  };
  const onLeave = (event: BeforeUnloadEvent) => {
    const { status, unkept } = desk.state();
    flush();
    if (unkept && (status === 'failed' || status === 'overtaken')) event.preventDefault();
  };
  page.addEventListener('pagehide', flush);
  page.addEventListener('beforeunload', onLeave);
  page.document.addEventListener('visibilitychange', onVisibility);
  return () => {
    page.removeEventListener('pagehide', flush);
    page.removeEventListener('beforeunload', onLeave);
    page.document.removeEventListener('visibilitychange', onVisibility);
  };
}
