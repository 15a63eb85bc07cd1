import type { Quantity } from '#lib/measure';
import { type Actor, type Clock, type IsoDate, type Tx, unknownReference } from '#lib/platform';
import { lockHoldings } from '../db/lock-candidates.js';
import type { Candidate } from '../domain/candidate.js';
import { refuseStock } from '../stock.refusals.js';

/** The day something happened: today when not said, never later than today. */
export function dayOf(
  given: IsoDate | null | undefined,
  field: string,
  actor: Actor,
  clock: Clock,
): IsoDate {
  const today = clock.today(actor.timeZone);
  if (!given) return today;
  if (given > today) {
    throw refuseStock('date_in_future', `${given} is after today, ${today}.`, [
      { field, message: `must not be after today, ${today}` },
    ]);
  }
  return given;
}

/** Locks one holding named in a request and checks that it was there on the day. */
export async function lockHolding(tx: Tx, id: string, day: IsoDate): Promise<Candidate> {
  const holding = (await lockHoldings(tx, [id])).get(id);
  if (!holding) throw unknownReference('holdingId', 'holding');
  refuseBeforeReceipt(holding, day, 'holdingId');
  return holding;
}

export function refuseBeforeReceipt(holding: Candidate, day: IsoDate, field: string): void {
  const since = holding.openedOn ?? holding.receivedOn;
  if (day >= since) return;
  const verb = holding.openedOn === null ? 'received' : 'opened';
  throw refuseStock('received_later', `These goods were ${verb} on ${since}, after ${day}.`, [
    { field, message: `was ${verb} on ${since}` },
  ]);
}

export function refuseMoreThanThere(holding: Candidate, wanted: Quantity, shown: string): void {
  if (wanted <= holding.onHand) return;
  throw refuseStock('not_enough_stock', `Only ${shown} are there.`, [
    { field: 'quantity', message: `must be at most ${shown}` },
  ]);
}

export interface UnitRow {
  readonly stock_unit: string;
  readonly life_after_opening: number | null;
  readonly life_after_opening_unit: 'day' | 'month' | null;
}

export async function unitOf(tx: Tx, consumableId: string): Promise<UnitRow> {
  const [row] = await tx.query<UnitRow>(
    `SELECT stock_unit, life_after_opening, life_after_opening_unit FROM consumables WHERE id = $1`,
    [consumableId],
  );
  if (!row) throw new Error(`Consumable ${consumableId} of a holding is missing`);
  return row;
}
