// The page's offline worker. It serves the version of the page that it came with,
// from the browser's own store, and asks nobody for anything that is in it. A later
// version is fetched beside it and waits until the person takes it. Built by
// offline.mjs, which fills in the two lines below.
const VERSION = '__VERSION__';
const FILES = __FILES__;

const PREFIX = `badgewright ${registration.scope} `;
const STORE = PREFIX + VERSION;
const HOME = registration.scope;
const addressOf = (file) => new URL(file, HOME).href;

/** Files whose name tells their content: the same name is the same file. */
const isNamedByContent = (file) => file.startsWith('assets/');

addEventListener('install', (e) => e.waitUntil(fetchAll()));
addEventListener('activate', (e) => e.waitUntil(takeOver()));
addEventListener('message', (e) => {
  if (e.data === 'use') skipWaiting();
  if (e.data === 'tidy') e.waitUntil(tidy());
});
addEventListener('fetch', (e) => e.respondWith(answer(e.request)));

async function fetchAll() {
  const store = await caches.open(STORE);
  for (const file of FILES) {
    const address = addressOf(file);
    const known = isNamedByContent(file) ? await caches.match(address) : undefined;
    const got = known ?? (await fetch(address, { cache: isNamedByContent(file) ? 'default' : 'no-cache' }));
    if (!got.ok || got.redirected) throw new Error(`${file}: ${got.status}`);
    await store.put(address, got);
  }
}

async function takeOver() {
  await clients.claim();
  await tidy();
}

/** Throws out older versions, once no other tab may still be using one. */
async function tidy() {
  const open = await clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (open.length > 1 || registration.waiting || registration.installing) return;
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== STORE) await caches.delete(name);
  }
}

async function answer(request) {
  const url = new URL(request.url);
  // The page's policy lets nothing else through; nor does this.
  if (url.origin !== location.origin || request.method !== 'GET') return Response.error();
  url.search = '';
  url.hash = '';
  const address = url.href === addressOf('index.html') ? HOME : url.href;
  const here = await (await caches.open(STORE)).match(address);
  // What a tab of an older version still asks for is in that version's store.
  return here ?? (await caches.match(address)) ?? fetch(request);
}
