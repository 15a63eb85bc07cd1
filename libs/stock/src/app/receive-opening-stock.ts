import { Injectable } from '@nestjs/common';
import { effectiveExpiry, type LifeAfterOpening } from '#lib/catalogue';
import { type Money, moneyFromMicro, type Quantity, ZERO_MONEY, ZERO_QUANTITY } from '#lib/measure';
import { type Actor, type IsoDate, newId, type Tx } from '#lib/platform';
import { lockConsumables } from '../db/lock-candidates.js';
import { insertLots, type LotRow } from '../db/lots.js';
import {
  insertOpeningDeliveries,
  insertOpeningLayers,
  type OpeningDelivery,
  type OpeningLayer,
} from '../db/opening-deliveries.js';
import { applyStockChanges, type NewHolding, type NewMovement } from '../db/stock-changes.js';
import type { LotStatus } from '../domain/candidate.js';
import { StockArrivals } from './stock-arrivals.js';

/** Goods that were there before the book was: a quantity of one lot in one place, and its worth. */
export interface OpeningLine {
  readonly consumableId: string;
  readonly presentationId: string;
  readonly supplierId: string;
  readonly receivedOn: IsoDate;
  readonly locationId: string;
  readonly lotNumber: string | null;
  readonly expiresOn: IsoDate | null;
  /** What a new lot is; one that the book knows must be the same already. */
  readonly lotStatus: LotStatus;
  readonly quantity: Quantity;
  /** Packs, full or begun: at least 1; and what a full one cost. */
  readonly packs: number;
  readonly packPrice: Money;
  readonly value: Money;
  /** Set for one opened container. */
  readonly openedOn: IsoDate | null;
  /** Its last day of use; by its life after opening when null. */
  readonly useBy: IsoDate | null;
  readonly life: LifeAfterOpening | null;
}

const REFERENCE = 'Opening stock';
const MOST_LINES = 500;
const AT_ONCE = 1_000;

/** A line with the ids of what it becomes. */
interface Booked extends OpeningLine {
  readonly layerId: string;
  readonly holdingId: string;
  readonly lotId: string;
}

/**
 * Books what is on the shelves already as deliveries called "Opening stock", one for each supplier and
 * day, so that every gram has a layer, a cost and a first movement like any other.
 */
@Injectable()
export class ReceiveOpeningStock {
  constructor(private readonly arrivals: StockArrivals) {}

  /**
   * Books all lines in the caller's transaction; answers their layers in the same order. What the lines
   * name was checked before; a lot with another expiry than recorded is refused.
   */
  async runMany(
    tx: Tx,
    actor: Actor,
    lines: readonly OpeningLine[],
    onProgress: (lines: number) => Promise<void>,
  ): Promise<string[]> {
    const consumableIds = [...new Set(lines.map((line) => line.consumableId))];
    await lockConsumables(tx, consumableIds);
    const lots = await insertLots(tx, lines);
    await holdLots(tx, actor, lines, lots);
    const booked = lines.map((line, i): Booked => {
      const lotId = lots[i]?.id;
      if (!lotId) throw new Error('A line of opening stock has no lot');
      return { ...line, lotId, layerId: newId(), holdingId: newId() };
    });
    await writeDeliveries(tx, actor, booked);
    for (let from = 0; from < booked.length; from += AT_ONCE) {
      const part = booked.slice(from, from + AT_ONCE);
      await putAway(tx, actor, part);
      await onProgress(from + part.length);
    }
    await this.arrivals.announce(tx, actor, consumableIds);
    return booked.map((line) => line.layerId);
  }
}

/** Lots that come in held are held, with an entry that says why. */
async function holdLots(
  tx: Tx,
  actor: Actor,
  lines: readonly OpeningLine[],
  lots: readonly LotRow[],
): Promise<void> {
  const held = new Map<string, LotStatus>();
  lots.forEach((lot, i) => {
    const wanted = lines[i]?.lotStatus ?? 'released';
    if (wanted !== lot.status) held.set(lot.id, wanted);
  });
  if (held.size === 0) return;
  const rows = JSON.stringify([...held].map(([lot, status]) => ({ id: newId(), lot, status })));
  const from = 'FROM json_to_recordset($1::json) AS r(id uuid, lot uuid, status text)';
  await tx.query(`UPDATE lots l SET status = r.status ${from} WHERE l.id = r.lot`, [rows]);
  await tx.query(`UPDATE layers l SET lot_status = r.status ${from} WHERE l.lot_id = r.lot`, [
    rows,
  ]);
  await tx.query(
    `INSERT INTO lot_status_changes (id, practice_id, lot_id, status, note, recorded_by)
     SELECT r.id, current_practice(), r.lot, r.status, $2, $3 ${from}`,
    [rows, REFERENCE, actor.personId],
  );
}

/** One delivery for each supplier and day; a long one goes on in the next, so that people can read it. */
async function writeDeliveries(tx: Tx, actor: Actor, booked: readonly Booked[]): Promise<void> {
  const groups = new Map<string, Booked[]>();
  for (const line of booked) {
    const key = `${line.receivedOn} ${line.supplierId}`;
    const group = groups.get(key);
    if (group) group.push(line);
    else groups.set(key, [line]);
  }
  const deliveries: OpeningDelivery[] = [];
  const layers: OpeningLayer[] = [];
  for (const group of groups.values()) {
    for (let from = 0; from < group.length; from += MOST_LINES) {
      const part = group.slice(from, from + MOST_LINES);
      const [first] = part;
      if (!first) continue;
      const { supplierId, receivedOn } = first;
      const deliveryId = newId();
      const total = moneyFromMicro(part.reduce((sum, line) => sum + line.value, 0n));
      deliveries.push({ id: deliveryId, supplierId, receivedOn, total });
      layers.push(...part.map((line, i) => layerOf(line, deliveryId, i + 1)));
    }
  }
  await insertOpeningDeliveries(tx, { personId: actor.personId, reference: REFERENCE }, deliveries);
  await insertOpeningLayers(tx, layers);
}

function layerOf(line: Booked, deliveryId: string, lineNumber: number): OpeningLayer {
  const { lotId, lotStatus, presentationId, locationId, packs, packPrice } = line;
  const { receivedOn, expiresOn, quantity, value, layerId: id } = line;
  const goods = { lotId, lotStatus, presentationId, locationId, packs, packPrice };
  return { id, deliveryId, lineNumber, ...goods, receivedOn, expiresOn, quantity, value };
}

/** From the supplier to its place; what is open was opened there on its day. */
async function putAway(tx: Tx, actor: Actor, booked: readonly Booked[]): Promise<void> {
  const newHoldings: NewHolding[] = [];
  const movements: NewMovement[] = [];
  for (const line of booked) {
    const { layerId, holdingId, locationId, openedOn, quantity } = line;
    const sealed = { account: 'location' as const, holdingId, locationId };
    const onHand = openedOn === null ? quantity : ZERO_QUANTITY;
    newHoldings.push({ id: holdingId, layerId, locationId, onHand, openedOn: null, useBy: null });
    movements.push({
      id: newId(),
      layerId,
      from: { account: 'supplier' },
      to: sealed,
      quantity,
      cost: line.value,
      occurredOn: line.receivedOn,
    });
    if (openedOn === null) continue;
    const id = newId();
    const useBy = line.useBy ?? usualUseBy(line, openedOn);
    newHoldings.push({ id, layerId, locationId, onHand: quantity, openedOn, useBy });
    movements.push({
      id: newId(),
      layerId,
      from: sealed,
      to: { ...sealed, holdingId: id },
      quantity,
      cost: ZERO_MONEY,
      occurredOn: openedOn,
    });
  }
  const nothing = { holdings: new Map<string, Quantity>(), layers: new Map() };
  await applyStockChanges(tx, actor.personId, { newHoldings, movements, ...nothing });
}

function usualUseBy({ expiresOn, life }: OpeningLine, openedOn: IsoDate): IsoDate | null {
  return effectiveExpiry({ labelExpiry: expiresOn, openedOn, life });
}
