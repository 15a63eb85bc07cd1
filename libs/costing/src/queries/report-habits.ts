import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { microOf, NOT_REVERSED, quantityText } from '#lib/stock';
import { costliest, HABITS, type HabitKind, savedPerYear } from '../domain/habits.js';
import { daysIn, periodOf } from '../domain/period.js';
import { shareOf } from '../domain/variance.js';
import type { HabitQueryDto } from '../http/costing-queries.dto.js';
import type { HabitDto, HabitsDto } from '../http/habit.dto.js';

const RETAKES = `
SELECT 'retakes' AS kind, NULL AS consumable_id, NULL AS consumable_name, NULL AS shade,
       t.id AS template_id, t.name AS template_name, NULL AS reason, 'attempt' AS unit,
       count(*)::int AS times,
       sum(r.attempts - CASE WHEN r.redo_of IS NULL THEN 1 ELSE 0 END)::numeric AS quantity,
       sum(r.retake_cost) AS cost
FROM restorations r
JOIN visits v ON v.id = r.visit_id
JOIN procedure_templates t ON t.id = r.template_id
WHERE r.practice_id = $1 AND v.reversed_at IS NULL
  AND (r.attempts > 1 OR r.redo_of IS NOT NULL)
  AND v.visited_on BETWEEN $2 AND $3
GROUP BY t.id, t.name`;

const WRITE_OFFS = `
SELECT CASE WHEN m.waste_reason IN ('wrong shade opened', 'after-opening limit', 'expired')
            THEN m.waste_reason ELSE 'other write-offs' END,
       c.id, c.name, c.shade, NULL, NULL, m.waste_reason, c.stock_unit,
       count(*)::int, sum(m.quantity), sum(m.cost)
FROM movements m
JOIN layers l ON l.id = m.layer_id
JOIN consumables c ON c.id = l.consumable_id
WHERE m.practice_id = $1 AND m.to_account = 'waste' AND ${NOT_REVERSED}
  AND m.occurred_on BETWEEN $2 AND $3
GROUP BY c.id, m.waste_reason`;

// First attempts only: what later ones used is a retake already, like all that does earlier work again.
// Shared lines apart: a hash join of so many without a restoration takes gigabytes of memory.
const USED = `
lines AS (
  SELECT u.restoration_id, u.consumable_id, u.driver, u.planned, u.placed, u.dispensed, u.charged,
         u.cost / nullif(u.charged, 0) AS price
  FROM usage_lines u
  JOIN visits v ON v.id = u.visit_id
  WHERE u.practice_id = $1 AND v.reversed_at IS NULL AND u.attempt = 1
    AND v.visited_on BETWEEN $2 AND $3
), used AS (
  SELECT l.*, r.template_id FROM lines l
  JOIN restorations r ON r.id = l.restoration_id AND r.redo_of IS NULL
  UNION ALL
  SELECT l.*, NULL FROM lines l WHERE l.restoration_id IS NULL
)`;

// A dose that is charged whole: what was charged and not placed stayed in it or was thrown away.
const RESIDUES = `
SELECT 'residue of single doses', c.id, c.name, c.shade, NULL, NULL, NULL, c.stock_unit,
       count(*)::int, sum(u.charged - u.placed), sum(round((u.charged - u.placed) * u.price, 6))
FROM used u JOIN consumables c ON c.id = u.consumable_id
WHERE u.charged > u.dispensed
GROUP BY c.id`;

// Of what is not charged whole; several uses together, so that more here and less there even out.
const OVERUSES = `
SELECT 'more than the template', c.id, c.name, c.shade, t.id, t.name, NULL, c.stock_unit,
       count(*) FILTER (WHERE u.dispensed > u.planned)::int, sum(u.dispensed - u.planned),
       sum(round((u.dispensed - u.planned) * u.price, 6))
FROM used u
JOIN consumables c ON c.id = u.consumable_id
LEFT JOIN procedure_templates t ON t.id = u.template_id
WHERE u.charged = u.dispensed AND u.driver IS NOT NULL
GROUP BY c.id, t.id HAVING sum(u.dispensed - u.planned) > 0`;

const COST = `
SELECT coalesce(sum(material_cost), 0) AS cost FROM visits
WHERE practice_id = $1 AND reversed_at IS NULL AND visited_on BETWEEN $2 AND $3`;

interface Row {
  readonly kind: HabitKind;
  readonly consumable_id: string | null;
  readonly consumable_name: string | null;
  readonly shade: string | null;
  readonly template_id: string | null;
  readonly template_name: string | null;
  readonly reason: string | null;
  readonly unit: string;
  readonly times: number;
  readonly quantity: string;
  readonly cost: string;
}

/** What the practice does that costs most without any use: what to change to save most. */
@Injectable()
export class ReportHabits {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: HabitQueryDto): Promise<HabitsDto> {
    const period = periodOf(query, this.clock.today(actor.timeZone));
    const values = [actor.practiceId, period.from, period.to];
    return this.uow.read(actor.practiceId, async (tx) => {
      const rows = await tx.query<Row>(
        `WITH ${USED} ${[RETAKES, WRITE_OFFS, RESIDUES, OVERUSES].join(' UNION ALL ')}`,
        values,
      );
      const [total] = await tx.query<{ cost: string }>(COST, values);
      const habits = rows.map((row) => ({ row, cost: microOf(row.cost) }));
      const days = daysIn(period);
      const material = microOf(total?.cost ?? '0');
      return {
        currency: actor.currency,
        ...period,
        days,
        materialCost: text(material),
        kinds: HABITS.map((kind) => ({ kind, cost: text(sumOf(habits, kind)) })),
        habits: costliest(habits, Number(query.limit ?? 10)).map(({ row, cost }, i) =>
          toHabit(row, cost, i + 1, days, material),
        ),
      };
    });
  }
}

type Habit = { readonly row: Row; readonly cost: bigint };

function sumOf(habits: readonly Habit[], kind: HabitKind): bigint {
  return habits.reduce((sum, { row, cost }) => (row.kind === kind ? sum + cost : sum), 0n);
}

function text(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}

function toHabit(row: Row, cost: bigint, rank: number, days: number, material: bigint): HabitDto {
  const share = shareOf(cost, material);
  return {
    rank,
    kind: row.kind,
    consumableId: row.consumable_id,
    consumableName: row.consumable_name,
    shade: row.shade,
    templateId: row.template_id,
    templateName: row.template_name,
    wasteReason: row.reason,
    times: row.times,
    quantity: quantityText(row.quantity),
    unit: row.unit,
    cost: text(cost),
    savedPerYear: formatMoney(savedPerYear(cost, days)),
    shareOfMaterial: share === null ? null : formatMoney(moneyFromMicro(share), 4),
  };
}
