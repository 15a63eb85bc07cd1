import type { Actor, Tx } from '#lib/platform';
import {
  applyStockChanges,
  counterMovements,
  MOVEMENT_COLUMNS,
  type MovementRow,
  NOT_REVERSED,
  type Withdrawal,
} from '#lib/stock';
import { reopenShortfalls } from '../db/shortfall-record.js';
import { recostVisits } from './recost-visits.js';

const SETTLED_FROM = `
SELECT ${MOVEMENT_COLUMNS} FROM movements m JOIN layers l ON l.id = m.layer_id
WHERE l.delivery_id = $1 AND ($2::uuid IS NULL OR l.id = $2) AND m.shortfall_id IS NOT NULL AND m.reverses_id IS NULL
  AND ${NOT_REVERSED}
ORDER BY m.sequence`;

/** Takes back what a delivery that never was gave to shortfalls; they are open again. */
export async function unsettle(tx: Tx, actor: Actor, what: Withdrawal): Promise<void> {
  const rows = await tx.query<MovementRow>(SETTLED_FROM, [what.deliveryId, what.layerId ?? null]);
  if (rows.length === 0) return;
  const changes = await counterMovements(tx, rows, what.day, what.note);
  await applyStockChanges(tx, actor.personId, changes);
  await reopenShortfalls(tx, distinct(rows.map((row) => row.shortfall_id)));
  await recostVisits(tx, actor, distinct(rows.map((row) => row.visit_id)));
}

function distinct(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.filter((id) => id !== null))];
}
