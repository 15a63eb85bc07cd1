import { addDays, addMonths, type IsoDate } from '#lib/platform';
import type { DemoConsumable, Dispensing } from './catalogue-types.js';
import { type Micro, micro } from './plan-usage.js';
import type { PlaceKey, RoomKey } from './practice.js';
import type { LayerRef } from './steps.js';

export interface Opened {
  readonly place: PlaceKey;
  readonly openedOn: IsoDate;
  readonly useBy: IsoDate | null;
  left: Micro;
}

/** One delivery line on the simulated shelf. */
export interface Layer {
  readonly ref: LayerRef;
  readonly consumable: DemoConsumable;
  readonly lot: string | null;
  readonly expires: IsoDate | null;
  readonly received: IsoDate;
  readonly quantity: Micro;
  readonly dispensing: Dispensing;
  readonly content: Micro;
  held: boolean;
  readonly sealed: Map<PlaceKey, Micro>;
  readonly opened: Opened[];
  readonly charts: Set<string>;
}

export interface Need {
  readonly consumable: string;
  readonly dispensed: Micro;
  readonly room: RoomKey;
  readonly day: IsoDate;
  readonly chart: string;
  readonly scannedLot?: string | undefined;
  /** Settling an earlier shortfall: the goods came later than they were used. */
  readonly late?: boolean;
}

interface Slot {
  readonly layer: Layer;
  readonly place: PlaceKey;
  readonly opened: Opened | null;
}

const NEVER = '9999-12-31';

/**
 * The stock as the book will have it: which goods lie where, and which of them a visit takes. It is
 * simpler than the book (no cost, no sureness) and follows the same order: nearest place, opened
 * before sealed, earliest effective expiry, earliest receipt.
 */
export class Shelf {
  private readonly layers = new Map<string, Layer[]>();

  add(layer: Layer): void {
    this.layers.set(layer.consumable.key, [...this.layersOf(layer.consumable.key), layer]);
  }

  layersOf(consumable: string): readonly Layer[] {
    return this.layers.get(consumable) ?? [];
  }

  all(): Layer[] {
    return [...this.layers.values()].flat();
  }

  /** What may still be used on the day, wherever it lies. */
  usable(consumable: string, day: IsoDate): Micro {
    return this.layersOf(consumable)
      .filter((layer) => !layer.held && (layer.expires ?? NEVER) >= day)
      .reduce((sum, layer) => sum + usableOf(layer, day), 0);
  }

  /** The goods a visit in the room would take first. */
  first(consumable: string, room: RoomKey, day: IsoDate): Layer | undefined {
    return this.slots(consumable, room, day, {}).find((slot) => leftIn(slot) > 0)?.layer;
  }

  /** What of a lot the room can reach on the day. */
  reachable(layer: Layer, room: RoomKey, day: IsoDate): Micro {
    return this.slots(layer.consumable.key, room, day, {})
      .filter((slot) => slot.layer === layer)
      .reduce((sum, slot) => sum + leftIn(slot), 0);
  }

  /** Takes what is needed and answers what was not to be had. */
  issue(need: Need): Micro {
    let remaining = need.dispensed;
    const queue = this.slots(need.consumable, need.room, need.day, need);
    while (remaining > 0) {
      const slot = queue[0];
      if (!slot) return remaining;
      if (slot.layer.dispensing === 'multi-use' && !slot.opened && leftIn(slot) > 0) {
        queue.unshift({ ...slot, place: need.room, opened: open(slot, need) });
        continue;
      }
      const [amount, covered] = portion(slot, remaining);
      if (amount === 0) {
        queue.shift();
        continue;
      }
      take(slot, amount);
      slot.layer.charts.add(need.chart);
      remaining -= covered;
    }
    return 0;
  }

  private slots(
    consumable: string,
    room: RoomKey,
    day: IsoDate,
    how: { readonly scannedLot?: string | undefined; readonly late?: boolean },
  ): Slot[] {
    const reach: readonly PlaceKey[] = [room, 'store'];
    const found: Slot[] = [];
    for (const layer of this.layersOf(consumable)) {
      if (layer.held || (layer.expires ?? NEVER) < day) continue;
      if (layer.received > day && !how.late) continue;
      for (const place of reach) {
        if ((layer.sealed.get(place) ?? 0) > 0) found.push({ layer, place, opened: null });
      }
      for (const opened of layer.opened) {
        const good = (opened.useBy ?? NEVER) >= day && opened.openedOn <= day && opened.left > 0;
        if (good && reach.includes(opened.place)) {
          found.push({ layer, place: opened.place, opened });
        }
      }
    }
    return found.sort((a, b) => compare(a, b, room, how.scannedLot));
  }
}

function usableOf(layer: Layer, day: IsoDate): Micro {
  const sealed = [...layer.sealed.values()].reduce((sum, amount) => sum + amount, 0);
  return layer.opened
    .filter((opened) => (opened.useBy ?? NEVER) >= day)
    .reduce((sum, opened) => sum + opened.left, sealed);
}

function compare(a: Slot, b: Slot, room: RoomKey, scannedLot: string | undefined): number {
  const scanned = (slot: Slot) =>
    scannedLot !== undefined && slot.layer.lot === scannedLot ? 0 : 1;
  const distance = (slot: Slot) => (slot.place === room ? 0 : 1);
  const kind = (slot: Slot) => (slot.opened ? 0 : 1);
  const expiry = (slot: Slot) => (slot.opened ? slot.opened.useBy : slot.layer.expires) ?? NEVER;
  return (
    scanned(a) - scanned(b) ||
    distance(a) - distance(b) ||
    kind(a) - kind(b) ||
    expiry(a).localeCompare(expiry(b)) ||
    a.layer.received.localeCompare(b.layer.received)
  );
}

function leftIn(slot: Slot): Micro {
  return slot.opened ? slot.opened.left : (slot.layer.sealed.get(slot.place) ?? 0);
}

function take(slot: Slot, amount: Micro): void {
  const { opened, layer } = slot;
  if (opened) {
    opened.left -= amount;
    if (opened.left === 0) layer.opened.splice(layer.opened.indexOf(opened), 1);
  } else slot.layer.sealed.set(slot.place, leftIn(slot) - amount);
}

function open(slot: Slot, need: Need): Opened {
  const amount = Math.min(slot.layer.content, leftIn(slot));
  take(slot, amount);
  const opened: Opened = {
    place: need.room,
    openedOn: need.day,
    useBy: lastDayOf(slot.layer, need.day),
    left: amount,
  };
  slot.layer.opened.push(opened);
  return opened;
}

/** The last day of a container that was opened: of its label or of its life, whichever is earlier. */
export function lastDayOf(layer: Layer, openedOn: IsoDate): IsoDate | null {
  const { life } = layer.consumable;
  if (!life) return layer.expires;
  const [value, unit] = life;
  const end = unit === 'day' ? addDays(openedOn, value) : addMonths(openedOn, value);
  return layer.expires !== null && layer.expires < end ? layer.expires : end;
}

/** How much leaves the container, and how much of the need that covers: doses are taken whole. */
function portion(slot: Slot, remaining: Micro): [amount: Micro, covered: Micro] {
  const there = leftIn(slot);
  if (slot.layer.dispensing !== 'single-dose') {
    const amount = Math.min(remaining, there);
    return [amount, amount];
  }
  const dose = slot.layer.content;
  const amount = Math.min(Math.ceil(remaining / dose), Math.floor(there / dose)) * dose;
  return [amount, Math.min(amount, remaining)];
}

export function newLayer(
  facts: Pick<Layer, 'ref' | 'consumable' | 'lot' | 'expires' | 'received'>,
  packs: number,
  place: PlaceKey,
): Layer {
  const [pack] = facts.consumable.packs;
  const quantity = packs * pack.containers * micro(pack.content);
  return {
    ...facts,
    quantity,
    dispensing: pack.dispensing,
    content: micro(pack.content),
    held: false,
    sealed: new Map([[place, quantity]]),
    opened: [],
    charts: new Set(),
  };
}
