import { GENERAL } from './catalogue-general.js';
import { RESTORATIVE } from './catalogue-restorative.js';
import type { DemoConsumable, DemoPack } from './catalogue-types.js';
import { demoId } from './dice.js';

export const CATALOGUE: readonly DemoConsumable[] = [...RESTORATIVE, ...GENERAL];

const BY_KEY = new Map(CATALOGUE.map((row) => [row.key, row]));
const IDS = new Map(CATALOGUE.map((row) => [row.key, demoId('consumable', row.key)]));
const BY_ID = new Map(CATALOGUE.map((row) => [IDS.get(row.key), row]));

export function consumableId(key: string): string {
  const id = IDS.get(key);
  if (id === undefined) throw new Error(`The demo has no consumable ${key}`);
  return id;
}

export function consumableOf(key: string): DemoConsumable {
  const found = BY_KEY.get(key);
  if (!found) throw new Error(`The demo has no consumable ${key}`);
  return found;
}

export function consumableWithId(id: string): DemoConsumable {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`The demo has no consumable with the id ${id}`);
  return found;
}

export function presentationId(key: string, pack: DemoPack): string {
  return demoId('presentation', key, pack.name);
}

/** In stock units. */
export function contentOf(pack: DemoPack): number {
  return pack.containers * pack.content;
}

/** A trade item number with a check digit, in the range that is kept for examples. */
export function itemNumber(position: number): string {
  const digits = `09521${String(position).padStart(8, '0')}`;
  const sum = [...digits].reduce((total, d, i) => total + Number(d) * (i % 2 === 0 ? 3 : 1), 0);
  return `${digits}${(10 - (sum % 10)) % 10}`;
}
