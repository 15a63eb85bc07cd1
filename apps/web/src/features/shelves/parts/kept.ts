import { useEffect } from 'react';

const keyOf = (name: string) => `traybook.${name}`;

/** What was kept under a name in this tab, when it is still of the shape that `read` wants. */
export function readKept<T>(name: string, read: (kept: unknown) => T | undefined): T | undefined {
  const kept = sessionStorage.getItem(keyOf(name));
  return kept === null ? undefined : read(JSON.parse(kept));
}

/** Keeps what somebody is writing over a reload of the page, in this tab; undefined is nothing. */
export function useKeep(name: string, value: unknown): void {
  useEffect(() => {
    if (value === undefined) sessionStorage.removeItem(keyOf(name));
    else sessionStorage.setItem(keyOf(name), JSON.stringify(value));
  }, [name, value]);
}
