import { formatTooth, parseIsoTooth } from '#lib/dentition';
import type { Actor, Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  quantityText,
  toConsumable,
  toLot,
} from '#lib/stock';
import { affectedBy, type Placed, usedFor } from '../domain/affected.js';
import type { TracedRestorationDto, TracedUseDto, VisitTraceDto } from '../http/trace.dto.js';
import { loadShortfalls } from './shortfalls.js';

/** The visit itself, as every trace lists it. */
export interface VisitRow {
  readonly id: string;
  readonly visited_on: string;
  readonly chart_reference: string;
  readonly dentist_id: string;
  readonly dentist_name: string;
  readonly reversed: boolean;
}

export const VISIT_COLUMNS = `v.id, v.visited_on, v.chart_reference, v.dentist_id,
  p.display_name AS dentist_name, v.reversed_at IS NOT NULL AS reversed`;

// What was used less what reversals took back; a reversed visit stays listed with nothing.
const USES = `
SELECT n.visit_id, n.usage_line_id, n.sureness, n.quantity, n.movement_ids, n.layer_id,
       u.restoration_id, u.tooth, l.delivery_id, l.line_number, d.reference, d.received_on,
       d.supplier_id, s.name AS supplier_name, ${CONSUMABLE_COLUMNS}, ${LOT_COLUMNS}
FROM (
  SELECT m.visit_id, m.usage_line_id, m.layer_id, m.sureness, min(m.sequence) AS first,
         sum(CASE WHEN m.to_account = 'visit' THEN m.quantity ELSE -m.quantity END) AS quantity,
         array_agg(m.id ORDER BY m.sequence) AS movement_ids
  FROM movements m
  WHERE m.practice_id = $1 AND m.visit_id = ANY($2::uuid[])
  GROUP BY 1, 2, 3, 4
) n
JOIN usage_lines u ON u.id = n.usage_line_id
JOIN layers l ON l.id = n.layer_id
JOIN lots t ON t.id = l.lot_id
JOIN consumables c ON c.id = l.consumable_id
JOIN deliveries d ON d.id = l.delivery_id
JOIN suppliers s ON s.id = d.supplier_id
WHERE $3::uuid IS NULL OR l.lot_id = $3
ORDER BY u.position, n.first`;

interface UseRow extends ConsumableColumns, LotColumns {
  readonly visit_id: string;
  readonly usage_line_id: string;
  readonly sureness: string | null;
  readonly quantity: string;
  readonly movement_ids: readonly string[];
  readonly layer_id: string;
  readonly restoration_id: string | null;
  readonly tooth: number | null;
  readonly delivery_id: string;
  readonly line_number: number;
  readonly reference: string | null;
  readonly received_on: string;
  readonly supplier_id: string;
  readonly supplier_name: string;
}

const RESTORATIONS = `
SELECT id, visit_id, tooth, surfaces FROM restorations
WHERE practice_id = $1 AND visit_id = ANY($2::uuid[]) ORDER BY position`;

interface RestorationRow extends Placed {
  readonly visit_id: string;
  readonly surfaces: string;
}

/** What the visits used (of one lot, or of any), in three statements for any number of visits. */
export async function traceVisits(
  tx: Tx,
  actor: Actor,
  visits: readonly VisitRow[],
  lotId: string | null,
): Promise<VisitTraceDto[]> {
  const ids = visits.map((visit) => visit.id);
  const uses = await tx.query<UseRow>(USES, [actor.practiceId, ids, lotId]);
  const restorations = await tx.query<RestorationRow>(RESTORATIONS, [actor.practiceId, ids]);
  const shortfalls = await loadShortfalls(tx, actor.practiceId, { visitIds: ids, lotId });
  const placed = groupBy(restorations, (r) => r.visit_id);
  const used = groupBy(uses, (u) => u.visit_id);
  const missing = groupBy(shortfalls, (s) => s.visitId);
  return visits.map((visit) => {
    const here = placed.get(visit.id) ?? [];
    return {
      visitId: visit.id,
      visitedOn: visit.visited_on,
      chartReference: visit.chart_reference,
      dentist: { id: visit.dentist_id, name: visit.dentist_name },
      reversed: visit.reversed,
      restorations: here.map((r) => toRestoration(r, actor)),
      uses: (used.get(visit.id) ?? []).map((use) => toUse(use, here, actor)),
      shortfalls: missing.get(visit.id) ?? [],
    };
  });
}

function groupBy<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const group = groups.get(keyOf(row));
    if (group) group.push(row);
    else groups.set(keyOf(row), [row]);
  }
  return groups;
}

function toRestoration(row: RestorationRow, actor: Actor): TracedRestorationDto {
  const tooth = parseIsoTooth(row.tooth);
  const label = tooth === undefined ? String(row.tooth) : formatTooth(tooth, actor.toothNotation);
  return { id: row.id, tooth: label, surfaces: row.surfaces };
}

function toUse(row: UseRow, here: readonly RestorationRow[], actor: Actor): TracedUseDto {
  const owner = { restorationId: row.restoration_id, tooth: row.tooth };
  return {
    usageLineId: row.usage_line_id,
    consumable: toConsumable(row),
    lot: toLot(row),
    delivery: {
      id: row.delivery_id,
      reference: row.reference,
      receivedOn: row.received_on,
      lineNumber: row.line_number,
      layerId: row.layer_id,
      supplier: { id: row.supplier_id, name: row.supplier_name },
    },
    quantity: quantityText(row.quantity),
    sureness: row.sureness ?? 'not stated',
    usedFor: usedFor(owner),
    restorations: affectedBy(owner, here).map((r) => toRestoration(r, actor)),
    movementIds: [...row.movement_ids],
  };
}
