import { Injectable } from '@nestjs/common';
import { type Actor, Clock, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { StockSummaryDto, StockSummaryPageDto } from '../http/stock-answers.dto.js';
import type { StockSummaryQueryDto } from '../http/stock-queries.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  containing,
  toConsumable,
} from './consumable-ref.js';
import { HOLDING_FACTS } from './holding-facts.js';
import { moneyText, quantityText } from './wire.js';

/** What the lines are ordered by; name and id decide between equals. */
const SORTS = {
  consumable: { key: "''", type: 'text' },
  expiry: { key: "coalesce(m.earliest, DATE '9999-12-31')", type: 'date' },
  value: { key: '-coalesce(m.value, 0)', type: 'numeric' },
} as const;

function summarySql(sort: keyof typeof SORTS): string {
  const { key, type } = SORTS[sort];
  return `
WITH facts AS (${HOLDING_FACTS} AND ($3::uuid IS NULL OR h.location_id = $3)),
totals AS MATERIALIZED (
  SELECT consumable_id, sum(value) AS value,
         sum(on_hand) FILTER (WHERE status = 'usable') AS usable,
         sum(on_hand) FILTER (WHERE status <> 'usable') AS blocked,
         count(*) FILTER (WHERE opened_on IS NOT NULL)::int AS opened,
         min(effective_expiry) FILTER (WHERE status = 'usable') AS earliest
  FROM facts GROUP BY consumable_id
), owed AS MATERIALIZED (
  SELECT consumable_id, sum(quantity - settled) AS quantity FROM shortfalls
  WHERE practice_id = $1 AND settled < quantity AND cancelled_at IS NULL GROUP BY consumable_id
)
SELECT ${CONSUMABLE_COLUMNS}, ${key}::${type} AS sort_key, lower(c.name) AS name_key,
       c.reorder_at, m.earliest,
       coalesce(m.usable, 0) AS usable, coalesce(m.blocked, 0) AS blocked,
       coalesce(m.opened, 0) AS opened, coalesce(m.value, 0) AS value,
       coalesce(s.quantity, 0) AS owed
FROM consumables c
LEFT JOIN totals m ON m.consumable_id = c.id
LEFT JOIN owed s ON s.consumable_id = c.id
WHERE c.practice_id = $1
  AND (m.consumable_id IS NOT NULL OR ($3::uuid IS NULL AND (c.active OR s.quantity > 0)))
  AND ($4::text IS NULL OR lower(c.category) = lower($4))
  AND ($5::text IS NULL OR lower(concat_ws(' ', c.name, c.shade, c.size, c.grit)) LIKE $5)
  AND ($6::text IS NULL OR lower(c.shade) = lower($6))
  AND ($11::uuid IS NULL OR c.id = $11)
  AND ($7::text IS NULL
       OR (${key}::${type}, lower(c.name), c.id) > ($7::${type}, $8::text, $9::uuid))
ORDER BY sort_key, name_key, c.id
LIMIT $10`;
}

const SUMMARIES = {
  consumable: summarySql('consumable'),
  expiry: summarySql('expiry'),
  value: summarySql('value'),
};

interface SummaryRow extends ConsumableColumns {
  readonly sort_key: string;
  readonly name_key: string;
  readonly reorder_at: string | null;
  readonly earliest: string | null;
  readonly usable: string;
  readonly blocked: string;
  readonly opened: number;
  readonly value: string;
  readonly owed: string;
}

/** One line per consumable: what of it is usable, what is not, what it is worth. */
@Injectable()
export class SummariseStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: StockSummaryQueryDto): Promise<StockSummaryPageDto> {
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null, null] : decodeCursor(query.cursor, 3);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<SummaryRow>(SUMMARIES[query.sort ?? 'consumable'], [
        actor.practiceId,
        this.clock.today(actor.timeZone),
        query.locationId ?? null,
        query.category ?? null,
        containing(query.q),
        query.shade ?? null,
        ...after,
        limit + 1,
        query.consumableId ?? null,
      ]),
    );
    const page = toPage(rows, limit, toSummary, (r) => [r.sort_key, r.name_key, r.consumable_id]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}

function toSummary(row: SummaryRow): StockSummaryDto {
  return {
    consumable: toConsumable(row),
    usable: quantityText(row.usable),
    blocked: quantityText(row.blocked),
    openedContainers: row.opened,
    value: moneyText(row.value),
    earliestExpiry: row.earliest,
    reorderAt: row.reorder_at === null ? null : quantityText(row.reorder_at),
    openShortfall: quantityText(row.owed),
  };
}
