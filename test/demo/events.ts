import { addDays, type IsoDate } from '#lib/platform';
import { consumableId } from './catalogue.js';
import { countToNothing, pickOf } from './housekeeping.js';
import { BACK_ORDERED, book } from './ordering.js';
import { decimal, micro } from './plan-usage.js';
import { type Layer, lastDayOf } from './shelf.js';
import type { DeliveryPayload, StepKind } from './steps.js';
import { TEMPLATES } from './templates.js';
import { daysLeft, type World } from './world.js';

/** What a day has besides its routine; positions count workdays from the end, 0 is the last. */
export function morning(world: World, day: IsoDate, index: number): void {
  const count = world.days.length;
  const fromEnd = count - 1 - index;
  if (index === Math.ceil(count / 2)) secondVersions(world, day);
  if (index === Math.floor(count * 0.35)) countToNothing(world, day, 'band');
  if (index === Math.floor(count * 0.7)) countToNothing(world, day, 'flow-tip');
  if (daysLeft(world, day) <= 160 && !happened(world, 'opening')) openEarly(world, day);
  if (fromEnd <= 17 && !happened(world, 'lotStatus')) recall(world, day);
  if (fromEnd === 13) returnRecalled(world, day);
  if (fromEnd === 6) quarantine(world, day);
  if (fromEnd === 2) for (const consumable of BACK_ORDERED) countToNothing(world, day, consumable);
}

/** Where an event had to wait for a day on which it is possible: whether it came. */
function happened(world: World, kind: StepKind, times = 1): boolean {
  return world.steps.filter((step) => step.kind === kind).length >= times;
}

function secondVersions(world: World, date: IsoDate): void {
  for (const { key, versions } of TEMPLATES) {
    for (let version = 2; version <= versions.length; version += 1) {
      const payload = { template: key, version };
      const step = `template/${key}/${version}`;
      world.steps.push({ date, kind: 'templateVersion', key: step, payload });
    }
  }
}

/** A bottle is opened in the store and then hardly used: it is past its limit today. */
function openEarly(world: World, day: IsoDate): void {
  const layer = world.shelf
    .layersOf('desensitiser')
    .find((each) => (each.sealed.get('store') ?? 0) > 0 && (each.expires ?? '') > day);
  if (!layer) return;
  layer.sealed.set('store', (layer.sealed.get('store') ?? 0) - layer.content);
  layer.opened.push({
    place: 'store',
    openedOn: day,
    useBy: lastDayOf(layer, day),
    left: layer.content,
  });
  const payload = { from: pickOf(layer, 'store') };
  world.steps.push({ date: day, kind: 'opening', key: `opening/${day}`, payload });
}

/** Of these a lot is recalled: the one that sits in most charts and of which some is left. */
const RECALLABLE = ['body2', 'body3', 'capsule2', 'capsule3', 'enamel-neutral', 'dentine2'];
const LEAST_CHARTS = 8;

function recall(world: World, day: IsoDate): void {
  const layers = RECALLABLE.flatMap((key) => world.shelf.layersOf(key))
    .filter((layer) => layer.lot !== null && layer.charts.size >= LEAST_CHARTS)
    .filter((layer) => sealed(layer) > 0 || layer.opened.some((opened) => opened.left > 0))
    .sort((a, b) => Number(sealed(b) > 0) - Number(sealed(a) > 0) || b.charts.size - a.charts.size);
  const [worst] = layers;
  if (!worst) return;
  hold(world, day, worst, 'recalled', "The maker's notice: the paste may not set in full.");
}

/** One container of what was recalled goes back; the rest stays on the shelf, held. */
function returnRecalled(world: World, date: IsoDate): void {
  const layer = world.shelf.all().find((each) => each.held && (each.sealed.get('store') ?? 0) > 0);
  const there = layer?.sealed.get('store') ?? 0;
  const rest = world.shelf.all().filter((each) => each.held);
  if (!layer || rest.reduce((sum, each) => sum + leftOf(each), 0) <= layer.content) return;
  layer.sealed.set('store', there - layer.content);
  const note = 'A sample of the recalled lot for the supplier.';
  const payload = { from: pickOf(layer, 'store'), quantity: decimal(layer.content), note };
  world.steps.push({ date, kind: 'return', key: `return/${date}/recalled`, payload });
}

export function leftOf(layer: Layer): number {
  return layer.opened.reduce((sum, opened) => sum + opened.left, sealed(layer));
}

function sealed(layer: Layer): number {
  return [...layer.sealed.values()].reduce((sum, left) => sum + left, 0);
}

/** Goods that came wet are held back until the supplier answers. */
function quarantine(world: World, day: IsoDate): void {
  const since = addDays(day, -45);
  const layer = world.shelf
    .all()
    .filter((each) => each.lot !== null && !each.held && each.received >= since)
    .filter((each) => each.dispensing === 'by-piece' && (each.sealed.get('store') ?? 0) > 0)
    .find((each) => {
      const rest = world.shelf.usable(each.consumable.key, day) - leftOf(each);
      const { key, roomStock } = each.consumable;
      return roomStock === undefined && rest > (world.levels.get(key)?.at ?? 0);
    });
  if (!layer) return;
  hold(world, day, layer, 'quarantined', 'The box came wet; the supplier was asked.');
}

function hold(
  world: World,
  date: IsoDate,
  layer: Layer,
  status: 'recalled' | 'quarantined',
  note: string,
): void {
  const lotNumber = layer.lot ?? '';
  for (const each of world.shelf.layersOf(layer.consumable.key)) {
    if (each.lot === layer.lot) each.held = true;
  }
  const lot = { consumableId: consumableId(layer.consumable.key), lotNumber };
  const key = `lot/${layer.consumable.key}/${lotNumber}/${status}`;
  world.steps.push({ date, kind: 'lotStatus', key, payload: { lot, status, note } });
}

/** Workdays from the end on which a delivery is booked twice, and one on which a box is sent back. */
const BOOKED_TWICE = 140;
const SENT_BACK: readonly number[] = [60, 205];

/** What is odd about the deliveries of the day. */
export function afterDelivery(
  world: World,
  day: IsoDate,
  index: number,
  deliveries: readonly DeliveryPayload[],
): void {
  const fromEnd = world.days.length - 1 - index;
  const [delivery] = deliveries;
  if (!delivery) return;
  if (
    fromEnd <= BOOKED_TWICE &&
    !happened(world, 'reverseDelivery') &&
    noneShort(world, delivery)
  ) {
    bookedTwice(world, day, delivery);
  }
  const due = SENT_BACK.filter((each) => fromEnd <= each).length;
  if (!happened(world, 'return', due)) sendBack(world, day, delivery);
}

function noneShort(world: World, delivery: DeliveryPayload): boolean {
  const short = new Set(world.shortfalls.map((shortfall) => shortfall.consumable));
  return delivery.lines.every((line) => !short.has(line.consumable));
}

function bookedTwice(world: World, date: IsoDate, delivery: DeliveryPayload): void {
  const reference = `${delivery.reference} (copy)`;
  const { order: _, ...again } = delivery;
  book(world, { ...again, reference }, false);
  const payload = { reference, note: 'The same delivery note was booked twice.' };
  const key = `reverse-delivery/${reference}`;
  world.steps.push({ date, kind: 'reverseDelivery', key, payload });
}

function sendBack(world: World, date: IsoDate, delivery: DeliveryPayload): void {
  const position = delivery.lines.findIndex((line) => line.packs >= 2);
  const line = delivery.lines[position];
  const layer = world.shelf
    .all()
    .find((each) => each.ref.reference === delivery.reference && each.ref.line === position + 1);
  if (!line || !layer || (layer.sealed.get(line.place) ?? 0) < layer.quantity) return;
  const pack = layer.quantity / line.packs;
  layer.sealed.set(line.place, layer.quantity - pack);
  const quantity = decimal(Math.max(pack, micro(1)));
  const note = 'One pack came damaged.';
  const payload = { from: pickOf(layer, line.place), quantity, note };
  world.steps.push({ date, kind: 'return', key: `return/${delivery.reference}`, payload });
}
