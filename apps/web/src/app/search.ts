/**
 * The state of a screen is in its address. A screen says which words it reads from there; everything
 * else in the address is left out, and what is not valid counts as not given.
 */
type Reader<T extends string> = (raw: string) => T | undefined;

export const text =
  (longest = 200): Reader<string> =>
  (raw) =>
    raw.trim() === '' || raw.length > longest ? undefined : raw;

export function choice<const T extends string>(...choices: readonly T[]): Reader<T> {
  return (raw) => choices.find((one) => one === raw);
}

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
export const id: Reader<string> = (raw) => (ID.test(raw) ? raw.toLowerCase() : undefined);

export const day: Reader<string> = (raw) =>
  /^\d{4}-\d{2}-\d{2}$/.test(raw) && !Number.isNaN(Date.parse(raw)) ? raw : undefined;

export const whole =
  (min: number, max: number): Reader<string> =>
  (raw) =>
    /^\d{1,9}$/.test(raw) && Number(raw) >= min && Number(raw) <= max ? raw : undefined;

export type SearchOf<S extends Readonly<Record<string, Reader<string>>>> = {
  readonly [K in keyof S]?: NonNullable<ReturnType<S[K]>> | undefined;
};

/** For `validateSearch`: `searchOf({ q: text(), holdingId: id, sort: choice('expiry', 'value') })`. */
export function searchOf<const S extends Readonly<Record<string, Reader<string>>>>(shape: S) {
  return (raw: Readonly<Record<string, unknown>>): SearchOf<S> => {
    const found: Record<string, string | undefined> = {};
    for (const [name, read] of Object.entries(shape)) {
      const value = raw[name];
      // The router lays this over what the address says, so what is not valid is set to undefined.
      found[name] = typeof value === 'string' ? read(value) : undefined;
    }
    return found as SearchOf<S>;
  };
}

/** Addresses hold plain words, not JSON: /today?kind=open+shortfall */
export function parseSearch(search: string): Record<string, string> {
  return Object.fromEntries(new URLSearchParams(search));
}

export function writeSearch(search: Readonly<Record<string, unknown>>): string {
  const words = new URLSearchParams();
  for (const [name, value] of Object.entries(search)) {
    if (value !== undefined && value !== null && value !== '') words.set(name, String(value));
  }
  const written = words.toString();
  return written === '' ? '' : `?${written}`;
}
