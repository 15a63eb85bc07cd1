import type { Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  moneyText,
  quantityText,
  toConsumable,
  toLot,
} from '#lib/stock';
import type { CostedLineDto, CostSourceDto } from '../http/restoration.dto.js';

/** The lines a restoration bears: its own, those of its tooth and those of its visit. */
const LINES = `
SELECT u.id, u.driver, u.attempt, u.restoration_id, u.tooth, u.planned, u.placed, u.dispensed,
       u.charged, u.cost, f.short, f.short_cost, ${CONSUMABLE_COLUMNS}
FROM usage_lines u
JOIN consumables c ON c.id = u.consumable_id
CROSS JOIN LATERAL (
  SELECT coalesce(sum(s.quantity - s.settled), 0) AS short,
         coalesce(sum(round((s.quantity - s.settled) * s.unit_cost, 6)), 0) AS short_cost
  FROM shortfalls s
  WHERE s.visit_id = u.visit_id AND s.usage_line_id = u.id AND s.cancelled_at IS NULL
) f
WHERE u.practice_id = $1 AND u.visit_id = $2
  AND (u.restoration_id = $3
       OR (u.restoration_id IS NULL AND (u.tooth IS NULL OR u.tooth = $4)))
ORDER BY u.position`;

export interface LineRow extends ConsumableColumns {
  readonly id: string;
  readonly driver: string | null;
  readonly attempt: number;
  readonly restoration_id: string | null;
  readonly tooth: number | null;
  readonly planned: string;
  readonly placed: string;
  readonly dispensed: string;
  readonly charged: string;
  readonly cost: string;
  readonly short: string;
  readonly short_cost: string;
}

const SOURCES = `
SELECT m.id AS movement_id, m.usage_line_id, m.from_account, m.quantity, m.cost, m.sureness,
       m.reverses_id, m.layer_id, l.delivery_id, l.line_number, l.received_on,
       -- As it was when this was used: an invoice that came later changed no cost of the past.
       coalesce((SELECT v.pack_price_before FROM price_variances v
         WHERE v.layer_id = l.id AND v.recorded_at > m.recorded_at
           AND v.pack_price_before IS NOT NULL
         ORDER BY v.recorded_at, v.id LIMIT 1), l.pack_price) AS pack_price,
       d.supplier_id, s.name AS supplier_name, q.name AS presentation_name, ${LOT_COLUMNS}
FROM movements m
JOIN layers l ON l.id = m.layer_id
JOIN lots t ON t.id = l.lot_id
JOIN deliveries d ON d.id = l.delivery_id
JOIN suppliers s ON s.id = d.supplier_id
JOIN presentations q ON q.id = l.presentation_id
WHERE m.practice_id = $1 AND m.usage_line_id = ANY($2::uuid[])
ORDER BY m.sequence`;

interface SourceRow extends LotColumns {
  readonly movement_id: string;
  readonly usage_line_id: string;
  readonly from_account: string;
  readonly quantity: string;
  readonly cost: string;
  readonly sureness: string | null;
  readonly reverses_id: string | null;
  readonly layer_id: string;
  readonly delivery_id: string;
  readonly line_number: number;
  readonly pack_price: string;
  readonly received_on: string;
  readonly supplier_id: string;
  readonly supplier_name: string;
  readonly presentation_name: string;
}

interface Bearer {
  readonly practiceId: string;
  readonly visitId: string;
  readonly restorationId: string;
  readonly tooth: number;
}

export interface LinesWithSources {
  readonly lines: readonly LineRow[];
  readonly sources: ReadonlyMap<string, readonly CostSourceDto[]>;
}

/** Two statements, however many lines there are. */
export async function loadCostLines(tx: Tx, bearer: Bearer): Promise<LinesWithSources> {
  const { practiceId, visitId, restorationId, tooth } = bearer;
  const lines = await tx.query<LineRow>(LINES, [practiceId, visitId, restorationId, tooth]);
  const rows = await tx.query<SourceRow>(SOURCES, [practiceId, lines.map((line) => line.id)]);
  const sources = new Map<string, CostSourceDto[]>();
  for (const row of rows) {
    const list = sources.get(row.usage_line_id) ?? [];
    list.push(toSource(row));
    sources.set(row.usage_line_id, list);
  }
  return { lines, sources };
}

export function toCostedLine(
  line: LineRow,
  share: string,
  sources: readonly CostSourceDto[],
): CostedLineDto {
  return {
    usageLineId: line.id,
    consumable: toConsumable(line),
    driver: line.driver,
    attempt: line.attempt,
    belongsTo:
      line.restoration_id !== null ? 'restoration' : line.tooth !== null ? 'tooth' : 'visit',
    planned: quantityText(line.planned),
    placed: quantityText(line.placed),
    dispensed: quantityText(line.dispensed),
    charged: quantityText(line.charged),
    cost: moneyText(line.cost),
    share,
    estimated: quantityText(line.short) !== '0',
    shortfall: quantityText(line.short),
    estimatedCost: moneyText(line.short_cost),
    sources: [...sources],
  };
}

function toSource(row: SourceRow): CostSourceDto {
  return {
    movementId: row.movement_id,
    direction: row.from_account === 'visit' ? 'came back' : 'used',
    quantity: quantityText(row.quantity),
    cost: moneyText(row.cost),
    sureness: row.sureness,
    reversesId: row.reverses_id,
    layerId: row.layer_id,
    lot: toLot(row),
    deliveryId: row.delivery_id,
    deliveryLine: row.line_number,
    supplier: { id: row.supplier_id, name: row.supplier_name },
    presentationName: row.presentation_name,
    packPrice: moneyText(row.pack_price),
    receivedOn: row.received_on,
  };
}
