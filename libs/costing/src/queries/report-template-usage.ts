import { Injectable } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  moneyText,
  quantityText,
  toConsumable,
} from '#lib/stock';
import type { TemplateUsageQueryDto } from '../http/costing-queries.dto.js';
import type { TemplateUsageDto, TemplateUsageRowDto } from '../http/usage-waste.dto.js';

const USAGE = `
WITH ranked AS (
  SELECT r.id, r.visit_id, r.tooth, r.template_id, r.template_version,
         row_number() OVER (PARTITION BY r.template_id, r.template_version
                            ORDER BY v.visited_on DESC, r.id DESC) AS rank
  FROM restorations r JOIN visits v ON v.id = r.visit_id
  WHERE r.practice_id = $1 AND v.reversed_at IS NULL AND ($2::uuid IS NULL OR r.template_id = $2)
), latest AS (SELECT * FROM ranked WHERE rank <= $3),
counted AS (
  SELECT template_id, template_version, count(*)::int AS restorations FROM latest GROUP BY 1, 2
), parts AS (
  SELECT l.template_id, l.template_version, u.consumable_id, 1 AS bearing,
         u.planned, u.placed, u.dispensed, u.charged, u.cost
  FROM latest l JOIN usage_lines u ON u.visit_id = l.visit_id AND u.restoration_id = l.id
  UNION ALL
  SELECT l.template_id, l.template_version, u.consumable_id, b.bearing,
         u.planned, u.placed, u.dispensed, u.charged, u.cost
  FROM latest l
  JOIN usage_lines u ON u.visit_id = l.visit_id AND u.restoration_id IS NULL
   AND (u.tooth IS NULL OR u.tooth = l.tooth)
  CROSS JOIN LATERAL (
    SELECT count(*)::int AS bearing FROM restorations x
    WHERE x.visit_id = u.visit_id AND (u.tooth IS NULL OR x.tooth = u.tooth)
  ) b
), sums AS (
  SELECT template_id, template_version, consumable_id, sum(planned / bearing) AS planned,
         sum(placed / bearing) AS placed, sum(dispensed / bearing) AS dispensed,
         sum(charged / bearing) AS charged, sum(cost / bearing) AS cost
  FROM parts GROUP BY 1, 2, 3
)
SELECT t.id AS template_id, t.name AS template_name, s.template_version,
       s.template_version = t.latest_version AS latest, n.restorations,
       round(s.planned / n.restorations, 6) AS planned,
       round(s.placed / n.restorations, 6) AS placed,
       round(s.dispensed / n.restorations, 6) AS dispensed,
       round(s.charged / n.restorations, 6) AS charged,
       round(s.dispensed / n.restorations, 6) - round(s.planned / n.restorations, 6) AS difference,
       round(s.cost / n.restorations, 6) AS cost, ${CONSUMABLE_COLUMNS}
FROM sums s
JOIN counted n USING (template_id, template_version)
JOIN procedure_templates t ON t.id = s.template_id
JOIN consumables c ON c.id = s.consumable_id
ORDER BY lower(t.name), t.id, s.template_version DESC, s.cost DESC, c.id`;

interface UsageRow extends ConsumableColumns {
  readonly template_id: string;
  readonly template_name: string;
  readonly template_version: number;
  readonly latest: boolean;
  readonly restorations: number;
  readonly planned: string;
  readonly placed: string;
  readonly dispensed: string;
  readonly charged: string;
  readonly difference: string;
  readonly cost: string;
}

/** How what was really used compares with what each version of a template plans. */
@Injectable()
export class ReportTemplateUsage {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: TemplateUsageQueryDto): Promise<TemplateUsageDto> {
    const last = query.last === undefined ? 50 : Number(query.last);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<UsageRow>(USAGE, [actor.practiceId, query.templateId ?? null, last]),
    );
    return { last, rows: rows.map(toRow) };
  }
}

function toRow(row: UsageRow): TemplateUsageRowDto {
  return {
    templateId: row.template_id,
    templateName: row.template_name,
    version: row.template_version,
    latest: row.latest,
    restorations: row.restorations,
    consumable: toConsumable(row),
    planned: quantityText(row.planned),
    placed: quantityText(row.placed),
    dispensed: quantityText(row.dispensed),
    charged: quantityText(row.charged),
    difference: quantityText(row.difference),
    cost: moneyText(row.cost),
  };
}
