type Given<T extends object> = { [K in keyof T]: Exclude<T[K], undefined> };

/** A question without what is not asked. */
export function given<T extends object>(query: T): Given<T> {
  const entries = Object.entries(query).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as Given<T>;
}
