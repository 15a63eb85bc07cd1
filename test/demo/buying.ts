import { addDays, type IsoDate } from '#lib/platform';
import { CATALOGUE, consumableId, consumableOf, presentationId } from './catalogue.js';
import type { DemoPack } from './catalogue-types.js';
import { leftOf } from './events.js';
import { priceFactor } from './ordering.js';
import { type Layer, newLayer } from './shelf.js';
import type { DeliveryLine, DeliveryPayload, LayerRef, Step } from './steps.js';
import { daysLeft, type World } from './world.js';

/** What is in the kits of the list. */
export function kits(date: IsoDate): Step[] {
  return CATALOGUE.flatMap(({ key: consumable, packs }) =>
    packs.flatMap((pack, n): Step[] =>
      pack.parts
        ? [{ date, kind: 'kit', key: `kit/${consumable}/${n}`, payload: { consumable, pack: n } }]
        : [],
    ),
  );
}

const KIT = { consumable: 'adhesive', lotNumber: 'R3107' } as const;
const PART_LOTS: Readonly<Record<string, string>> = { etch: 'T3415', 'micro-applicator': 'K3022' };

/** A starter kit, bought to see how it does; its parts have lots of their own. */
export function receiveKit(world: World, day: IsoDate): void {
  const pack = kitOf(KIT.consumable);
  const reference = `DN-${day.replaceAll('-', '').slice(2)}-K`;
  const line: DeliveryLine = {
    consumable: KIT.consumable,
    presentationId: presentationId(KIT.consumable, pack),
    packs: 1,
    packPrice: pack.price.toFixed(2),
    place: 'store',
    lotNumber: KIT.lotNumber,
    expiresOn: addDays(day, 400),
    parts: (pack.parts ?? []).map(({ consumable }) => partOf(consumable)),
  };
  const extras = { freight: '0.00', discount: '0.00' };
  const supplier = pack.supplier;
  const payload: DeliveryPayload = {
    ...{ supplier, receivedOn: day, reference, ...extras, lines: [line] },
  };
  world.references.add(reference);
  world.steps.push({ date: day, kind: 'delivery', key: `delivery/${reference}`, payload });
  const content = [KIT.consumable, ...(pack.parts ?? []).map((part) => part.consumable)];
  content.forEach((key, i) => {
    const lot = PART_LOTS[key] ?? KIT.lotNumber;
    const facts = { ref: { reference, line: i + 1 }, lot, expires: line.expiresOn, received: day };
    // Of each as much as there is in its ordinary pack.
    world.shelf.add(newLayer({ ...facts, consumable: consumableOf(key) }, 1, 'store'));
  });
}

function kitOf(consumable: string): DemoPack {
  const found = consumableOf(consumable).packs.find((pack) => pack.parts);
  if (!found) throw new Error(`The demo has no kit of ${consumable}`);
  return found;
}

function partOf(consumable: string) {
  const lotNumber = PART_LOTS[consumable];
  if (lotNumber === undefined) throw new Error(`The part ${consumable} of the kit has no lot`);
  return { consumableId: consumableId(consumable), lotNumber };
}

const LISTED = 'gloves-m';
/** From so many packs, at so much of the price of one. */
const STEPS: readonly (readonly [fromPacks: number, percent: number])[] = [
  [1, 100],
  [10, 95],
  [30, 89],
];

/** What the manager settles on the last day: prices by number, a stand-in, and two wrong papers. */
export function buyToday(world: World, date: IsoDate): Step[] {
  const [pack] = consumableOf(LISTED).packs;
  const price = Number((pack.price * priceFactor(world, pack.supplier, date)).toFixed(2));
  const prices = STEPS.map(([fromPacks, percent]) => {
    return { fromPacks, packPrice: ((price * percent) / 100).toFixed(2) };
  });
  const standIn = { consumable: 'adhesive', standIn: 'adhesive-dose' };
  const note = 'Agreed by both dentists when the bottles were late.';
  return [
    {
      date,
      kind: 'priceList',
      key: `price-list/${LISTED}`,
      payload: { consumable: LISTED, prices },
    },
    { date, kind: 'standIn', key: 'stand-in/adhesive', payload: { ...standIn, note } },
    ...wrongLot(world, date),
    ...laterInvoice(world, date),
  ];
}

interface Delivered {
  readonly of: LayerRef;
  readonly line: DeliveryLine;
  readonly layer: Layer;
}

/** Lines of the last weeks of which something is left and nothing is held, the latest first. */
function lately(world: World, most: number): Delivered[] {
  const layers = new Map(world.shelf.all().map((layer) => [nameOf(layer.ref), layer]));
  const found: Delivered[] = [];
  for (const { kind, payload, date } of world.steps) {
    if (kind !== 'delivery' || daysLeft(world, date) > most) continue;
    payload.lines.forEach((line, i) => {
      const of = { reference: payload.reference, line: i + 1 };
      const layer = layers.get(nameOf(of));
      if (layer && !layer.held && leftOf(layer) > 0 && !line.parts) found.push({ of, line, layer });
    });
  }
  return found.reverse();
}

function nameOf({ reference, line }: LayerRef): string {
  return `${reference}/${line}`;
}

/** Of what nobody scans at the chair: a lot number that was read wrongly from a crumpled label. */
const CORRECTED = new Set(['Etchant', 'Wedges', 'Isolation', 'Matrices', 'Finishing', 'Discs']);

function wrongLot(world: World, date: IsoDate): Step[] {
  const found = lately(world, 21).find(
    ({ line, layer }) => line.lotNumber !== null && CORRECTED.has(layer.consumable.category),
  );
  const wrong = found?.line.lotNumber;
  if (!found || !wrong) return [];
  const { of, line } = found;
  const lotNumber = `${wrong}B`;
  const note = 'The last letter of the lot number was left out.';
  const payload = { of, line, lotNumber, note };
  return [{ date, kind: 'correction', key: `correction/${nameOf(of)}`, payload }];
}

/** Of what was used in part by now: the invoice says more than the delivery note did. */
function laterInvoice(world: World, date: IsoDate): Step[] {
  const found = lately(world, 45)
    .filter(({ layer }) => leftOf(layer) < layer.quantity && !CORRECTED.has(categoryOf(layer)))
    .sort((a, b) => Number(b.line.packPrice) - Number(a.line.packPrice))[0];
  if (!found) return [];
  const { of, line } = found;
  const packPrice = (Number(line.packPrice) * 1.04).toFixed(2);
  const payload = { of, packPrice, number: `INV-${of.reference.slice(3)}` };
  return [{ date, kind: 'invoice', key: `invoice/${nameOf(of)}`, payload }];
}

function categoryOf(layer: Layer): string {
  return layer.consumable.category;
}
