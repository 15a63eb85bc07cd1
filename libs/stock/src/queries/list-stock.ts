import { Injectable } from '@nestjs/common';
import { type Actor, Clock, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { StockPageDto } from '../http/stock-answers.dto.js';
import type { StockQueryDto } from '../http/stock-queries.dto.js';
import { containing } from './consumable-ref.js';
import { HOLDING_FACTS, type HoldingRow, toHolding } from './holding-facts.js';

/** What a list is ordered by; the holding's id decides between equals. */
const SORTS = {
  consumable: { first: 'lower(consumable_name)', firstType: 'text', second: 'expiry_key' },
  expiry: { first: 'expiry_key', firstType: 'date', second: 'lower(consumable_name)' },
  value: { first: '-value', firstType: 'numeric', second: 'lower(consumable_name)' },
} as const;

function listSql(sort: keyof typeof SORTS): string {
  const { first, firstType, second } = SORTS[sort];
  const secondType = sort === 'consumable' ? 'date' : 'text';
  return `
WITH facts AS (${HOLDING_FACTS}
  AND ($3::uuid IS NULL OR l.consumable_id = $3)
  AND ($4::text IS NULL OR lower(c.category) = lower($4))
  AND ($5::text IS NULL OR lower(c.shade) = lower($5))
  AND ($6::uuid IS NULL OR h.location_id = $6)
  AND ($7::uuid IS NULL OR l.lot_id = $7)
  AND ($8::boolean IS NULL OR (h.opened_on IS NOT NULL) = $8)
  AND ($9::text IS NULL
       OR lower(concat_ws(' ', c.name, c.shade, c.size, c.grit, t.lot_number)) LIKE $9)
  AND ($15::uuid IS NULL OR h.id = $15)
), keyed AS (
  SELECT *, coalesce(effective_expiry, DATE '9999-12-31') AS expiry_key FROM facts
  WHERE $10::text IS NULL OR status = $10
)
SELECT *, ${first} AS first_key, ${second} AS second_key FROM keyed
WHERE $11::text IS NULL
   OR (${first}, ${second}, id) > ($11::${firstType}, $12::${secondType}, $13::uuid)
ORDER BY first_key, second_key, id
LIMIT $14`;
}

const LISTS = {
  consumable: listSql('consumable'),
  expiry: listSql('expiry'),
  value: listSql('value'),
};

interface KeyedRow extends HoldingRow {
  readonly first_key: string;
  readonly second_key: string;
}

/** What is on the shelves: every sealed quantity and every opened container, with its value. */
@Injectable()
export class ListStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: StockQueryDto): Promise<StockPageDto> {
    const sort = query.sort ?? 'consumable';
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null, null] : decodeCursor(query.cursor, 3);
    const values = [
      actor.practiceId,
      this.clock.today(actor.timeZone),
      query.consumableId ?? null,
      query.category ?? null,
      query.shade ?? null,
      query.locationId ?? null,
      query.lotId ?? null,
      query.opened === undefined ? null : query.opened === 'true',
      containing(query.q),
      query.status ?? null,
      ...after,
      limit + 1,
      query.holdingId ?? null,
    ];
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<KeyedRow>(LISTS[sort], values),
    );
    const page = toPage(rows, limit, toHolding, (r) => [r.first_key, r.second_key, r.id]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}
