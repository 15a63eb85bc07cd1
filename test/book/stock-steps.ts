import type pg from 'pg';
import type { Answer } from '../http/service.js';
import { deliveryLine, type Item, type SmallBook } from './book.js';

export interface HoldingRow {
  readonly id: string;
  readonly layer_id: string;
  readonly location_id: string;
  readonly on_hand: string;
  readonly opened_on: string | null;
  readonly use_by: string | null;
}

type Questions = Pick<pg.Client, 'query'>;

/** All holdings of a consumable, also empty ones, in the order in which they were made. */
export async function holdingsOf(owner: Questions, of: Item): Promise<HoldingRow[]> {
  const { rows } = await owner.query<HoldingRow>(
    `SELECT h.id, h.layer_id, h.location_id, trim_scale(h.on_hand)::text AS on_hand,
       h.opened_on::text, h.use_by::text
     FROM holdings h JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1 ORDER BY h.id`,
    [of.id],
  );
  return rows;
}

export async function firstHolding(owner: Questions, of: Item): Promise<HoldingRow> {
  const [first] = await holdingsOf(owner, of);
  if (!first) throw new Error('There is no holding yet');
  return first;
}

/** What has left each layer of a consumable, and at what cost. */
export async function layersOf(owner: Questions, of: Item): Promise<object[]> {
  const { rows } = await owner.query<object>(
    `SELECT trim_scale(received)::text AS received, trim_scale(out_quantity)::text AS out,
       trim_scale(landed_cost)::text AS landed, trim_scale(out_cost)::text AS cost
     FROM layers WHERE consumable_id = $1 ORDER BY id`,
    [of.id],
  );
  return rows;
}

/** One pack of something in the store; its sealed holding. */
export async function shelve(
  owner: Questions,
  s: SmallBook,
  of: Item,
  more: { packs?: number; price?: string; lotNumber?: string; expiresOn?: string } = {},
): Promise<HoldingRow> {
  const { packs = 1, price = '10', ...lot } = more;
  await s.book.deliver(s.supplier, '2026-01-05', [deliveryLine(of, s.store, packs, price, lot)]);
  return firstHolding(owner, of);
}

/** How a request was declined, in short. */
export function refusalOf(answer: Answer): string {
  const errors = (answer.body.errors ?? []) as { field: string }[];
  return [answer.status, answer.body.code, ...errors.map((e) => e.field)].join(' ');
}
