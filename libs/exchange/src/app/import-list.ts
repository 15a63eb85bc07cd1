import { Injectable } from '@nestjs/common';
import { MAX_LEVELS } from '#lib/catalogue';
import { moneyFromMicro, quantityFromMicro } from '#lib/measure';
import { newId, type Tx } from '#lib/platform';
import { lockConsumables, ReceiveOpeningStock } from '#lib/stock';
import {
  loadConsumables,
  loadLocations,
  loadPresentations,
  loadSuppliers,
  placesWithStock,
  receivedConsumables,
  receivedPresentations,
} from '../db/load-master.js';
import { loadEarlier, loadOpeningFacts, rememberRows } from '../db/load-opening.js';
import {
  writeConsumables,
  writeLocations,
  writePresentations,
  writeSuppliers,
} from '../db/write-master.js';
import type { RowFate } from '../domain/fate.js';
import type { Kind } from '../domain/kinds.js';
import { nameKey, type Thing, type ToWrite } from '../domain/plan/merge.js';
import { planConsumables } from '../domain/plan/plan-consumables.js';
import { planLocations } from '../domain/plan/plan-locations.js';
import { judgeOpening, readOpening } from '../domain/plan/plan-opening-stock.js';
import { planSuppliers } from '../domain/plan/plan-suppliers.js';
import type { ListRow } from '../domain/read-rows.js';
import { ImportBookedVisits } from './import-booked-visits.js';
import { ImportTemplates } from './import-templates.js';
import type { Importing } from './importing.js';

/**
 * Brings the rows of one list into the book, in the caller's transaction, and says what became of each.
 * Rows with errors are left out; the caller rolls everything back when there are any.
 */
@Injectable()
export class ImportList {
  constructor(
    private readonly openingStock: ReceiveOpeningStock,
    private readonly bookedVisits: ImportBookedVisits,
    private readonly templates: ImportTemplates,
  ) {}

  run(importing: Importing, kind: Kind, rows: readonly ListRow[]): Promise<RowFate[]> {
    switch (kind) {
      case 'suppliers':
        return importSuppliers(importing, rows);
      case 'locations':
        return importLocations(importing, rows);
      case 'consumables':
        return importConsumables(importing, rows);
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
    const layerIds = await this.openingStock.runMany(tx, actor, lines, onProgress);
    await rememberRows(tx, fresh, layerIds, today);
    return fates;
  }
}

async function importSuppliers(to: Importing, rows: readonly ListRow[]): Promise<RowFate[]> {
  const { tx } = to;
  const { fates, writes } = await settled(
    async () => planSuppliers(await loadSuppliers(tx), rows, newId),
    async (plan) => holdRows(tx, 'suppliers', plan.writes),
  );
  await writeSuppliers(to, writes);
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
    async (plan) => holdRows(tx, 'locations', plan.writes),
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
        presentations: await loadPresentations(tx),
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
      const packs = await holdRows(tx, 'presentations', first.presentations);
      return packs || changed.length > 0;
    },
  );
  await writeConsumables(to, plan.consumables);
  await writePresentations(to, plan.presentations, idsByName(known));
  return [...plan.fates];
}

/**
 * Plans; holds what would be changed, so that nobody else's change is lost, and nothing that would not,
 * so that nobody waits for a file; and plans once more on what was held.
 */
async function settled<P>(
  plan: () => Promise<P>,
  hold: (first: P) => Promise<boolean>,
): Promise<P> {
  const first = await plan();
  return (await hold(first)) ? plan() : first;
}

function changedIds(writes: readonly ToWrite[]): string[] {
  return writes.flatMap(({ id, before }) => (before ? [id] : []));
}

async function holdRows(
  tx: Tx,
  table: 'suppliers' | 'locations' | 'presentations',
  writes: readonly ToWrite[],
): Promise<boolean> {
  const ids = changedIds(writes);
  if (ids.length === 0) return false;
  const sql = `SELECT FROM ${table} WHERE id = ANY($1::uuid[]) ORDER BY id FOR NO KEY UPDATE`;
  await tx.query(sql, [ids]);
  return true;
}

function idsByName(things: readonly Thing[]): Map<string, string> {
  return new Map(things.map(({ id, values }) => [nameKey(values.name), id]));
}
