/// <reference types="@sveltejs/kit" />
/// <reference no-default-lib="true" />
/// <reference lib="esnext" />
/// <reference lib="webworker" />
// Keeps the whole app on the device, so that it works without a network. A newer one waits until the page says so.
import { base, build, files, prerendered, version } from '$service-worker';

const worker = globalThis.self as unknown as ServiceWorkerGlobalScope;
const CACHE = `turnwork-${version}`;
const PAGES = new Set(prerendered);
const ALL = [...build, ...files, ...prerendered];

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(ALL)));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) if (name.startsWith('turnwork-') && name !== CACHE) await caches.delete(name);
      await worker.clients.claim();
    })(),
  );
});

worker.addEventListener('message', (event) => {
  if (event.data === 'take over') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== worker.location.origin) return;
  event.respondWith(answer(event.request, url));
});

/** From the device; a page by its path alone, as what it shows is on the device too. */
async function answer(request: Request, url: URL): Promise<Response> {
  const cache = await caches.open(CACHE);
  const path = url.pathname !== `${base}/` && url.pathname.endsWith('/') ? url.pathname.slice(0, -1) : url.pathname;
  const kept = await cache.match(PAGES.has(path) ? path : request);
  if (kept) return kept;
  try {
    return await fetch(request);
  } catch (error) {
    const shelf = request.mode === 'navigate' ? await cache.match(`${base}/`) : undefined;
    if (shelf) return shelf;
    throw error;
  }
}
