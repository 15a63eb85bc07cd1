// Lets the chairside screen load again without a network. The network always goes first; what is kept
// here is only used when it is away. `features/chairside/offline/keep-shell.ts` fills the shell.

const SHELL = 'traybook-shell';
const ANSWERS = 'traybook-answers';

/** What the screen cannot be drawn without: who is signed in, and the lists to choose from. */
const KEPT =
  /^\/api\/(session|dentists|locations|consumables|procedure-templates(\/[0-9a-f-]{36})?)$/;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

async function page(request) {
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await (await caches.open(SHELL)).match('/');
    if (kept) return kept;
    throw error;
  }
}

async function asset(request) {
  const shell = await caches.open(SHELL);
  const kept = await shell.match(request);
  if (kept) return kept;
  const response = await fetch(request);
  if (response.ok) await shell.put(request, response.clone());
  return response;
}

async function answer(request) {
  const answers = await caches.open(ANSWERS);
  try {
    const response = await fetch(request);
    if (response.ok) await answers.put(request, response.clone());
    // Whoever is signed out, or has lost a permission, must not see it from here either.
    else if (response.status === 401 || response.status === 403) await caches.delete(ANSWERS);
    return response;
  } catch (error) {
    const kept = await answers.match(request);
    if (kept) return kept;
    throw error;
  }
}

// A page names what it asked for before it was watched here.
self.addEventListener('message', (event) => {
  const missed = event.data.filter((address) => KEPT.test(new URL(address).pathname));
  event.waitUntil(Promise.all(missed.map((address) => answer(new Request(address)))));
});

/** Signing in or out: the answers were for somebody else. */
async function session(request) {
  await caches.delete(ANSWERS);
  return fetch(request);
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (url.pathname === '/api/session' && request.method !== 'GET') {
    event.respondWith(session(request));
  } else if (request.method !== 'GET') {
    return;
  } else if (KEPT.test(url.pathname)) {
    event.respondWith(answer(request));
  } else if (request.mode === 'navigate' && !url.pathname.startsWith('/api/')) {
    event.respondWith(page(request));
  } else if (url.pathname.startsWith('/assets/') || url.pathname === '/mark.svg') {
    event.respondWith(asset(request));
  }
});
