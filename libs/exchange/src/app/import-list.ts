import { Injectable } from '@nestjs/common';
import { MAX_LEVELS } from '#lib/catalogue';
import { moneyFromMicro, quantityFromMicro } from '#lib/measure';
import { newId } from '#lib/platform';
import {
  loadPresentationTerms,
  loadSupplyTerms,
  takeInPresentationTerms,
  takeInSupplyTerms,
} from '#lib/purchasing';
import { lockConsumables, ReceiveOpeningStock } from '#lib/stock';
import {
  loadConsumables,
  loadLocations,
  loadSuppliers,
  placesWithStock,
  receivedConsumables,
  receivedPresentations,
} from '../db/load-master.js';
import { loadEarlier, loadOpeningFacts, rememberRows } from '../db/load-opening.js';
import { loadPresentationsWithTerms, loadSuppliersWithTerms } from '../db/load-ordering.js';
import {
  writeConsumables,
  writeLocations,
  writePresentations,
  writeSuppliers,
} from '../db/write-master.js';
import type { RowFate } from '../domain/fate.js';
import type { Kind } from '../domain/kinds.js';
import {
  nameKey,
  partOfWrite,
  restOfWrite,
  type Thing,
  type ToWrite,
} from '../domain/plan/merge.js';
import { planConsumables } from '../domain/plan/plan-consumables.js';
import { planLocations } from '../domain/plan/plan-locations.js';
import { judgeOpening, readOpening } from '../domain/plan/plan-opening-stock.js';
import { planSuppliers } from '../domain/plan/plan-suppliers.js';
import { NO_PACK_TERMS, NO_TERMS, packTermsOf, termsOf } from '../domain/plan/terms.js';
import type { ListRow } from '../domain/read-rows.js';
import { holdRows, settled } from './hold-rows.js';
import { ImportBookedVisits } from './import-booked-visits.js';
import { ImportOrdering } from './import-ordering.js';
import { ImportTemplates } from './import-templates.js';
import type { Importing } from './importing.js';
import { lookAtNewRows } from './look-at-new-rows.js';

/**
 * Brings the rows of one list into the book, in the caller's transaction, and says what became of each.
 * Rows with errors are left out; the caller rolls everything back when there are any.
 */
@Injectable()
export class ImportList {
  constructor(
    private readonly openingStock: ReceiveOpeningStock,
    private readonly bookedVisits: ImportBookedVisits,
    private readonly ordering: ImportOrdering,
    private readonly templates: ImportTemplates,
  ) {}

  run(importing: Importing, kind: Kind, rows: readonly ListRow[]): Promise<RowFate[]> {
    switch (kind) {
      case 'suppliers':
        return importSuppliers(importing, rows);
      case 'closures':
        return this.ordering.closures(importing, rows);
      case 'locations':
        return importLocations(importing, rows);
      case 'consumables':
        return importConsumables(importing, rows);
      case 'kit-parts':
        return this.ordering.kitParts(importing, rows);
      case 'price-lists':
        return this.ordering.priceLists(importing, rows);
      case 'planning':
        return this.ordering.planning(importing, rows);
      case 'substitutes':
        return this.ordering.substitutes(importing, rows);
      case 'templates':
        return this.templates.run(importing, rows);
      case 'opening-stock':
        return this.importOpeningStock(importing, rows);
      case 'booked-visits':
        return this.bookedVisits.run(importing, rows);
    }
  }

  private async importOpeningStock(
    { tx, actor, today, onProgress }: Importing,
    rows: readonly ListRow[],
  ): Promise<RowFate[]> {
    const read = readOpening(await loadOpeningFacts(tx, today), rows);
    const understood = read.flatMap((each) => (each.ok ? [each.row] : []));
    const { fates, fresh } = judgeOpening(read, await loadEarlier(tx, understood));
    if (fresh.length === 0) return fates;
    const lines = fresh.map((row) => ({
      ...row,
      quantity: quantityFromMicro(row.quantity),
      packPrice: moneyFromMicro(row.packPrice),
      value: moneyFromMicro(row.value),
    }));
    const layerIds = await this.openingStock.runMany(tx, actor, lines, async (booked) => {
      // All are booked, and what follows from them is still to come.
      if (booked === lines.length) await lookAtNewRows(tx, booked);
      await onProgress(booked);
    });
    await rememberRows(tx, fresh, layerIds, today);
    return fates;
  }
}

async function importSuppliers(to: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
  const { tx } = to;
  const { fates, writes } = await settled(
    async () => planSuppliers(await loadSuppliersWithTerms(tx), rows, newId),
    async (plan) => holdRows(tx, 'suppliers', changedIds(plan.writes)),
  );
  const ofTerms = Object.keys(NO_TERMS);
  await writeSuppliers(
    to,
    writes.flatMap((write) => restOfWrite(write, ofTerms) ?? []),
  );
  const terms = await loadSupplyTerms(tx);
  const said = writes.flatMap((write) => {
    if (!partOfWrite(write, ofTerms)) return [];
    const before = terms.get(write.id) ?? null;
    return { id: write.id, before, after: termsOf(write.values, before?.closures ?? []) };
  });
  await takeInSupplyTerms(to, said);
  return [...fates];
}

async function importLocations(to: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
  const { tx } = to;
  const { fates, writes } = await settled(
    async () => {
      const book = await loadLocations(tx);
      const facts = { book, holding: await placesWithStock(tx), mostLevels: MAX_LEVELS };
      return planLocations(facts, rows, newId);
    },
    async (plan) => holdRows(tx, 'locations', changedIds(plan.writes)),
  );
  await writeLocations(to, writes, idsByName(await loadLocations(tx)));
  return [...fates];
}

async function importConsumables(to: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
  const { tx } = to;
  const known = await loadSuppliers(tx);
  const plan = await settled(
    async () => {
      const facts = {
        consumables: await loadConsumables(tx),
        presentations: await loadPresentationsWithTerms(tx),
        suppliers: new Map(known.map(({ values }) => [nameKey(values.name), values.name ?? ''])),
        receivedConsumables: await receivedConsumables(tx),
        receivedPresentations: await receivedPresentations(tx),
      };
      return planConsumables(facts, rows, newId);
    },
    // A first delivery, which fixes units and packs, waits until this is done.
    async (first) => {
      const ofPacks = first.presentations.flatMap(({ before }) => before?.consumableId ?? []);
      const changed = [...changedIds(first.consumables), ...ofPacks];
      if (changed.length > 0) await lockConsumables(tx, [...new Set(changed)]);
      const packs = await holdRows(tx, 'presentations', changedIds(first.presentations));
      return packs || changed.length > 0;
    },
  );
  await writeConsumables(to, plan.consumables);
  const ofTerms = Object.keys(NO_PACK_TERMS);
  const packs = plan.presentations.flatMap((write) => restOfWrite(write, ofTerms) ?? []);
  await writePresentations(to, packs, idsByName(known));
  await writePackTerms(
    to,
    plan.presentations.flatMap((write) => partOfWrite(write, ofTerms) ?? []),
  );
  return [...plan.fates];
}

async function writePackTerms(to: Importing, writes: readonly ToWrite[]): Promise<void> {
  if (writes.length === 0) return;
  const terms = await loadPresentationTerms(to.tx);
  const said = writes.map(({ id, values }) => {
    const before = terms.get(id) ?? null;
    return { id, before, after: packTermsOf(values, before?.prices ?? []) };
  });
  await takeInPresentationTerms(to, said);
}

function changedIds(writes: readonly ToWrite[]): string[] {
  return writes.flatMap(({ id, before }) => (before ? [id] : []));
}

function idsByName(things: readonly Thing[]): Map<string, string> {
  return new Map(things.map(({ id, values }) => [nameKey(values.name), id]));
}
