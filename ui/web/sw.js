// The service worker: it keeps the whole app, so that it starts without a network.
//
// One cache holds one build, every file checked against the hash it was built with, so that what
// is served is never half an old build and half a new one. A newer build is fetched beside it and
// takes over when no page of the older one is open, or when a page that has only just been opened
// asks for it and is the only one: never while a throw is being worked.

const BUILD = 'BUILD';
const FILES = /* FILES */ {};
const CACHE = `lapwork-${BUILD}`;
const SHARED = 'lapwork-shared';

const KINDS = {
  css: 'text/css; charset=utf-8',
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  png: 'image/png',
  svg: 'image/svg+xml',
  wasm: 'application/wasm',
  webmanifest: 'application/manifest+json',
};

const scope = () => self.registration.scope;
const address = (path) => new URL(path, scope()).href;

async function fetched(path, hash) {
  const answer = await fetch(address(path), { cache: 'no-cache', credentials: 'same-origin' });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  if (btoa(String.fromCharCode(...digest)) !== hash) throw new Error(`${path} is of another build`);
  const kind = KINDS[path.slice(path.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
  const headers = { 'Content-Type': kind, 'X-Content-Type-Options': 'nosniff' };
  return new Response(bytes, { headers });
}

async function install() {
  const all = Object.entries(FILES);
  const answers = await Promise.all(all.map(([path, hash]) => fetched(path, hash)));
  const cache = await caches.open(CACHE);
  await Promise.all(all.map(([path], n) => cache.put(address(path), answers[n])));
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith('lapwork-') && name !== CACHE && name !== SHARED) await caches.delete(name);
  }
  await self.clients.claim();
}

async function kept(request) {
  const cache = await caches.open(CACHE);
  const isPage = request.mode === 'navigate';
  const url = new URL(request.url);
  const { pathname } = new URL(scope());
  const path = isPage && url.pathname === pathname ? 'index.html' : null;
  const found = await cache.match(path === null ? url.origin + url.pathname : address(path));
  return found ?? fetch(request);
}

/** A file shared with the app: put aside until the page that opens takes it. */
async function shared(request) {
  const file = (await request.formData()).get('file');
  if (file instanceof File) {
    const cache = await caches.open(SHARED);
    const headers = { 'X-Name': encodeURIComponent(file.name) };
    await cache.put(address('shared'), new Response(file, { headers }));
  }
  return Response.redirect(address('./?shared'), 303);
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (!request.url.startsWith(scope())) return;
  if (request.method === 'POST' && request.url === address('shared')) {
    event.respondWith(shared(request));
  } else if (request.method === 'GET') event.respondWith(kept(request));
});

self.addEventListener('message', (event) => {
  if (event.data === 'build') event.ports[0]?.postMessage(BUILD);
  if (event.data === 'take over') {
    const alone = async () => {
      const all = { type: 'window', includeUncontrolled: true };
      // A page that was loaded again stands beside its former self for a moment.
      for (let tries = 0; tries < 8; tries += 1) {
        if ((await self.clients.matchAll(all)).length === 1) return self.skipWaiting();
        await new Promise((done) => setTimeout(done, 250));
      }
    };
    event.waitUntil(alone());
  }
});
