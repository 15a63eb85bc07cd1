import { loadPresentationParts } from '#lib/catalogue';
import type { Tx } from '#lib/platform';
import {
  loadOwnPlanning,
  loadPresentationTerms,
  loadSubstitutes,
  loadSupplyTerms,
} from '#lib/purchasing';
import type { Values } from '../domain/plan/merge.js';
import { partValues } from '../domain/plan/plan-packs.js';
import { planningValues } from '../domain/plan/plan-planning.js';
import { shortest } from '../domain/read-rows.js';
import { loadConsumables, loadPresentations, loadSuppliers } from './load-master.js';

export async function exportClosures(tx: Tx): Promise<Values[]> {
  const terms = await loadSupplyTerms(tx);
  return (await loadSuppliers(tx)).flatMap(({ id, values }) =>
    (terms.get(id)?.closures ?? []).map(({ firstDay, lastDay, note }) => ({
      ...{ supplier: values.name ?? null, firstDay, lastDay, note },
    })),
  );
}

export async function exportPriceLists(tx: Tx): Promise<Values[]> {
  const terms = await loadPresentationTerms(tx);
  return (await loadPacks(tx)).flatMap(({ id, names }) =>
    (terms.get(id)?.prices ?? []).map(({ fromPacks, packPrice }) => ({
      ...names,
      fromPacks: String(fromPacks),
      packPrice: shortest(packPrice),
    })),
  );
}

/** In the order that the parts of a pack have. */
export async function exportKitParts(tx: Tx): Promise<Values[]> {
  const kits = await loadPresentationParts(tx);
  const names = await loadNames(tx);
  return (await loadPacks(tx)).flatMap((pack) =>
    (kits.get(pack.id) ?? []).map((part) => {
      const { consumable, shade, size, grit } = names.get(part.consumableId) ?? {};
      const said = { part: consumable, partShade: shade, partSize: size, partGrit: grit };
      return { ...pack.names, ...partValues(part), ...nulls(said) };
    }),
  );
}

export async function exportPlanning(tx: Tx): Promise<Values[]> {
  const own = await loadOwnPlanning(tx);
  return [...(await loadNames(tx))].flatMap(([id, names]) => {
    const of = own.get(id);
    return of ? [{ ...names, ...planningValues(of) }] : [];
  });
}

/** The pairs that stand; who once said so, and what was taken back, stays behind. */
export async function exportSubstitutes(tx: Tx): Promise<Values[]> {
  const names = await loadNames(tx);
  const pairs = (await loadSubstitutes(tx)).filter((pair) => pair.withdrawnAt === null);
  return pairs.map(({ consumableId, standInId, note }) => {
    const { consumable, shade, size, grit } = names.get(standInId) ?? {};
    const other = {
      standIn: consumable,
      standInShade: shade,
      standInSize: size,
      standInGrit: grit,
    };
    return { ...names.get(consumableId), ...nulls(other), note };
  });
}

function nulls(values: Readonly<Record<string, string | null | undefined>>): Values {
  return Object.fromEntries(Object.entries(values).map(([key, value]) => [key, value ?? null]));
}

/** What names each consumable, by its id, in the order of names. */
async function loadNames(tx: Tx): Promise<Map<string, Values>> {
  return new Map(
    (await loadConsumables(tx)).map(({ id, values: { consumable, shade, size, grit } }) => [
      id,
      nulls({ consumable, shade, size, grit }),
    ]),
  );
}

async function loadPacks(tx: Tx): Promise<{ readonly id: string; readonly names: Values }[]> {
  const names = await loadNames(tx);
  const packs = (await loadPresentations(tx)).map(({ id, values }) => {
    const of = values.consumableId ?? '';
    return { id, of, names: { ...names.get(of), ...nulls({ presentation: values.presentation }) } };
  });
  const place = new Map([...names.keys()].map((id, i) => [id, i]));
  return packs.sort((a, b) => (place.get(a.of) ?? 0) - (place.get(b.of) ?? 0));
}
