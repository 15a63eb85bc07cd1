import { addDays, type IsoDate } from '#lib/platform';
import { nextWorkday } from './calendar.js';
import { CATALOGUE } from './catalogue.js';
import { SUPPLIERS, type SupplierKey } from './practice.js';
import type { OrderedPacks, OrderPayload, SentOrder, Step } from './steps.js';
import { daysLeft, type Order, type World } from './world.js';

/** Since so many days the practice keeps its orders in the book; goods before came without one. */
const ORDERS_KEPT = 60;
/** What one supplier has owed for weeks: it runs out before today, and the order is late. */
const OWED = ['putty', 'wedge-large', 'cord'] as const;

/** The order behind a delivery of the last weeks; the latest but one brought less than was ordered. */
export function orderBehind(world: World, order: Order, day: IsoDate): { order?: SentOrder } {
  const left = daysLeft(world, day);
  if (left > ORDERS_KEPT) return {};
  const { supplier, ordered, lines } = order;
  const short = left <= 7 && !world.steps.some(isShort);
  const also = short ? missingOf(supplier, lines) : [];
  const expectedOn = short ? nextWorkday(addDays(world.today, 2)) : usualDay(supplier, ordered);
  return { order: { orderedOn: ordered, expectedOn, lines: [...lines, ...also] } };
}

/** Whether a delivery of the scenario brought less than was ordered. */
function isShort(step: Step): boolean {
  if (step.kind !== 'delivery') return false;
  const { order, lines } = step.payload;
  return order !== undefined && order.lines.length > lines.length;
}

/** Something else of the supplier that the delivery did not bring. */
function missingOf(supplier: SupplierKey, lines: readonly OrderedPacks[]): OrderedPacks[] {
  const there = new Set<string>([...OWED, ...lines.map((line) => line.consumable)]);
  const other = packsOf(supplier).find((consumable) => !there.has(consumable));
  return other === undefined ? [] : [{ consumable: other, packs: 2 }];
}

function packsOf(supplier: SupplierKey): string[] {
  return CATALOGUE.filter((row) => row.packs[0].supplier === supplier).map((row) => row.key);
}

/** The day that the supplier usually makes. */
function usualDay(supplier: SupplierKey, ordered: IsoDate): IsoDate {
  const [from, to] = SUPPLIERS[supplier].leadDays;
  return nextWorkday(addDays(ordered, Math.ceil((from + to) / 2)));
}

/** Orders that stand open today: on their way, late, and not sent yet. */
export function ordersNow(world: World, day: IsoDate): Step[] {
  const onTheirWay = world.orders.map(({ supplier, ordered, arrives, lines }) =>
    toStep(day, {
      ...{ supplier, lines, note: null },
      upTo: { orderedOn: ordered, expectedOn: arrives },
    }),
  );
  const [first, second] = ['quillmere', 'tavenstone'] as const;
  const few = (supplier: SupplierKey, from: number) =>
    packsOf(supplier)
      .slice(from, from + 3)
      .map((consumable, i) => ({ consumable, packs: i + 1 }));
  return [
    toStep(day, late(world)),
    ...onTheirWay,
    toStep(day, {
      ...{ supplier: second, lines: few(second, 3), note: null, upTo: 'cancelled' },
    }),
    toStep(day, { ...{ supplier: second, lines: few(second, 0), note: null, upTo: 'approved' } }),
    toStep(day, {
      ...{ supplier: first, lines: few(first, 0), upTo: 'draft' },
      note: 'Please deliver before noon.',
    }),
  ];
}

/** What should have come, of the supplier of the first of it. */
function late(world: World): OrderPayload {
  const supplierOf = (key: string) =>
    CATALOGUE.find((row) => row.key === key)?.packs[0].supplier ?? 'ostermill';
  const supplier = supplierOf(OWED[0]);
  return {
    supplier,
    lines: OWED.filter((key) => supplierOf(key) === supplier).map((consumable) => ({
      ...{ consumable, packs: 2 },
    })),
    note: null,
    upTo: {
      orderedOn: nextWorkday(addDays(world.today, -24)),
      expectedOn: nextWorkday(addDays(world.today, -15)),
    },
    chased: 'The maker cannot deliver; they will call back.',
  };
}

function toStep(date: IsoDate, payload: OrderPayload): Step {
  const { supplier, upTo } = payload;
  const name = typeof upTo === 'string' ? upTo : upTo.orderedOn;
  return { date, kind: 'order', key: `order/${supplier}/${name}`, payload };
}
