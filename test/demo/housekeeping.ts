import { addDays, type IsoDate } from '#lib/platform';
import { weekdayOf } from './calendar.js';
import { CATALOGUE } from './catalogue.js';
import { decimal, type Micro, micro } from './plan-usage.js';
import { type PlaceKey, ROOMS, type RoomKey } from './practice.js';
import type { Layer, Opened } from './shelf.js';
import type { Pick, StepOf, WasteReason } from './steps.js';
import { daysLeft, type World } from './world.js';

const NEVER = '9999-12-31';
/** The shelves were last checked so many days ago: what ran out since still stands there. */
const LAST_CHECK = 45;

export function pickOf(layer: Layer, place: PlaceKey, opened?: Opened): Pick {
  return { layer: layer.ref, place, openedOn: opened?.openedOn ?? null };
}

/** The first workday of a week: the rooms are filled up from the store and the fridge. */
export function restock(world: World, day: IsoDate): void {
  for (const row of CATALOGUE) {
    if (row.roomStock === undefined) continue;
    for (const room of ROOMS) restockRoom(world, day, row.key, room);
  }
}

function restockRoom(world: World, day: IsoDate, consumable: string, room: RoomKey): void {
  const layers = world.shelf.layersOf(consumable).filter((layer) => good(layer, day));
  const [any] = layers;
  if (!any) return;
  const row = any.consumable;
  const from = row.kept ?? 'store';
  const full = micro(row.roomStock ?? 0);
  const there = layers.reduce((sum, layer) => sum + (layer.sealed.get(room) ?? 0), 0);
  if (there > full * 0.6) return;
  const [layer] = layers
    .filter((each) => (each.sealed.get(from) ?? 0) > 0)
    .sort((a, b) => (a.expires ?? NEVER).localeCompare(b.expires ?? NEVER));
  if (!layer) return;
  const unit = layer.dispensing === 'by-piece' ? micro(1) : layer.content;
  const amount = Math.floor(Math.min(full - there, layer.sealed.get(from) ?? 0) / unit) * unit;
  if (amount > 0) move(world, day, layer, from, room, amount);
}

function good(layer: Layer, day: IsoDate): boolean {
  return !layer.held && (layer.expires ?? NEVER) >= addDays(day, 7);
}

function move(
  world: World,
  date: IsoDate,
  layer: Layer,
  from: PlaceKey,
  to: PlaceKey,
  amount: Micro,
): void {
  layer.sealed.set(from, (layer.sealed.get(from) ?? 0) - amount);
  layer.sealed.set(to, (layer.sealed.get(to) ?? 0) + amount);
  world.steps.push({
    date,
    kind: 'move',
    key: `move/${date}/${layer.ref.reference}/${layer.ref.line}/${to}`,
    payload: { from: pickOf(layer, from), to, quantity: decimal(amount) },
  });
}

/** Once a month whatever may no longer be used is taken off the shelves. */
export function checkShelves(world: World, day: IsoDate): void {
  if (daysLeft(world, day) < LAST_CHECK) return;
  for (const layer of world.shelf.all()) {
    const expired = (layer.expires ?? NEVER) < day;
    if (expired) {
      for (const [place, amount] of layer.sealed) {
        if (amount > 0) writeOff(world, day, layer, place, 'expired');
      }
    }
    for (const opened of layer.opened) {
      if (opened.left === 0 || (opened.useBy ?? NEVER) >= day) continue;
      writeOffOpened(world, day, layer, opened, expired ? 'expired' : 'after-opening limit');
    }
  }
}

const NOTES: Record<WasteReason, string> = {
  expired: 'Found at the monthly check.',
  'after-opening limit': 'Found at the monthly check.',
  'wrong shade opened': 'Opened by mistake, not used.',
  contaminated: 'Fell on the floor.',
};

function writeOff(
  world: World,
  date: IsoDate,
  layer: Layer,
  place: PlaceKey,
  reason: WasteReason,
  amount: Micro | null = null,
): void {
  layer.sealed.set(place, amount === null ? 0 : (layer.sealed.get(place) ?? 0) - amount);
  const from = pickOf(layer, place);
  const quantity = amount === null ? null : decimal(amount);
  world.steps.push(writeOffStep(date, { from, quantity, reason, note: NOTES[reason] }));
}

function writeOffOpened(
  world: World,
  date: IsoDate,
  layer: Layer,
  opened: Opened,
  reason: WasteReason,
): void {
  opened.left = 0;
  const from = pickOf(layer, opened.place, opened);
  world.steps.push(writeOffStep(date, { from, quantity: null, reason, note: NOTES[reason] }));
}

function writeOffStep(date: IsoDate, payload: StepOf<'writeOff'>['payload']): StepOf<'writeOff'> {
  const { layer, place, openedOn } = payload.from;
  const of = `${layer.reference}/${layer.line}/${place}/${openedOn ?? 'sealed'}`;
  return { date, kind: 'writeOff', key: `write-off/${date}/${of}`, payload };
}

const CAPSULES = ['capsule2', 'capsule3', 'capsule4'] as const;

/** A capsule of the wrong shade was opened beside the chair, or a syringe fell on the floor. */
export function mishaps(world: World, day: IsoDate): void {
  if (world.dice.chance(0.07)) {
    const dose = micro(0.25);
    const layer = world.shelf
      .layersOf(world.dice.pick(CAPSULES))
      .find((each) => good(each, day) && (each.sealed.get('store') ?? 0) >= 4 * dose);
    if (layer) writeOff(world, day, layer, 'store', 'wrong shade opened', dose);
  }
  if (world.dice.chance(0.012)) {
    const room = world.dice.pick(ROOMS);
    const layer = world.shelf.first('flow2', room, day);
    const opened = layer?.opened.find((each) => each.place === room && each.left > 0);
    if (layer && opened) writeOffOpened(world, day, layer, opened, 'contaminated');
  }
}

/** Every sixth Friday some boxes are counted; a few pieces more or less are there than expected. */
export function countSome(world: World, day: IsoDate, index: number): void {
  if (weekdayOf(day) !== 5 || index % 6 !== 3) return;
  const layers = world.shelf
    .all()
    .filter((layer) => layer.dispensing === 'by-piece' && good(layer, day))
    .filter((layer) => (layer.sealed.get('store') ?? 0) >= micro(20));
  for (let n = 0; n < 2 && layers.length > 0; n += 1) {
    const [layer] = layers.splice(world.dice.int(0, layers.length - 1), 1);
    if (!layer) return;
    const used = layer.quantity - [...layer.sealed.values()].reduce((sum, left) => sum + left, 0);
    const found = used > micro(5) && world.dice.chance(0.3);
    countBy(world, day, layer, 'store', micro(found ? 1 : -world.dice.int(1, 6)));
  }
}

function countBy(world: World, date: IsoDate, layer: Layer, place: PlaceKey, by: Micro): void {
  layer.sealed.set(place, (layer.sealed.get(place) ?? 0) + by);
  countStep(world, date, pickOf(layer, place), decimal(by));
}

function countStep(world: World, date: IsoDate, of: Pick, difference: string | null): void {
  const what = `${of.layer.reference}/${of.layer.line}/${of.place}/${of.openedOn ?? 'sealed'}`;
  const payload = { of, difference };
  world.steps.push({ date, kind: 'count', key: `count/${date}/${what}`, payload });
}

/** Nothing is left of something, though the book says otherwise. */
export function countToNothing(world: World, day: IsoDate, consumable: string): void {
  for (const layer of world.shelf.layersOf(consumable)) {
    for (const [place, left] of layer.sealed) {
      if (left === 0) continue;
      layer.sealed.set(place, 0);
      countStep(world, day, pickOf(layer, place), null);
    }
    for (const opened of layer.opened) {
      if (opened.left === 0) continue;
      opened.left = 0;
      countStep(world, day, pickOf(layer, opened.place, opened), null);
    }
  }
}
