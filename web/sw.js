/* BUILD (a name made from the contents of every file) and FILES (what the app consists of, relative
   to this file) are written above when the site is gathered. */
const PREFIX = `identify ${self.registration.scope} `;
const CACHE = PREFIX + BUILD;

self.addEventListener("install", (event) => event.waitUntil(precache()));

/**
 * All files or none: when one fails, the version in use stays and the browser tries again later.
 */
async function precache() {
  const cache = await caches.open(CACHE);
  try {
    await cache.addAll(FILES.map((name) => new Request(name, { cache: "no-cache" })));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

self.addEventListener("activate", (event) => event.waitUntil(takeOver()));

async function takeOver() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(self.registration.scope)) return;
  if (request.mode === "navigate") event.respondWith(page(request));
  else if (OURS.has(request.url.split(/[?#]/)[0])) event.respondWith(file(request));
});

const OURS = new Set(FILES.map((name) => new URL(name, self.registration.scope).href));

/** Our own start page comes from the cache; any other page from the site. */
async function page(request) {
  const address = request.url.split(/[?#]/)[0];
  const start = new URL("./", self.registration.scope).href;
  return address === start || address === `${start}index.html`
    ? file(new Request(start))
    : fetch(request);
}

async function file(request) {
  const cache = await caches.open(CACHE);
  return (await cache.match(request, { ignoreSearch: true })) ?? fetch(request);
}

self.addEventListener("message", (event) => {
  if (event.data === "use it now") self.skipWaiting();
  if (event.data === "which build") event.ports[0].postMessage(BUILD);
});
