import { Injectable } from '@nestjs/common';
import { formatMoney, type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  moneyText,
  quantityText,
  toConsumable,
} from '#lib/stock';
import { listsBy } from '../domain/lists-by.js';
import { type Period, periodOf } from '../domain/period.js';
import { shareOf } from '../domain/variance.js';
import type { PriceChangeQueryDto } from '../http/costing-queries.dto.js';
import type {
  PriceChangeDto,
  PriceChangesDto,
  RepricedConsumableDto,
} from '../http/price-change.dto.js';

// The price of a day is that of all the goods of the day together. A price holds until the next one
// that differs; what was used meanwhile was used at it, whichever container it came from.
const CHANGES = `
WITH paid AS (
  SELECT l.consumable_id, l.received_on, sum(l.landed_cost) / sum(l.received) AS unit,
         (array_agg(l.delivery_id ORDER BY l.id))[1] AS delivery_id
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.practice_id = $1 AND d.reversed_at IS NULL AND l.landed_cost > 0
    AND NOT l.undone
    AND l.received_on <= $3 AND ($4::uuid IS NULL OR l.consumable_id = $4)
  GROUP BY 1, 2
), compared AS (
  SELECT consumable_id, received_on, delivery_id, round(unit, 6) AS price,
         lag(round(unit, 6)) OVER (PARTITION BY consumable_id ORDER BY received_on) AS before
  FROM paid
), changed AS (
  SELECT *, lead(received_on) OVER (PARTITION BY consumable_id ORDER BY received_on) AS until
  FROM compared WHERE before IS NULL OR price <> before
), used AS (
  SELECT u.consumable_id, v.visited_on, sum(u.charged) AS quantity
  FROM usage_lines u JOIN visits v ON v.id = u.visit_id
  WHERE u.practice_id = $1 AND v.reversed_at IS NULL AND v.visited_on BETWEEN $2 AND $3
    AND ($4::uuid IS NULL OR u.consumable_id = $4)
  GROUP BY 1, 2
), stepped AS (
  SELECT x.consumable_id, x.received_on, x.delivery_id, x.price, x.before,
         coalesce(sum(s.quantity), 0) AS used
  FROM changed x
  LEFT JOIN used s ON s.consumable_id = x.consumable_id AND s.visited_on >= x.received_on
   AND (x.until IS NULL OR s.visited_on < x.until)
  WHERE x.before IS NOT NULL AND x.received_on >= $2
  GROUP BY 1, 2, 3, 4, 5
)
SELECT s.received_on, s.delivery_id, s.price, s.before, s.used, p.name AS supplier_name,
       ${CONSUMABLE_COLUMNS}
FROM stepped s
JOIN consumables c ON c.id = s.consumable_id
JOIN deliveries d ON d.id = s.delivery_id
JOIN suppliers p ON p.id = d.supplier_id
ORDER BY c.id, s.received_on`;

interface Row extends ConsumableColumns {
  readonly received_on: string;
  readonly delivery_id: string;
  readonly supplier_name: string;
  readonly price: string;
  readonly before: string;
  readonly used: string;
}

interface Repriced {
  readonly first: Money;
  readonly sinceFirst: bigint;
  readonly dto: RepricedConsumableDto;
}

/** How prices changed from delivery to delivery, and what that did to the cost of what was used. */
@Injectable()
export class ReportPriceChanges {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: PriceChangeQueryDto): Promise<PriceChangesDto> {
    const period: Period = periodOf(query, this.clock.today(actor.timeZone));
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<Row>(CHANGES, [
        actor.practiceId,
        period.from,
        period.to,
        query.consumableId ?? null,
      ]),
    );
    const repriced = [...listsBy(rows, (row) => row.consumable_id).values()].flatMap(repricedOf);
    repriced.sort((a, b) => Number(b.sinceFirst - a.sinceFirst));
    const effect = repriced.reduce((sum, each) => sum + each.sinceFirst, 0n);
    return {
      currency: actor.currency,
      ...period,
      effect: formatMoney(moneyFromMicro(effect)),
      consumables: repriced.map((each) => each.dto),
    };
  }
}

function repricedOf(rows: readonly Row[]): Repriced[] {
  const [earliest, latest] = [rows[0], rows.at(-1)];
  if (!earliest || !latest) return [];
  const first = moneyFromMicro(microOf(earliest.before));
  const sinceFirst = rows.reduce((sum, row) => sum + effectOf(row, first), 0n);
  const dto = {
    consumable: toConsumable(earliest),
    priceBefore: moneyText(earliest.before),
    priceNow: moneyText(latest.price),
    change: changeOf(microOf(latest.price), first),
    effect: formatMoney(moneyFromMicro(sinceFirst)),
    changes: rows.map(toChange),
  };
  return [{ first, sinceFirst, dto }];
}

function toChange(row: Row): PriceChangeDto {
  const before = moneyFromMicro(microOf(row.before));
  return {
    receivedOn: row.received_on,
    deliveryId: row.delivery_id,
    supplierName: row.supplier_name,
    priceBefore: formatMoney(before),
    price: moneyText(row.price),
    change: changeOf(microOf(row.price), before),
    used: quantityText(row.used),
    effect: formatMoney(moneyFromMicro(effectOf(row, before))),
  };
}

/** What was used at this price, by how much dearer it is than another. */
function effectOf(row: Row, than: Money): bigint {
  return multiplyRatio(microOf(row.used), microOf(row.price) - than, 1_000_000n, 'half-up');
}

/** As a share of the price before: 0.1250 for an eighth more. */
function changeOf(price: bigint, before: bigint): string {
  const size = price > before ? price - before : before - price;
  const share = shareOf(size, before) ?? 0n;
  return formatMoney(moneyFromMicro(price < before ? -share : share), 4);
}
