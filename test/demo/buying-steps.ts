import type { INestApplicationContext } from '@nestjs/common';
import { PresentationParts } from '#lib/catalogue';
import type { Actor } from '#lib/platform';
import { SubstituteDesk, SupplyTermsDesk } from '#lib/purchasing';
import { CorrectLine, InvoiceDelivery } from '#lib/stock';
import { type BookReader, locationId } from './book-reader.js';
import { consumableId, consumableOf, presentationId } from './catalogue.js';
import type { StepKind, StepOf } from './steps.js';

type BuyingKind = Extract<StepKind, 'kit' | 'priceList' | 'standIn' | 'correction' | 'invoice'>;

type BuyingRuns = {
  readonly [K in BuyingKind]: (step: StepOf<K>, key: string) => Promise<unknown>;
};

/** The steps of the demo by which the manager settles how goods are bought, and puts papers right. */
export function buyingRuns(
  app: INestApplicationContext,
  reader: BookReader,
  manager: Actor,
): BuyingRuns {
  const use = { strict: false };
  const parts = app.get(PresentationParts, use);
  const terms = app.get(SupplyTermsDesk, use);
  const substitutes = app.get(SubstituteDesk, use);
  const correctLine = app.get(CorrectLine, use);
  const invoiceDelivery = app.get(InvoiceDelivery, use);
  return {
    kit: ({ payload }) => {
      const pack = consumableOf(payload.consumable).packs[payload.pack];
      if (!pack?.parts) throw new Error(`${payload.consumable} has no kit ${payload.pack}`);
      const content = pack.parts.map((part) => ({
        consumableId: consumableId(part.consumable),
        dispensing: part.dispensing,
        containersPerPack: part.containers,
        contentPerContainer: String(part.content),
        sharePercent: String(part.sharePercent),
      }));
      return parts.set(manager, presentationId(payload.consumable, pack), content);
    },
    priceList: ({ payload: { consumable, prices } }) => {
      const [pack] = consumableOf(consumable).packs;
      const how = { minimumPacks: 1, discount: 'all units' as const, prices: [...prices] };
      return terms.setPresentation(manager, presentationId(consumable, pack), how);
    },
    standIn: ({ payload: { consumable, standIn, note } }, key) => {
      const pair = { consumableId: consumableId(consumable), standInId: consumableId(standIn) };
      return substitutes.add(manager, key, { ...pair, note });
    },
    correction: async ({ payload: { of, line, lotNumber, note } }, key) => {
      const deliveryId = await reader.deliveryId(of.reference);
      const { presentationId: pack, packs, packPrice, place, expiresOn } = line;
      const right = { presentationId: pack, packs, packPrice, locationId: locationId(place) };
      const path = { deliveryId, lineNumber: of.line };
      return correctLine.run(manager, key, path, { ...right, lotNumber, expiresOn, note });
    },
    invoice: async ({ payload: { of, packPrice, number } }, key) => {
      const deliveryId = await reader.deliveryId(of.reference);
      const lines = [{ lineNumber: of.line, packPrice }];
      return invoiceDelivery.run(manager, key, deliveryId, { lines, reference: number });
    },
  };
}
