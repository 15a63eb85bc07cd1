export type Changes = Record<string, { readonly from: unknown; readonly to: unknown }>;

/** The fields that differ, for the audit trail; undefined when nothing does. */
export function changesBetween<T extends object>(before: T, after: T): Changes | undefined {
  const old = new Map<string, unknown>(Object.entries(before));
  const changed = Object.entries(after).filter(([field, value]) => !same(old.get(field), value));
  if (changed.length === 0) return undefined;
  return Object.fromEntries(
    changed.map(([field, to]) => [field, { from: old.get(field) ?? null, to }]),
  );
}

/** Views hold texts, numbers, flags, null, and plain objects written in one order. */
function same(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
