import { addDays, type IsoDate } from '#lib/platform';
import { nextWorkday, weekdayOf } from './calendar.js';
import { CATALOGUE, consumableOf, contentOf, presentationId } from './catalogue.js';
import { orderBehind } from './orders.js';
import { micro } from './plan-usage.js';
import { SUPPLIERS, type SupplierKey } from './practice.js';
import { newLayer } from './shelf.js';
import type { DeliveryLine, DeliveryPayload } from './steps.js';
import { daysLeft, type World } from './world.js';

const SUPPLIER_KEYS = Object.keys(SUPPLIERS) as SupplierKey[];
/** Where nothing was ordered in the last two weeks, so that stock runs low today. */
const NOT_ORDERED_LATELY: readonly SupplierKey[] = ['quillmere', 'tavenstone'];
/** Back orders of the last weeks: they run out before today. */
export const BACK_ORDERED: readonly string[] = ['putty', 'wedge-large', 'cord'];
/** First lots that ran or run out on the shelf: so many days before or after today. */
const FIRST_EXPIRIES: Readonly<Record<string, number>> = {
  'opaque-mask': -150,
  'amber-effect': -23,
  'cartridge-plain': 38,
};

/** The first delivery of everything, on the first day. */
export function stockUp(world: World, day: IsoDate): void {
  for (const supplier of SUPPLIER_KEYS) {
    const lines = ordered(supplier).map((row) => {
      const level = world.levels.get(row.key);
      const wanted = row.fixed ? (level?.upTo ?? 0) : (level?.upTo ?? 0) * 1.1;
      return { consumable: row.key, packs: packsFor(row.key, wanted) };
    });
    world.orders.push({ supplier, ordered: day, arrives: day, lines });
  }
}

/** Once a week per supplier: whatever reached its reorder point is ordered in whole packs. */
export function review(world: World, day: IsoDate): void {
  for (const supplier of SUPPLIER_KEYS) {
    const facts = SUPPLIERS[supplier];
    if (weekdayOf(day) !== facts.ordersOn) continue;
    const left = daysLeft(world, day);
    if (left < 14 && NOT_ORDERED_LATELY.includes(supplier)) continue;
    const lines = ordered(supplier)
      .filter((row) => left >= 25 || !BACK_ORDERED.includes(row.key))
      .flatMap((row) => wanted(world, row.key, day));
    if (lines.length === 0) continue;
    const [from, to] = facts.leadDays;
    const arrives = nextWorkday(addDays(day, world.dice.int(from, to)));
    world.orders.push({ supplier, ordered: day, arrives, lines });
  }
}

function ordered(supplier: SupplierKey) {
  return CATALOGUE.filter((row) => row.packs[0].supplier === supplier);
}

function packsFor(consumable: string, amount: number): number {
  const pack = consumableOf(consumable).packs[0];
  return Math.max(1, Math.ceil(amount / micro(contentOf(pack))));
}

function wanted(world: World, consumable: string, day: IsoDate) {
  const level = world.levels.get(consumable);
  if (!level) return [];
  const onOrder = world.orders
    .flatMap((order) => order.lines)
    .filter((line) => line.consumable === consumable)
    .reduce((sum, l) => sum + l.packs * micro(contentOf(consumableOf(consumable).packs[0])), 0);
  const short = world.shortfalls
    .filter((shortfall) => shortfall.consumable === consumable)
    .reduce((sum, shortfall) => sum + shortfall.missing, 0);
  const position = world.shelf.usable(consumable, day) + onOrder - short;
  if (position > level.at) return [];
  return [{ consumable, packs: packsFor(consumable, level.upTo - position) }];
}

/** Books in what arrives on the day, in the order in which it was ordered. */
export function arrivals(world: World, day: IsoDate): DeliveryPayload[] {
  const arrived = world.orders.filter((order) => order.arrives <= day);
  world.orders = world.orders.filter((order) => order.arrives > day);
  return arrived.map((order) => {
    const { supplier } = order;
    const reference = freeReference(world, `DN-${day.replaceAll('-', '').slice(2)}`);
    const lines = order.lines.map((l) => deliveryLine(world, supplier, l.consumable, l.packs, day));
    const payload = {
      supplier,
      receivedOn: day,
      reference,
      ...extras(world, supplier, lines),
      lines,
      ...orderBehind(world, order, day),
    };
    book(world, payload);
    return payload;
  });
}

/** A step for the delivery, and its lines on the shelf unless it is taken back at once. */
export function book(world: World, payload: DeliveryPayload, stays = true): void {
  const { reference, receivedOn: date } = payload;
  world.steps.push({ date, kind: 'delivery', key: `delivery/${reference}`, payload });
  if (!stays) return;
  payload.lines.forEach((line, i) => {
    const facts = {
      ref: { reference, line: i + 1 },
      consumable: consumableOf(line.consumable),
      lot: line.lotNumber,
      expires: line.expiresOn,
      received: date,
    };
    world.shelf.add(newLayer(facts, line.packs, line.place));
  });
}

function freeReference(world: World, wish: string): string {
  let reference = `${wish}-1`;
  for (let n = 2; world.references.has(reference); n += 1) reference = `${wish}-${n}`;
  world.references.add(reference);
  return reference;
}

function extras(world: World, supplier: SupplierKey, lines: readonly DeliveryLine[]) {
  const goods = lines.reduce((sum, line) => sum + line.packs * Number(line.packPrice), 0);
  const [from, to] = SUPPLIERS[supplier].freight;
  const freight = goods > 600 ? 0 : from + (to - from) * world.dice.next();
  const discount = world.dice.chance(0.07) ? goods * 0.02 : 0;
  return { freight: freight.toFixed(2), discount: discount.toFixed(2) };
}

function deliveryLine(
  world: World,
  supplier: SupplierKey,
  consumable: string,
  packs: number,
  day: IsoDate,
): DeliveryLine {
  const row = consumableOf(consumable);
  const [pack] = row.packs;
  return {
    consumable,
    presentationId: presentationId(consumable, pack),
    packs,
    packPrice: (pack.price * priceFactor(world, supplier, day)).toFixed(2),
    place: row.kept ?? 'store',
    ...lotOf(world, consumable, day),
  };
}

/** What the supplier's price rounds up to the day make of a list price. */
export function priceFactor(world: World, supplier: SupplierKey, day: IsoDate): number {
  const daysIn = daysLeft(world, world.days[0]?.day ?? day) - daysLeft(world, day);
  const first = 45 + 11 * SUPPLIER_KEYS.indexOf(supplier);
  return SUPPLIERS[supplier].rises
    .filter((_, round) => daysIn >= first + 120 * round)
    .reduce((factor, percent) => factor * (1 + percent / 100), 1);
}

function lotOf(
  world: World,
  consumable: string,
  day: IsoDate,
): { lotNumber: string | null; expiresOn: IsoDate | null } {
  const { dice } = world;
  const row = consumableOf(consumable);
  const expiresOn = expiryOf(world, consumable, day);
  if (dice.chance(row.noLot ?? 0)) return { lotNumber: null, expiresOn };
  const last = world.shelf.layersOf(consumable).at(-1);
  if (last?.lot && !last.held && dice.chance(0.15) && (last.expires ?? '9999') > addDays(day, 90)) {
    return { lotNumber: last.lot, expiresOn: last.expires };
  }
  // A small range on purpose: two products may well have lots of the same number.
  for (;;) {
    const lotNumber = `${dice.pick(['K', 'R', 'T'])}${dice.int(2000, 2999)}`;
    const key = `${consumable}/${lotNumber}`;
    if (world.lots.has(key)) continue;
    world.lots.set(key, expiresOn);
    return { lotNumber, expiresOn };
  }
}

function expiryOf(world: World, consumable: string, day: IsoDate): IsoDate | null {
  const { shelfMonths } = consumableOf(consumable);
  if (shelfMonths === 0) return null;
  const first = world.days[0]?.day === day;
  const known = FIRST_EXPIRIES[consumable];
  if (first && known !== undefined) return addDays(world.today, known);
  const left = daysLeft(world, day);
  // Short-dated goods of the last weeks.
  if (left < 40 && world.dice.chance(0.2)) return addDays(world.today, world.dice.int(20, 55));
  const part = first ? 0.8 + 0.15 * world.dice.next() : 0.45 + 0.45 * world.dice.next();
  return addDays(day, Math.round(shelfMonths * 30.4 * part));
}
