import type { PlannedItem } from './api/planned-items.js';
import { nameOf } from './names.js';

export const ITEM_SORTS = ['name', 'week', 'left', 'next'] as const;
export type ItemSort = (typeof ITEM_SORTS)[number];

/** What comes next, the most urgent first. */
export const NEXTS = [
  'order now',
  'held back',
  'no offer',
  'order later',
  'nothing expected',
] as const satisfies readonly PlannedItem['next'][];

/** One answer holds all items, so they are sorted here; ties by name. */
export function sortItems(items: readonly PlannedItem[], sort: ItemSort): PlannedItem[] {
  const byName = (a: PlannedItem, b: PlannedItem) =>
    nameOf(a.consumable).localeCompare(nameOf(b.consumable));
  const key = (item: PlannedItem): number => {
    switch (sort) {
      case 'name':
        return 0;
      case 'week':
        return -Number(item.useInWeek);
      case 'left':
        return item.runsOutInDays;
      case 'next':
        return NEXTS.indexOf(item.next) * 10_000 + (item.dueInDays ?? 0);
    }
  };
  return [...items].sort((a, b) => key(a) - key(b) || byName(a, b));
}
