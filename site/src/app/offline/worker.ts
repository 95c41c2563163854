/**
 * The crew app's service worker: opens the app with no signal, from files that were checked by their content's hash. It
 * touches the app's own files and nothing else: no answer of the API and no page outside `/crew/` ever passes through
 * it or is kept by it. Built into `/crew/sw.js` by `site/offlineBuild.ts`, which puts `BUILD` before it; it imports
 * nothing, so that its text alone is its version.
 */
declare const self: ServiceWorkerGlobalScope;

interface Build {
  readonly version: string;
  /** The app's page; every place inside the app is behind its fragment. */
  readonly page: string;
  /** Every file that the app can ask for. `fixed`: its name changes with its content. */
  readonly files: readonly { readonly url: string; readonly sha256: string; readonly fixed: boolean }[];
}
declare const BUILD: Build;

const PREFIX = 'hsl-crew-';
const own = PREFIX + BUILD.version;
const known = new Set(BUILD.files.map(({ url }) => url));
/** Phones on a bad line take few at a time. */
const AT_ONCE = 4;

const hex = (bytes: ArrayBuffer): string =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** The file as this build has it: from an earlier version's cache, or from the server. Throws when it is another. */
async function exact({ url, sha256, fixed }: Build['files'][number]): Promise<Response> {
  const kept = fixed ? await caches.match(url) : undefined;
  // A file with its hash in its name is in the browser's own cache already; the page is asked for anew.
  const response = kept ?? (await fetch(url, { cache: fixed ? 'default' : 'no-cache', credentials: 'omit' }));
  if (!response.ok || response.redirected) throw new Error(`${url} answered ${response.status}`);
  const bytes = await response.clone().arrayBuffer();
  if (hex(await crypto.subtle.digest('SHA-256', bytes)) !== sha256)
    throw new Error(`${url} is of another build`);
  return response;
}

/** All or nothing: one file that cannot be had, or is of another build, leaves the version before in charge. */
async function install(): Promise<void> {
  const cache = await caches.open(own);
  const left = [...BUILD.files];
  const take = async (): Promise<void> => {
    for (let file = left.shift(); file !== undefined; file = left.shift())
      await cache.put(file.url, await exact(file));
  };
  await Promise.all(Array.from({ length: AT_ONCE }, take));
}

/** The version before stays: a form that was opened with it may still ask for one of its files. */
async function tidy(): Promise<void> {
  const older = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== own);
  for (const name of older.slice(0, -1)) await caches.delete(name);
}

/** Where the browser can be told so, what is sent and what the API answers does not even wake this worker. */
interface Routing {
  addRoutes?: (rules: readonly { readonly condition: object; readonly source: 'network' }[]) => Promise<void>;
}
const past = [
  { condition: { requestMethod: 'POST' }, source: 'network' },
  { condition: { requestMethod: 'PUT' }, source: 'network' },
  { condition: { urlPattern: '/api/*' }, source: 'network' },
] as const;

self.addEventListener('install', (event) => {
  void (event as Routing).addRoutes?.(past).catch(() => undefined);
  event.waitUntil(
    install().catch(async (error: unknown) => {
      await caches.delete(own);
      throw error;
    }),
  );
});

self.addEventListener('activate', (event) => {
  // The page that brought this worker here asks it for its later parts at once.
  event.waitUntil(tidy().then(() => self.clients.claim()));
});

// Only a page says when: never under a form that nobody asked.
self.addEventListener('message', (event) => {
  if (event.data === 'take-over') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    if (url.pathname === BUILD.page) event.respondWith(fromCache(BUILD.page, request, own));
    return;
  }
  if (known.has(url.pathname)) event.respondWith(fromCache(url.pathname, request, own));
  // A part of the version before, for a form that was opened with it.
  else if (url.pathname.startsWith('/_assets/')) event.respondWith(fromCache(url.pathname, request, null));
});

async function fromCache(path: string, request: Request, name: string | null): Promise<Response> {
  const kept = await caches.match(path, name === null ? {} : { cacheName: name });
  return kept ?? fetch(request);
}
