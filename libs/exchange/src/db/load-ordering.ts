import type { Tx } from '#lib/platform';
import { loadPresentationTerms, loadSupplyTerms } from '#lib/purchasing';
import type { Goods } from '../domain/plan/goods.js';
import { nameKey, type Thing } from '../domain/plan/merge.js';
import { packTermValues, termValues } from '../domain/plan/terms.js';
import { loadConsumables, loadPresentations, loadSuppliers } from './load-master.js';

/** Suppliers with what they ask for, by the keys of the columns. */
export async function loadSuppliersWithTerms(tx: Tx): Promise<Thing[]> {
  const terms = await loadSupplyTerms(tx);
  return (await loadSuppliers(tx)).map(({ id, values }) => ({
    id,
    values: { ...values, ...termValues(terms.get(id)) },
  }));
}

/** Packs with how they are sold, by the keys of the columns, and consumableId. */
export async function loadPresentationsWithTerms(tx: Tx): Promise<Thing[]> {
  const terms = await loadPresentationTerms(tx);
  return (await loadPresentations(tx)).map(({ id, values }) => ({
    id,
    values: { ...values, ...packTermValues(terms.get(id)) },
  }));
}

/** Consumables and their packs, as lists name them. */
export async function loadGoods(tx: Tx): Promise<Goods> {
  const packs = new Map<string, Map<string, string>>();
  for (const { id, values } of await loadPresentations(tx)) {
    const of = packs.get(values.consumableId ?? '') ?? new Map<string, string>();
    of.set(nameKey(values.presentation), id);
    packs.set(values.consumableId ?? '', of);
  }
  return new Map(
    (await loadConsumables(tx)).map(({ id, values }) => [
      nameKey(values.consumable, values.shade, values.size, values.grit),
      { id, stockUnit: values.stockUnit ?? '', packs: packs.get(id) ?? new Map<string, string>() },
    ]),
  );
}
