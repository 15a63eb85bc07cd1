/** The items of a list under the key that each one has, in the order of the list. */
export function listsBy<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
): ReadonlyMap<string, readonly T[]> {
  const lists = new Map<string, T[]>();
  for (const item of items) {
    const list = lists.get(keyOf(item));
    if (list) list.push(item);
    else lists.set(keyOf(item), [item]);
  }
  return lists;
}
