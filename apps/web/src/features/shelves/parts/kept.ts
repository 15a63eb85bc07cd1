import { useEffect, useState } from 'react';

/**
 * What somebody is writing survives a reload of the page, in this tab. `read` says whether what was
 * kept is still of the shape that is wanted.
 */
export function useKept<T>(key: string, initial: T, read: (kept: unknown) => T | undefined) {
  const name = `traybook.${key}`;
  const [value, setValue] = useState<T>(() => readKept(name, read) ?? initial);
  useEffect(() => {
    sessionStorage.setItem(name, JSON.stringify(value));
  }, [name, value]);
  const forget = () => sessionStorage.removeItem(name);
  return { value, setValue, forget };
}

export function readKept<T>(name: string, read: (kept: unknown) => T | undefined): T | undefined {
  const kept = sessionStorage.getItem(name);
  return kept === null ? undefined : read(JSON.parse(kept));
}
