import type pg from 'pg';
import { consumablesOf, deliveryLine, type Item, type SmallBook } from './book.js';
import type { Step } from './model-steps.js';

/** Makes every pack of adhesive a kit with a little etchant gel and three strips. */
export function kitParts(s: SmallBook): object {
  const part = (of: Item, more: object) => ({
    consumableId: of.id,
    sharePercent: '33.33',
    ...more,
  });
  const parts = [
    part(s.etchant, {
      dispensing: 'multi-use',
      containersPerPack: 1,
      contentPerContainer: '0.7',
    }),
    part(s.strip, { dispensing: 'by-piece', containersPerPack: 3, contentPerContainer: '1' }),
  ];
  return { parts };
}

/** The body of a delivery: a kit has no lots of its own, another line may come with two. */
export function delivery(s: SmallBook, the: Extract<Step, { do: 'deliver' }>): object {
  const lot = { lotNumber: the.lot, expiresOn: the.expires };
  const isKit = the.item === 'adhesive';
  const lots = [
    { packs: 1, ...lot },
    { packs: the.packs, lotNumber: 'L4', expiresOn: '2028-01-31' },
  ];
  const line = deliveryLine(
    ...([s[the.item as 'bib'], s[the.at as 'room']] as const),
    ...([the.twoLots && !isKit ? the.packs + 1 : the.packs, the.price] as const),
    the.twoLots && !isKit ? { lots } : lot,
  );
  return {
    supplierId: s.supplier,
    receivedOn: the.day,
    freight: the.freight,
    duty: the.duty,
    lines: [line],
  };
}

export type Post = (path: string, body: unknown) => Promise<number>;

/** One line as it should have been: what is not said stays as it is. */
export async function correct(
  owner: pg.Pool,
  s: SmallBook,
  the: Extract<Step, { do: 'correct' }>,
  post: Post,
) {
  const { rows } = await owner.query<Record<string, string>>(
    `SELECT delivery_id, line_number, presentation_id, packs, location_id,
       coalesce(kit_pack_price, pack_price)::text AS price
     FROM layers WHERE consumable_id = ANY($1) ORDER BY id`,
    [consumablesOf(s)],
  );
  const line = rows[the.which % Math.max(1, rows.length)];
  if (!line) return 404;
  return post(`/deliveries/${line.delivery_id}/lines/${line.line_number}/correction`, {
    presentationId: the.item ? s[the.item as 'bib'].presentation : line.presentation_id,
    packs: the.packs ?? line.packs,
    packPrice: the.price ?? line.price,
    locationId: the.at ? s[the.at as 'room'] : line.location_id,
    lotNumber: the.lot,
    expiresOn: the.expires,
    note: 'Entered wrongly.',
  });
}
