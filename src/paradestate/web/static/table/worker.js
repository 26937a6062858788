/* Opens the table page with no signal. What precedes this text is `KEPT`: the page, the files and
   the version; entries never go this way, they are kept by the page itself. */

const NAME = `table ${KEPT.page} ${KEPT.version}`;

self.addEventListener("install", (event) => event.waitUntil(fetched().then(() => self.skipWaiting())));
self.addEventListener("activate", (event) => event.waitUntil(begun()));
self.addEventListener("fetch", (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== "GET" || address.origin !== self.location.origin) return;
  if (address.pathname === KEPT.page || KEPT.files.includes(address.pathname)) {
    event.respondWith(kept(address.pathname, event.request));
  }
});

/* All of it or nothing: a page of pairing, which comes in its place, isn't taken for it. */
async function fetched() {
  const cache = await caches.open(NAME);
  await Promise.all([KEPT.page, ...KEPT.files].map(async (path) => {
    const answer = await fetch(path, {cache: "no-cache", redirect: "error"});
    if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
    await cache.put(path, answer);
  }));
}

async function begun() {
  const mine = `table ${KEPT.page} `;
  const old = (await caches.keys()).filter((name) => name.startsWith(mine) && name !== NAME);
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function kept(path, request) {
  const found = await (await caches.open(NAME)).match(path);
  return found ?? fetch(request);
}
