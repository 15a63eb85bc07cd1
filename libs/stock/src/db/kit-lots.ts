import { newId, type Tx } from '#lib/platform';
import type { Day, LotStatus } from '../domain/candidate.js';
import type { PlannedLine } from '../domain/plan-lines.js';
import { refuseStock } from '../stock.refusals.js';

export interface KitLotRow {
  readonly id: string;
  readonly status: LotStatus;
}

const UPSERT = `
INSERT INTO kit_lots (id, practice_id, presentation_id, lot_number, expires_on)
SELECT DISTINCT ON (r.presentation_id, r.lot_number)
       r.id, current_practice(), r.presentation_id, r.lot_number, r.expires_on
FROM json_to_recordset($1::json) AS r(id uuid, presentation_id uuid, lot_number text,
  expires_on date)
WHERE r.lot_number IS NOT NULL
ORDER BY r.presentation_id, r.lot_number, r.id
ON CONFLICT (practice_id, presentation_id, lot_number) WHERE lot_number IS NOT NULL
DO UPDATE SET expires_on = CASE WHEN EXISTS (
    SELECT FROM layers l JOIN deliveries d ON d.id = l.delivery_id
    WHERE l.kit_lot_id = kit_lots.id AND d.reversed_at IS NULL)
  THEN kit_lots.expires_on ELSE excluded.expires_on END
RETURNING id, presentation_id, lot_number, expires_on::text, status`;

const UNNUMBERED = `
INSERT INTO kit_lots (id, practice_id, presentation_id, lot_number, expires_on)
SELECT r.id, current_practice(), r.presentation_id, NULL, r.expires_on
FROM json_to_recordset($1::json) AS r(id uuid, presentation_id uuid, lot_number text,
  expires_on date)
WHERE r.lot_number IS NULL`;

interface UpsertedRow extends KitLotRow {
  readonly presentation_id: string;
  readonly lot_number: string;
  readonly expires_on: Day | null;
}

/** The kit lot of each typed line that brings a kit, by its index: recorded before, or new. */
export async function insertKitLots(
  tx: Tx,
  lines: readonly PlannedLine[],
): Promise<ReadonlyMap<number, KitLotRow>> {
  const kits = new Map(
    lines.flatMap((line) => (line.kit === null ? [] : [[line.index, { ...line, kit: line.kit }]])),
  );
  if (kits.size === 0) return new Map();
  const wanted = [...kits.values()].map((line) => ({
    index: line.index,
    id: newId(),
    presentation_id: line.presentationId,
    lot_number: line.kit.lotNumber,
    expires_on: line.kit.expiresOn,
  }));
  const doc = JSON.stringify(wanted);
  const rows = await tx.query<UpsertedRow>(UPSERT, [doc]);
  if (wanted.some((one) => one.lot_number === null)) await tx.query(UNNUMBERED, [doc]);
  const byKey = new Map(rows.map((row) => [`${row.presentation_id}/${row.lot_number}`, row]));
  return new Map(
    wanted.map((one): [number, KitLotRow] => {
      if (one.lot_number === null) return [one.index, { id: one.id, status: 'released' }];
      const row = byKey.get(`${one.presentation_id}/${one.lot_number}`);
      if (!row) throw new Error('A kit lot just written is missing');
      if (row.expires_on !== one.expires_on) {
        throw wrongExpiry(one.index, one.lot_number, one.expires_on, row.expires_on);
      }
      return [one.index, { id: row.id, status: row.status }];
    }),
  );
}

function wrongExpiry(index: number, lotNumber: string, typed: Day | null, recorded: Day | null) {
  const known = recorded ?? 'no expiry date';
  return refuseStock(
    'wrong_expiry',
    `Kit lot ${lotNumber} is recorded with ${known}, not ${typed ?? 'none'}. Check the label.`,
    [{ field: `lines[${index}].expiresOn`, message: `differs from the recorded ${known}` }],
  );
}

const HOLD = `
WITH held AS (
  UPDATE lots SET status = r.status
  FROM json_to_recordset($1::json) AS r(lot_id uuid, status text, note text)
  WHERE lots.id = r.lot_id AND lots.status = 'released'
  RETURNING lots.id, r.status, r.note
), layers_held AS (
  UPDATE layers l SET lot_status = h.status FROM held h WHERE l.lot_id = h.id
)
INSERT INTO lot_status_changes (id, practice_id, lot_id, status, note, recorded_by)
SELECT gen_random_uuid(), current_practice(), id, status, note, $2 FROM held`;

export interface HeldLot {
  readonly lotId: string;
  readonly status: LotStatus;
  readonly note: string;
}

/** Holds back lots that came in a kit which is held back already. The consumables are locked. */
export async function holdWithKit(tx: Tx, personId: string, lots: readonly HeldLot[]) {
  if (lots.length === 0) return;
  const doc = new Map(
    lots.map((l) => [l.lotId, { lot_id: l.lotId, status: l.status, note: l.note }]),
  );
  await tx.query(HOLD, [JSON.stringify([...doc.values()]), personId]);
}
