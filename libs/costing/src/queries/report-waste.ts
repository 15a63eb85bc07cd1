import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, UnitOfWork } from '#lib/platform';
import { microOf, moneyText, NOT_REVERSED, quantityText } from '#lib/stock';
import type { PeriodQueryDto } from '../http/costing-queries.dto.js';
import type { ChairWasteRowDto, WasteReportDto, WriteOffRowDto } from '../http/usage-waste.dto.js';

const WRITE_OFFS = `
SELECT to_char(m.occurred_on, 'YYYY-MM') AS month, m.waste_reason AS reason, c.category,
       c.stock_unit AS unit, sum(m.quantity) AS quantity, sum(m.cost) AS cost
FROM movements m
JOIN layers l ON l.id = m.layer_id
JOIN consumables c ON c.id = l.consumable_id
WHERE m.practice_id = $1 AND m.to_account = 'waste' AND ${NOT_REVERSED}
  AND ($2::date IS NULL OR m.occurred_on >= $2) AND ($3::date IS NULL OR m.occurred_on <= $3)
GROUP BY 1, 2, 3, 4 ORDER BY 1 DESC, cost DESC, 2, 3, 4`;

const CHAIRSIDE = `
SELECT to_char(v.visited_on, 'YYYY-MM') AS month, c.category, c.stock_unit AS unit,
       sum(u.placed) AS placed, sum(u.charged) AS charged, sum(u.charged - u.placed) AS wasted,
       sum(CASE WHEN u.charged = 0 THEN 0
                ELSE round(u.cost * (u.charged - u.placed) / u.charged, 6) END) AS cost
FROM usage_lines u
JOIN visits v ON v.id = u.visit_id
JOIN consumables c ON c.id = u.consumable_id
WHERE u.practice_id = $1 AND v.reversed_at IS NULL
  AND ($2::date IS NULL OR v.visited_on >= $2) AND ($3::date IS NULL OR v.visited_on <= $3)
GROUP BY 1, 2, 3 HAVING sum(u.charged - u.placed) > 0 ORDER BY 1 DESC, cost DESC, 2, 3`;

const RETAKES = `
SELECT count(*) FILTER (WHERE r.attempts > 1 OR r.redo_of IS NOT NULL)::int AS restorations,
       coalesce(sum(r.attempts - CASE WHEN r.redo_of IS NULL THEN 1 ELSE 0 END), 0)::int
         AS extra_attempts,
       coalesce(sum(r.retake_cost), 0) AS cost
FROM restorations r JOIN visits v ON v.id = r.visit_id
WHERE r.practice_id = $1 AND v.reversed_at IS NULL
  AND ($2::date IS NULL OR v.visited_on >= $2) AND ($3::date IS NULL OR v.visited_on <= $3)`;

interface WriteOffRow {
  readonly month: string;
  readonly reason: string;
  readonly category: string;
  readonly unit: string;
  readonly quantity: string;
  readonly cost: string;
}

interface ChairsideRow {
  readonly month: string;
  readonly category: string;
  readonly unit: string;
  readonly placed: string;
  readonly charged: string;
  readonly wasted: string;
  readonly cost: string;
}

interface RetakesRow {
  readonly restorations: number;
  readonly extra_attempts: number;
  readonly cost: string;
}

/** What was paid for and helped nobody: thrown away, left in containers, done again. */
@Injectable()
export class ReportWaste {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: PeriodQueryDto): Promise<WasteReportDto> {
    const values = [actor.practiceId, query.from ?? null, query.to ?? null];
    return this.uow.read(actor.practiceId, async (tx) => {
      const writeOffs = await tx.query<WriteOffRow>(WRITE_OFFS, values);
      const chairside = await tx.query<ChairsideRow>(CHAIRSIDE, values);
      const [retakes] = await tx.query<RetakesRow>(RETAKES, values);
      if (!retakes) throw new Error('A report has no retakes');
      return toReport(actor, writeOffs, chairside, retakes);
    });
  }
}

function toReport(
  actor: Actor,
  writeOffs: readonly WriteOffRow[],
  chairside: readonly ChairsideRow[],
  retakes: RetakesRow,
): WasteReportDto {
  const wrong = costOf(writeOffs.filter((row) => row.reason === 'wrong shade opened'));
  return {
    currency: actor.currency,
    writeOffs: writeOffs.map(toWriteOff),
    writeOffCost: text(costOf(writeOffs)),
    chairside: chairside.map(toChairside),
    chairsideCost: text(costOf(chairside)),
    retakes: {
      restorations: retakes.restorations,
      extraAttempts: retakes.extra_attempts,
      cost: moneyText(retakes.cost),
    },
    wrongShade: {
      retakeCost: moneyText(retakes.cost),
      writeOffCost: text(wrong),
      total: text(wrong + microOf(retakes.cost)),
    },
  };
}

function costOf(rows: readonly { readonly cost: string }[]): bigint {
  return rows.reduce((sum, row) => sum + microOf(row.cost), 0n);
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}

function toWriteOff(row: WriteOffRow): WriteOffRowDto {
  return { ...row, quantity: quantityText(row.quantity), cost: moneyText(row.cost) };
}

function toChairside(row: ChairsideRow): ChairWasteRowDto {
  return {
    month: row.month,
    category: row.category,
    unit: row.unit,
    placed: quantityText(row.placed),
    charged: quantityText(row.charged),
    wasted: quantityText(row.wasted),
    cost: moneyText(row.cost),
  };
}
