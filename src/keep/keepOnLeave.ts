import type { Keeper } from './keeper.ts';

/**
 * Writes what waits when the page is hidden or left (a phone may end it without another word), and asks before a page is
 * closed whose changes could not be kept. Returns the function that stops it.
 */
export function keepOnLeave(keeper: Keeper, page: Window = window): () => void {
  const flush = () => void keeper.flush();
  const onVisibility = () => {
    if (page.document.visibilityState === 'hidden') flush();
  };
  const onLeave = (event: BeforeUnloadEvent) => {
    const { status, hasUnkept } = keeper.state();
    flush();
    if (hasUnkept && (status === 'failed' || status === 'overtaken')) event.preventDefault();
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
