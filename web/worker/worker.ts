// The service worker: opens the built app without a network, where the browser allows one (https, or the
// machine itself). It holds the shell, whole and of one build, and the pictures looked at last. Answers of the
// interface are none of its business: the app keeps the last ones itself and says of when they are.

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build: a name for exactly these files, and their addresses. */
declare const SHELL: { readonly version: string; readonly files: readonly string[] };

const SHELL_CACHE = `rondure-shell-${SHELL.version}`;
const PICTURES = 'rondure-pictures';
/** A bench in two widths and the plants of the last days, some 10 MB. */
const MOST_PICTURES = 150;
const PICTURE = /^\/api\/(views\/[^/]+\/picture|(plants|stands)\/[^/]+\/empty-photo)$/;
const FILES = new Set(SHELL.files);

/** All or nothing: a build is taken in whole, past the browser's own cache, or not at all. */
self.addEventListener('install', (event) => {
  const fetched = SHELL.files.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(SHELL_CACHE).then((cache) => cache.addAll(fetched)));
});

/** Takes over when no page of the build before is open any more; what that one held is swept away. */
self.addEventListener('activate', (event) => {
  const sweep = async () => {
    const old = (await caches.keys()).filter((name) => name !== SHELL_CACHE && name !== PICTURES);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  };
  event.waitUntil(sweep());
});

self.addEventListener('message', (event) => {
  if (event.data === 'take over') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate' && !pathname.startsWith('/api/')) event.respondWith(openApp(request));
  else if (FILES.has(pathname)) event.respondWith(fromShell(pathname, request));
  else if (PICTURE.test(pathname)) event.respondWith(picture(request));
});

/**
 * Every page is the one page of this build. When a newer build waits and no other page is open, it is let in
 * first and the page asked for once more: an update comes with the next opening, and never half.
 */
async function openApp(request: Request): Promise<Response> {
  const { waiting } = self.registration;
  if (waiting && (await self.clients.matchAll({ type: 'window' })).length < 2) {
    waiting.postMessage('take over');
    return new Response('', { headers: { refresh: '0' } });
  }
  return fromShell('/', request);
}

async function fromShell(file: string, request: Request): Promise<Response> {
  const held = await (await caches.open(SHELL_CACHE)).match(file);
  return held ?? fetch(request);
}

/** A picture of a photo never changes, but who may see it does: the server is asked first. */
async function picture(request: Request): Promise<Response> {
  const cache = await caches.open(PICTURES);
  try {
    const answer = await fetch(request);
    if (answer.ok) void keepPicture(cache, request, answer.clone());
    return answer;
  } catch (away) {
    const held = await cache.match(request);
    if (held) return held;
    throw away;
  }
}

async function keepPicture(cache: Cache, request: Request, answer: Response): Promise<void> {
  try {
    await cache.put(request, answer);
    const held = await cache.keys();
    // Keys come in the order they were put in.
    await Promise.all(
      held.slice(0, Math.max(0, held.length - MOST_PICTURES)).map((one) => cache.delete(one)),
    );
  } catch {
    // No room: the picture is then not there without a network.
  }
}
