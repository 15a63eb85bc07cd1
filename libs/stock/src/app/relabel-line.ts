import { type Actor, type Tx } from '#lib/platform';
import { lineOfLayer, linesOfLot, nextLineNumber } from '../db/delivery-lines.js';
import { holdWithKit } from '../db/kit-lots.js';
import { insertLots, type LotRow } from '../db/lots.js';
import { refuseStock } from '../stock.refusals.js';
import { carryOver } from './carry-over.js';
import type { Correction } from './correction.js';

/**
 * Carries what is left of a line over to the right lot or expiry, wherever it is and opened or not; what
 * had left stays under the wrong one. A wrong expiry is put right for the whole lot, in every delivery.
 * Answers the number of the line under which the goods of this delivery stand now.
 */
export async function relabelLine(tx: Tx, actor: Actor, the: Correction): Promise<number> {
  const { wrong } = the;
  const onlyExpiry = wrong.lotNumber !== null && wrong.lotNumber === the.lotNumber;
  const lines = onlyExpiry
    ? await linesOfLot(tx, wrong.lotId)
    : [await lineOfLayer(tx, wrong.layerId)];
  const own = lines.find((line) => line.layerId === wrong.layerId);
  if (!own || own.outQuantity === own.received) {
    throw refuseStock(
      'stock_moved_on',
      'Nothing of this line is left: what was used stays explainable under the lot it was booked with.',
    );
  }
  if (onlyExpiry) {
    await tx.query('UPDATE lots SET expires_on = $2 WHERE id = $1', [wrong.lotId, the.expiresOn]);
  }
  const lot = await rightLot(tx, actor, the);
  let newLine = wrong.lineNumber;
  for (const line of lines) {
    const number = await nextLineNumber(tx, line.deliveryId);
    const to = { lot, expiresOn: the.expiresOn, day: the.day, note: the.right.note };
    await carryOver(tx, actor, { line, number, to });
    if (line.layerId === wrong.layerId) newLine = number;
  }
  return newLine;
}

/** Goods that are held back stay held back under another number: releasing is a decision of its own. */
async function rightLot(tx: Tx, actor: Actor, the: Correction): Promise<LotRow> {
  const { wrong, lotNumber, expiresOn } = the;
  const consumableId = wrong.consumableId;
  const [lot] = await insertLots(tx, [{ consumableId, lotNumber, expiresOn, field: '' }]);
  if (!lot) throw new Error('A lot just written is missing');
  if (wrong.lotStatus === 'released' || lot.status !== 'released') return lot;
  const status = wrong.lotStatus;
  const note = `Corrected from lot ${wrong.lotNumber ?? 'not stated'}, which is ${status}.`;
  await holdWithKit(tx, actor.personId, [{ lotId: lot.id, status, note }]);
  return { ...lot, status };
}
