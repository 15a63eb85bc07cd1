import { newId, type Tx, unknownReference } from '#lib/platform';
import type { Day, LotStatus } from '../domain/candidate.js';
import { refuseStock } from '../stock.refusals.js';

export interface LotInput {
  readonly consumableId: string;
  readonly lotNumber: string | null;
  readonly expiresOn: Day | null;
  /** Where in the request its number and date stand ('' for the request itself); 'lines[2]' of the third when not said. */
  readonly field?: string;
}

export interface LotRow {
  readonly id: string;
  readonly status: LotStatus;
}

const UPSERT = `
INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
SELECT DISTINCT ON (r.consumable_id, r.lot_number)
       r.id, current_practice(), r.consumable_id, r.lot_number, r.expires_on
FROM json_to_recordset($1::json) AS r(id uuid, consumable_id uuid, lot_number text, expires_on date)
ORDER BY r.consumable_id, r.lot_number, r.id
ON CONFLICT (practice_id, consumable_id, lot_number) WHERE lot_number IS NOT NULL
DO UPDATE SET expires_on = CASE WHEN EXISTS (
    SELECT FROM layers l JOIN deliveries d ON d.id = l.delivery_id
    WHERE l.lot_id = lots.id AND d.reversed_at IS NULL)
  THEN lots.expires_on ELSE excluded.expires_on END
RETURNING id, consumable_id, lot_number, expires_on::text, status`;

interface RecordedRow {
  readonly consumable_id: string;
  readonly lot_number: string;
  readonly expires_on: Day | null;
}

type UpsertedRow = RecordedRow & LotRow;

/**
 * The lot of each line: the recorded one where this product has a lot of that number, a new one
 * otherwise. A line without a number gets a lot of its own, never an invented number. An expiry that was
 * typed wrongly is put right once the delivery it came with was reversed. The consumables are locked,
 * so that a hold placed meanwhile on a lot is either seen here or waits.
 */
export async function insertLots(tx: Tx, lines: readonly LotInput[]): Promise<LotRow[]> {
  const numbered = lines.filter((line) => line.lotNumber !== null);
  const rows = await tx.query<UpsertedRow>(UPSERT, [JSON.stringify(numbered.map(lotJson))]);
  const byKey = new Map(rows.map((row) => [keyOf(row.consumable_id, row.lot_number), row]));
  const result: LotRow[] = [];
  const unnumbered: object[] = [];
  for (const [i, line] of lines.entries()) {
    if (line.lotNumber === null) {
      const fresh = lotJson(line);
      unnumbered.push(fresh);
      result.push({ id: fresh.id, status: 'released' });
      continue;
    }
    const row = byKey.get(keyOf(line.consumableId, line.lotNumber));
    if (!row) throw new Error('A lot just written is missing');
    if (row.expires_on !== line.expiresOn) throw wrongExpiry(i, line, row.expires_on);
    result.push({ id: row.id, status: row.status });
  }
  if (unnumbered.length > 0) {
    await tx.query(
      `INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
       SELECT r.id, current_practice(), r.consumable_id, NULL, r.expires_on
       FROM json_to_recordset($1::json) AS r(id uuid, consumable_id uuid, expires_on date)`,
      [JSON.stringify(unnumbered)],
    );
  }
  return result;
}

const RECORDED = `
SELECT DISTINCT t.consumable_id, t.lot_number, t.expires_on::text
FROM lots t JOIN layers l ON l.lot_id = t.id JOIN deliveries d ON d.id = l.delivery_id
WHERE t.practice_id = current_practice() AND d.reversed_at IS NULL
  AND t.consumable_id = ANY($1::uuid[]) AND t.lot_number = ANY($2::text[])`;

/** The same check as insertLots makes, without writing anything. */
export async function refuseWrongExpiries(tx: Tx, lines: readonly LotInput[]): Promise<void> {
  const numbers = lines.map((line) => line.lotNumber).filter((number) => number !== null);
  if (numbers.length === 0) return;
  const rows = await tx.query<RecordedRow>(RECORDED, [
    lines.map((line) => line.consumableId),
    numbers,
  ]);
  const known = new Map(rows.map((row) => [keyOf(row.consumable_id, row.lot_number), row]));
  for (const [i, line] of lines.entries()) {
    if (line.lotNumber === null) continue;
    const key = keyOf(line.consumableId, line.lotNumber);
    const expires_on = known.get(key)?.expires_on;
    if (expires_on === undefined) {
      const { consumableId, lotNumber, expiresOn } = line;
      known.set(key, { consumable_id: consumableId, lot_number: lotNumber, expires_on: expiresOn });
    } else if (expires_on !== line.expiresOn) throw wrongExpiry(i, line, expires_on);
  }
}

const keyOf = (consumableId: string, lotNumber: string) => `${consumableId}/${lotNumber}`;

function lotJson(line: LotInput) {
  return {
    id: newId(),
    consumable_id: line.consumableId,
    lot_number: line.lotNumber,
    expires_on: line.expiresOn,
  };
}

function wrongExpiry(index: number, line: LotInput, recorded: Day | null) {
  const known = recorded ?? 'no expiry date';
  const field = line.field ?? `lines[${index}]`;
  return refuseStock(
    'wrong_expiry',
    `Lot ${line.lotNumber} of this product is recorded with ${known}, not ${line.expiresOn ?? 'none'}. Check the label.`,
    [
      {
        field: field === '' ? 'expiresOn' : `${field}.expiresOn`,
        message: `differs from the recorded ${known}`,
      },
    ],
  );
}

/** Faults may name lines of orders, too; they settle none. */
export async function refuseUnknownOrderLines(
  tx: Tx,
  faults: readonly { readonly orderLineId?: string | null }[],
): Promise<void> {
  const named = faults.map(({ orderLineId }) => orderLineId ?? null);
  if (named.every((id) => id === null)) return;
  const rows = await tx.query<{ id: string }>(
    'SELECT id FROM order_lines WHERE id = ANY($1::uuid[])',
    [named],
  );
  const known = new Set(rows.map((row) => row.id));
  named.forEach((id, i) => {
    if (id === null || known.has(id)) return;
    throw unknownReference(`faults[${i}].orderLineId`, 'line of an order');
  });
}
