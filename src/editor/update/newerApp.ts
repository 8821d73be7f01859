/**
 * Tells when a newer Turnwork has been fetched and waits. `use` lets it take over and loads the page anew; until then
 * nothing changes. Returns how to stop.
 */
export function newerApp(tell: (use: () => void) => void): () => void {
  if (!('serviceWorker' in navigator)) return () => undefined;
  let isOver = false;
  let isAsked = false;
  const reload = () => isAsked && location.reload();
  navigator.serviceWorker.addEventListener('controllerchange', reload);
  void navigator.serviceWorker.ready.then((registration) => {
    if (isOver) return;
    const look = () => {
      const { waiting } = registration;
      if (isOver || !waiting || !navigator.serviceWorker.controller) return;
      tell(() => {
        isAsked = true;
        waiting.postMessage('take over');
      });
    };
    look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
  });
  return () => {
    isOver = true;
    navigator.serviceWorker.removeEventListener('controllerchange', reload);
  };
}
