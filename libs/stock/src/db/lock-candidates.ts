import { money, quantity } from '#lib/measure';
import type { Tx } from '#lib/platform';
import type { Candidate, Day, Dispensing, LotStatus } from '../domain/candidate.js';

interface CandidateRow {
  holding_id: string;
  layer_id: string;
  consumable_id: string;
  lot_id: string;
  lot_number: string | null;
  lot_status: LotStatus;
  location_id: string;
  distance: number | null;
  received_on: Day;
  expires_on: Day | null;
  opened_on: Day | null;
  use_by: Day | null;
  dispensing: Dispensing;
  content_per_container: string;
  on_hand: string;
  received: string;
  landed_cost: string;
  out_quantity: string;
  out_cost: string;
}

const COLUMNS = `h.id AS holding_id, l.id AS layer_id, l.consumable_id, l.lot_id, t.lot_number,
  l.lot_status, h.location_id, l.received_on::text, l.expires_on::text, h.opened_on::text,
  h.use_by::text, l.dispensing, l.content_per_container, h.on_hand, l.received, l.landed_cost,
  l.out_quantity, l.out_cost`;

const CANDIDATES = 'SELECT * FROM stock_candidates($1, $2, $3, $4, $5)';

const BY_HOLDING = `
SELECT ${COLUMNS}, 0 AS distance
FROM layers l JOIN holdings h ON h.layer_id = l.id JOIN lots t ON t.id = l.lot_id
WHERE l.practice_id = current_practice() AND h.id = ANY($1::uuid[])
ORDER BY l.id, h.id`;

const LOCK_BY_HOLDING = `
SELECT FROM consumables WHERE id IN (
  SELECT l.consumable_id FROM holdings h JOIN layers l ON l.id = h.layer_id
  WHERE h.id = ANY($1::uuid[]))
ORDER BY id FOR NO KEY UPDATE`;

function toCandidate(row: CandidateRow): Candidate {
  return {
    holdingId: row.holding_id,
    layerId: row.layer_id,
    consumableId: row.consumable_id,
    lotId: row.lot_id,
    lotNumber: row.lot_number,
    lotStatus: row.lot_status,
    locationId: row.location_id,
    distance: row.distance,
    receivedOn: row.received_on,
    labelExpiry: row.expires_on,
    openedOn: row.opened_on,
    useBy: row.use_by,
    dispensing: row.dispensing,
    content: quantity(row.content_per_container),
    onHand: quantity(row.on_hand),
    received: quantity(row.received),
    landedCost: money(row.landed_cost),
    outQuantity: quantity(row.out_quantity),
    outCost: money(row.out_cost),
  };
}

export interface CandidateQuery {
  readonly consumableIds: readonly string[];
  readonly locationId: string;
  readonly day: Day;
  /** Ids of scanned lots or holdings: returned wherever they are, so that a refusal can say why. */
  readonly scanned: readonly string[];
  /** A preview looks without locking. */
  readonly lock: boolean;
}

/** The holdings from which the consumables could be taken at a place. */
export async function findCandidates(tx: Tx, q: CandidateQuery): Promise<Candidate[]> {
  const rows = await tx.named<CandidateRow>('stock-candidates', CANDIDATES, [
    q.consumableIds,
    q.locationId,
    q.day,
    q.scanned,
    q.lock,
  ]);
  return rows.map(toCandidate);
}

/**
 * The stock of a consumable is changed by one transaction at a time: whoever changes it locks the
 * consumable first, several in the order of their ids, and only then reads what there is.
 */
export async function lockConsumables(tx: Tx, ids: readonly string[]): Promise<void> {
  await tx.query(
    'SELECT FROM consumables WHERE id = ANY($1::uuid[]) ORDER BY id FOR NO KEY UPDATE',
    [ids],
  );
}

/** Given holdings, with the stock of their consumables locked. */
export async function lockHoldings(
  tx: Tx,
  ids: readonly string[],
): Promise<Map<string, Candidate>> {
  await tx.query(LOCK_BY_HOLDING, [ids]);
  const rows = await tx.query<CandidateRow>(BY_HOLDING, [ids]);
  return new Map(rows.map((row) => [row.holding_id, toCandidate(row)]));
}
