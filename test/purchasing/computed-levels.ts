import type { TestBook } from '../book/book.js';

// What the alerts of a practice say of its reorder points, beside what ordering says of the same facts.

interface ComputedLevel {
  readonly on: string;
  readonly reorderPoint: string;
  readonly orders: boolean;
}

export interface LowAlert {
  readonly kind: string;
  readonly consumable: { readonly id: string };
  readonly sentence: string;
  readonly level: {
    readonly kind: string;
    readonly at: string;
    readonly heldBack: boolean;
    readonly computed: ComputedLevel | null;
  } | null;
  readonly figures: readonly { readonly name: string; readonly value: string }[];
}

interface Item {
  readonly consumable: { readonly id: string; readonly name: string };
  readonly next: string;
  readonly reorderPoint: string | null;
  readonly orderUpTo: string | null;
  readonly position: string;
  readonly byHand: boolean;
  readonly packs: number;
}

export async function lowAlerts(book: TestBook): Promise<ReadonlyMap<string, LowAlert>> {
  const { alerts } = await book.done<{ alerts: LowAlert[] }>('GET', '/reorder/alerts');
  const low = alerts.filter(({ kind }) => kind === 'below reorder point');
  return new Map(low.map((alert) => [alert.consumable.id, alert]));
}

export function figureIn(alert: LowAlert | undefined, name: string): string | undefined {
  return alert?.figures.find((each) => each.name === name)?.value;
}

export interface Disagreement {
  readonly item: string;
  readonly ordering: unknown;
  readonly alert: unknown;
}

/**
 * Every way in which ordering and the alerts contradict each other, over all items: one orders what the
 * other is silent about, or they tell other figures. `typedIn`: the levels typed in at consumables.
 */
export async function disagreements(
  book: TestBook,
  typedIn: ReadonlyMap<string, number>,
): Promise<{ readonly compared: number; readonly due: number; readonly wrong: Disagreement[] }> {
  const { items } = await book.done<{ items: Item[] }>('GET', '/reorder/items');
  const alerts = await lowAlerts(book);
  const wrong: Disagreement[] = [];
  let due = 0;
  for (const item of items) {
    const alert = alerts.get(item.consumable.id);
    const ordering = saidByOrdering(item, typedIn.get(item.consumable.id));
    const told = alert === undefined ? 'silent' : saidByAlert(alert, item);
    if (ordering !== 'silent') due += 1;
    if (JSON.stringify(ordering) === JSON.stringify(told)) continue;
    wrong.push({ item: item.consumable.name, ordering, alert: told });
  }
  return { compared: items.length, due, wrong };
}

function saidByOrdering(item: Item, typedIn: number | undefined): unknown {
  const orders = item.next === 'order now' || item.next === 'held back';
  const { position, reorderPoint } = item;
  if (typedIn !== undefined && !item.byHand && Number(position) <= typedIn) {
    return { kind: 'typed in', position, computed: reorderPoint, orders };
  }
  if (!orders) return 'silent';
  return {
    ...{ kind: item.byHand ? 'set in planning' : 'computed', position, reorderPoint },
    ...{ upTo: item.orderUpTo, held: item.next === 'held back', packs: item.packs },
  };
}

function saidByAlert(alert: LowAlert, { next }: Item): unknown {
  const { level } = alert;
  const position = figureIn(alert, 'position');
  if (level?.kind === 'typed in') {
    const { reorderPoint, orders } = level.computed ?? { reorderPoint: null, orders: false };
    return { kind: level.kind, position, computed: reorderPoint, orders };
  }
  return {
    ...{ kind: level?.kind, position, reorderPoint: level?.at },
    ...{ upTo: figureIn(alert, 'reorder up to'), held: next === 'held back' && level?.heldBack },
    packs: Number(figureIn(alert, 'suggested packs') ?? 0),
  };
}
