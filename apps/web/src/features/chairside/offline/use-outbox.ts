import { useSyncExternalStore } from 'react';
import { readOutbox, subscribe, type Waiting } from './outbox.js';

export function useOutbox(): readonly Waiting[] {
  return useSyncExternalStore(subscribe, readOutbox);
}

function onNetwork(listener: () => void): () => void {
  window.addEventListener('online', listener);
  window.addEventListener('offline', listener);
  return () => {
    window.removeEventListener('online', listener);
    window.removeEventListener('offline', listener);
  };
}

/** What the browser thinks of the network; a service that is away it does not see. */
export function useOnline(): boolean {
  return useSyncExternalStore(onNetwork, () => navigator.onLine);
}
