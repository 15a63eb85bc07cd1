const SHELL = 'traybook-shell';

/** What this page has loaded below a path of the service. */
function loadedBelow(path: string): string[] {
  return performance
    .getEntriesByType('resource')
    .map(({ name }) => name)
    .filter((name) => name.startsWith(`${location.origin}${path}`));
}

/**
 * Lets this screen load again without a network. Browsers allow that on https and on localhost only;
 * elsewhere what was entered is kept all the same, and the page must stay open.
 */
export async function keepShell(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator) || !navigator.onLine) return;
  const { serviceWorker } = navigator;
  const isWatched = serviceWorker.controller !== null;
  const watched = new Promise((resolve) =>
    serviceWorker.addEventListener('controllerchange', resolve, { once: true }),
  );
  const worker = await serviceWorker.register('/offline.js');
  await keepLoaded();
  if (isWatched) return;
  // The first time on a device, what came before the worker took over has passed it by.
  await watched;
  await keepLoaded();
  worker.active?.postMessage([...new Set(loadedBelow('/api/'))]);
}

async function keepLoaded(): Promise<void> {
  const shell = await caches.open(SHELL);
  const wanted = ['/', '/mark.svg', ...loadedBelow('/assets/')];
  const there = await shell.keys();
  const kept = new Set(there.map(({ url }) => url));
  const urls = wanted.map((path) => new URL(path, location.origin).href);
  // The page itself is taken anew each time: it names the scripts of this version.
  await shell.addAll(urls.filter((url) => !kept.has(url) || url === `${location.origin}/`));
  if (kept.has(entryScript())) return;
  // Another version: what it does not name is of the one before.
  const old = there.filter(({ url }) => !urls.includes(url));
  await Promise.all(old.map((request) => shell.delete(request)));
}

/** The script that the page begins with; its name tells the version. */
function entryScript(): string {
  return document.querySelector<HTMLScriptElement>('script[type="module"][src]')?.src ?? '';
}
