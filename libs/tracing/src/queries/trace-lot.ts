import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, type Tx, toPage, UnitOfWork } from '#lib/platform';
import { NOT_REVERSED, quantityText } from '#lib/stock';
import { totalMass } from '../domain/total-mass.js';
import type {
  AffectedDto,
  LotTraceDto,
  TracedHoldingDto,
  TracedMovementDto,
} from '../http/lot-trace.dto.js';
import type { VisitTracePageDto } from '../http/trace.dto.js';
import type { TraceQueryDto } from '../http/trace-queries.dto.js';
import { readLot } from './lot-reader.js';
import { loadShortfalls } from './shortfalls.js';
import { traceVisits, VISIT_COLUMNS, type VisitRow } from './visit-uses.js';

const HOLDINGS = `
SELECT h.id, h.layer_id, h.location_id, o.name AS location_name, h.on_hand, h.opened_on,
       least(l.expires_on, h.use_by) AS effective_expiry
FROM layers l
JOIN holdings h ON h.layer_id = l.id
JOIN locations o ON o.id = h.location_id
WHERE l.practice_id = $1 AND l.lot_id = $2 AND h.on_hand > 0
ORDER BY lower(o.name), h.id`;

interface HoldingRow {
  readonly id: string;
  readonly layer_id: string;
  readonly location_id: string;
  readonly location_name: string;
  readonly on_hand: string;
  readonly opened_on: string | null;
  readonly effective_expiry: string | null;
}

// A reversed entry and the one that reverses it cancel out: neither is listed here.
const OTHERS = `
SELECT m.id, m.layer_id, m.occurred_on, m.quantity, m.from_account, m.to_account, m.waste_reason,
       m.note, f.name AS from_name, t.name AS to_name
FROM layers l
JOIN movements m ON m.layer_id = l.id
LEFT JOIN locations f ON f.id = m.from_location_id
LEFT JOIN locations t ON t.id = m.to_location_id
WHERE l.practice_id = $1 AND l.lot_id = $2 AND m.reverses_id IS NULL AND ${NOT_REVERSED}
  AND m.from_account <> 'supplier' AND m.to_account <> 'visit'
ORDER BY m.occurred_on, m.sequence`;

interface OtherRow {
  readonly id: string;
  readonly layer_id: string;
  readonly occurred_on: string;
  readonly quantity: string;
  readonly from_account: string;
  readonly to_account: string;
  readonly waste_reason: string | null;
  readonly note: string | null;
  readonly from_name: string | null;
  readonly to_name: string | null;
}

const VISITS = `
SELECT ${VISIT_COLUMNS}
FROM visits v JOIN people p ON p.id = v.dentist_id
WHERE v.practice_id = $1
  AND v.id IN (
    SELECT m.visit_id FROM layers l JOIN movements m ON m.layer_id = l.id
    WHERE l.practice_id = $1 AND l.lot_id = $2 AND m.visit_id IS NOT NULL
    UNION ALL
    SELECT f.visit_id FROM shortfalls f WHERE f.practice_id = $1 AND f.lot_id = $2
  )
  AND ($3::date IS NULL OR (v.visited_on, v.id) > ($3::date, $4::uuid))
ORDER BY v.visited_on, v.id LIMIT $5`;

// Open usage of the scanned lot counts as well: the patient got it though no delivery shows it yet.
const AFFECTED = `
WITH used AS (
  SELECT m.usage_line_id, m.visit_id, m.sureness,
         sum(CASE WHEN m.to_account = 'visit' THEN m.quantity ELSE -m.quantity END) AS quantity
  FROM layers l JOIN movements m ON m.layer_id = l.id
  WHERE l.practice_id = $1 AND l.lot_id = $2 AND m.visit_id IS NOT NULL
  GROUP BY 1, 2, 3
  UNION ALL
  SELECT usage_line_id, visit_id, 'scanned', quantity - settled FROM shortfalls
  WHERE practice_id = $1 AND lot_id = $2 AND cancelled_at IS NULL AND settled < quantity
), net AS (SELECT * FROM used WHERE quantity > 0)
SELECT (SELECT count(DISTINCT visit_id)::int FROM net) AS visits,
       (SELECT count(DISTINCT lower(v.chart_reference))::int
        FROM net JOIN visits v ON v.id = net.visit_id) AS charts,
       (SELECT count(DISTINCT r.id)::int
        FROM net JOIN usage_lines u ON u.id = net.usage_line_id
        JOIN restorations r ON r.visit_id = net.visit_id
         AND (r.id = u.restoration_id
              OR (u.restoration_id IS NULL AND (u.tooth IS NULL OR u.tooth = r.tooth)))
       ) AS restorations,
       (SELECT coalesce(json_agg(json_build_object('sureness', sureness, 'quantity', total::text)
                                 ORDER BY sureness), '[]')
        FROM (SELECT sureness, sum(quantity) AS total FROM net GROUP BY sureness) s) AS sureness`;

interface AffectedRow {
  readonly visits: number;
  readonly charts: number;
  readonly restorations: number;
  readonly sureness: readonly { readonly sureness: string; readonly quantity: string }[];
}

/** Forward: from a lot to every delivery, place, visit and tooth, and what else became of it. */
@Injectable()
export class TraceLot {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, lotId: string, query: TraceQueryDto): Promise<LotTraceDto> {
    const key = [actor.practiceId, lotId];
    return this.uow.read(actor.practiceId, async (tx) => {
      const lot = await readLot(tx, actor.practiceId, lotId);
      const holdings = await tx.query<HoldingRow>(HOLDINGS, key);
      const others = await tx.query<OtherRow>(OTHERS, key);
      const [affected] = await tx.query<AffectedRow>(AFFECTED, key);
      const shortfalls = await loadShortfalls(tx, actor.practiceId, { visitIds: null, lotId });
      const visits = await visitPage(tx, actor, lotId, query);
      if (!affected) throw new Error('A trace came back without its totals');
      return {
        lot,
        mass: totalMass(lot.layers.map((layer) => layer.mass)),
        affected: toAffected(affected),
        onHand: holdings.map(toHolding),
        visits,
        moves: others.filter((m) => m.to_account === 'location' && isStock(m)).map(toMovement),
        waste: others.filter((m) => m.to_account === 'waste').map(toMovement),
        returns: others.filter((m) => m.to_account === 'return').map(toMovement),
        countDifferences: others.filter(isCount).map(toMovement),
        shortfalls,
      };
    });
  }
}

async function visitPage(
  tx: Tx,
  actor: Actor,
  lotId: string,
  query: TraceQueryDto,
): Promise<VisitTracePageDto> {
  const limit = pageLimit(query);
  const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
  const rows = await tx.query<VisitRow>(VISITS, [actor.practiceId, lotId, ...after, limit + 1]);
  const items = await traceVisits(tx, actor, rows.slice(0, limit), lotId);
  const page = toPage(
    rows,
    limit,
    (row) => row,
    (row) => [row.visited_on, row.id],
  );
  return { items, nextCursor: page.nextCursor };
}

function isStock(row: OtherRow): boolean {
  return row.from_account === 'location';
}

function isCount(row: OtherRow): boolean {
  return row.from_account === 'count' || row.to_account === 'count';
}

function toAffected(row: AffectedRow): AffectedDto {
  return {
    visits: row.visits,
    charts: row.charts,
    restorations: row.restorations,
    bySureness: row.sureness.map((s) => ({
      sureness: s.sureness,
      quantity: quantityText(s.quantity),
    })),
  };
}

function toHolding(row: HoldingRow): TracedHoldingDto {
  return {
    holdingId: row.id,
    layerId: row.layer_id,
    location: { id: row.location_id, name: row.location_name },
    onHand: quantityText(row.on_hand),
    openedOn: row.opened_on,
    effectiveExpiry: row.effective_expiry,
  };
}

function toMovement(row: OtherRow): TracedMovementDto {
  return {
    movementId: row.id,
    layerId: row.layer_id,
    occurredOn: row.occurred_on,
    quantity: quantityText(row.from_account === 'count' ? `-${row.quantity}` : row.quantity),
    from: row.from_name,
    to: row.to_name,
    reason: row.waste_reason,
    note: row.note,
  };
}
