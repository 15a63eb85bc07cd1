import { recordAudits } from '#lib/access';
import { type Actor, invalidFields, newId, type Tx } from '#lib/platform';
import { saveManyOwnPlanning } from '../db/planning-settings.js';
import { saveManyPresentationTerms } from '../db/presentation-terms.js';
import { insertManySubstitutes } from '../db/substitutes.js';
import { saveManySupplyTerms } from '../db/supply-terms.js';
import { checkClosures } from '../domain/planning/closures.js';
import { checkOwnPlanning } from '../domain/planning/own-planning.js';
import type {
  ConsumablePlanning,
  PresentationTerms,
  SupplyTerms,
} from '../domain/planning/planning-settings.js';
import { checkPriceList } from '../domain/planning/price-list.js';

/** What is said of a thing from now on; before is null where nothing was said. */
export interface Said<T> {
  /** Of the supplier, presentation or consumable. */
  readonly id: string;
  readonly before: T | null;
  readonly after: T;
}

export interface StandIn {
  readonly consumableId: string;
  readonly standInId: string;
  readonly note: string | null;
}

interface Taking {
  readonly tx: Tx;
  readonly actor: Actor;
}

/**
 * The terms of many suppliers, in the caller's transaction, each with its entry in the trail. Refuses
 * closures that overlap or last too long, naming them.
 */
export async function takeInSupplyTerms(
  { tx, actor }: Taking,
  said: readonly Said<SupplyTerms>[],
): Promise<void> {
  refuse(said, ({ after }) => checkClosures(after));
  await saveManySupplyTerms(tx, said.map(ofOne));
  await recordAll({ tx, actor }, 'supplier-terms.changed', 'supplier', said);
}

/** How many presentations are sold. Refuses price lists that do not start at one pack and fall. */
export async function takeInPresentationTerms(
  { tx, actor }: Taking,
  said: readonly Said<PresentationTerms>[],
): Promise<void> {
  refuse(said, ({ after }) => {
    const wrong = checkPriceList(after.prices);
    return wrong && { field: `prices[${wrong.at}].${wrong.field}`, message: wrong.message };
  });
  await saveManyPresentationTerms(tx, said.map(ofOne));
  await recordAll({ tx, actor }, 'presentation-terms.changed', 'presentation', said);
}

/** What many consumables have of their own in planning. */
export async function takeInOwnPlanning(
  { tx, actor }: Taking,
  said: readonly Said<ConsumablePlanning>[],
): Promise<void> {
  refuse(said, ({ after }) => checkOwnPlanning(after));
  await saveManyOwnPlanning(tx, said.map(ofOne));
  await recordAll({ tx, actor }, 'consumable-planning.changed', 'consumable', said);
}

/**
 * New pairs of what may stand in for what, in the word of the actor. Both are consumables of the book,
 * counted in the same unit: the caller has seen to it. Pairs that stand already are left as they are.
 */
export async function takeInSubstitutes(
  { tx, actor }: Taking,
  pairs: readonly StandIn[],
  madeAt: Date,
): Promise<void> {
  const rows = pairs.map((pair) => ({ ...pair, id: newId(), personId: actor.personId, madeAt }));
  const written = await insertManySubstitutes(tx, rows);
  const entries = rows.flatMap(({ id, consumableId, standInId, note }) => {
    if (!written.has(id)) return [];
    const details = { id, standInId, note };
    return {
      action: 'substitute.added',
      ...{ subjectKind: 'consumable', subjectId: consumableId, details },
    };
  });
  await recordAudits(tx, actor, entries);
}

function ofOne<T>({ id, after }: Said<T>): { readonly id: string; readonly said: T } {
  return { id, said: after };
}

function refuse<T>(
  said: readonly Said<T>[],
  check: (one: Said<T>) => { readonly field: string; readonly message: string } | null,
): void {
  const wrong = said.flatMap((one, i) => {
    const problem = check(one);
    return problem ? [{ field: `rows[${i}].${problem.field}`, message: problem.message }] : [];
  });
  if (wrong.length > 0) throw invalidFields(wrong);
}

function recordAll<T>(
  { tx, actor }: Taking,
  action: string,
  subjectKind: string,
  said: readonly Said<T>[],
): Promise<void> {
  const entries = said.map(({ id, before, after }) => ({
    ...{ action, subjectKind, subjectId: id },
    details: { before, after },
  }));
  return recordAudits(tx, actor, entries);
}
