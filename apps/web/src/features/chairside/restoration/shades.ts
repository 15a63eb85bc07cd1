import type { Consumable } from '../api/list-consumables.js';

/** Pastes are what has a shade; of these, what its category calls a composite, if any is called so. */
export function shadesOf(consumables: readonly Consumable[]): Consumable[] {
  const shaded = consumables.filter(({ shade }) => shade !== null && shade !== '');
  const composites = shaded.filter(({ category }) => /[ck]ompos/i.test(category));
  return composites.length > 0 ? composites : shaded;
}

const FEW = 6;

/** What is offered at once: what is chosen and what was used lately; all, where that is little. */
export function nearShades(
  shades: readonly Consumable[],
  recent: readonly string[],
  chosen: readonly string[],
): Consumable[] {
  if (shades.length <= FEW) return [...shades];
  const wanted = [...recent.slice(0, FEW), ...chosen.filter((id) => !recent.includes(id))];
  return wanted.flatMap((id) => shades.find((shade) => shade.id === id) ?? []);
}

export interface ShadeGroup {
  readonly product: string;
  readonly shades: readonly Consumable[];
}

/** All shades, by product. */
export function byProduct(shades: readonly Consumable[]): ShadeGroup[] {
  const groups = new Map<string, Consumable[]>();
  for (const shade of shades) groups.set(shade.name, [...(groups.get(shade.name) ?? []), shade]);
  return [...groups].map(([product, of]) => ({
    product,
    shades: of.toSorted((a, b) => (a.shade ?? '').localeCompare(b.shade ?? '')),
  }));
}
