import { money, type Quantity, quantity, quantityFromMicro } from '#lib/measure';
import { newId, type Tx } from '#lib/platform';
import { lockHoldings } from '../db/lock-candidates.js';
import { revaluedLayers, type VarianceBack } from '../db/price-variances.js';
import type { Account, NewMovement, Place, StockChanges } from '../db/stock-changes.js';
import type { Candidate, Day, LayerState } from '../domain/candidate.js';
import { takeFromLayer } from '../domain/holding-change.js';
import { takeBackRevalued } from '../domain/revalue-layer.js';
import { refuseStock } from '../stock.refusals.js';

export interface MovementRow {
  readonly id: string;
  readonly layer_id: string;
  readonly from_account: Account;
  readonly to_account: Account;
  readonly from_holding_id: string | null;
  readonly from_location_id: string | null;
  readonly to_holding_id: string | null;
  readonly to_location_id: string | null;
  readonly quantity: string;
  readonly cost: string;
  readonly visit_id: string | null;
  readonly usage_line_id: string | null;
  readonly shortfall_id: string | null;
  readonly sureness: NewMovement['sureness'];
  readonly reverses_id: string | null;
}

/** Columns of `movements m`; the quantity may be what is left of it to undo. */
export function movementColumns(quantity: string): string {
  return `m.id, m.layer_id, m.from_account, m.to_account, m.from_holding_id,
  m.from_location_id, m.to_holding_id, m.to_location_id, ${quantity} AS quantity, m.cost,
  m.visit_id, m.usage_line_id, m.shortfall_id, m.sureness, m.reverses_id`;
}

export const MOVEMENT_COLUMNS = movementColumns('m.quantity');

export const NOT_REVERSED = 'NOT EXISTS (SELECT FROM movements r WHERE r.reverses_id = m.id)';

/** The ledger as it stands while a booking is worked out: totals of locked holdings and layers. */
class Working {
  readonly holdings = new Map<string, Quantity>();
  readonly layers = new Map<string, LayerState>();
  readonly places = new Map<string, string>();
  readonly variances: VarianceBack[] = [];

  constructor(
    private readonly locked: ReadonlyMap<string, Candidate>,
    readonly revalued: ReadonlySet<string>,
  ) {}

  locationOf(holdingId: string): string {
    return this.places.get(holdingId) ?? this.find(holdingId).locationId;
  }

  layerOf(holdingId: string): LayerState {
    const holding = this.find(holdingId);
    return this.layers.get(holding.layerId) ?? holding;
  }

  onHand(holdingId: string): bigint {
    return this.holdings.get(holdingId) ?? this.find(holdingId).onHand;
  }

  change(holdingId: string, by: bigint): void {
    this.holdings.set(holdingId, quantityFromMicro(this.onHand(holdingId) + by));
  }

  private find(holdingId: string): Candidate {
    const holding = this.locked.get(holdingId);
    if (!holding) throw new Error(`Holding ${holdingId} of a movement is missing`);
    return holding;
  }
}

/**
 * The counter-entries that undo movements, the latest first: the same quantity back to where it came
 * from, with the value it took along; in a layer that was revalued, variance goes back with it. Locks the holdings and layers concerned.
 */
export async function counterMovements(
  tx: Tx,
  rows: readonly MovementRow[],
  day: Day,
  note: string,
): Promise<StockChanges> {
  const ids = rows.flatMap((r) => [r.from_holding_id, r.to_holding_id]).filter((id) => id !== null);
  const locked = await lockHoldings(tx, [...new Set(ids)]);
  const revalued = await revaluedLayers(tx, [...new Set(rows.map((row) => row.layer_id))]);
  const working = new Working(locked, revalued);
  const movements = [...rows].reverse().map((row) => counter(row, working, day, note));
  const { holdings, layers, places, variances } = working;
  return { newHoldings: [], holdings, layers, places, movements, variances };
}

function counter(row: MovementRow, working: Working, day: Day, note: string): NewMovement {
  const amount = quantity(row.quantity);
  let cost = money(row.cost);
  if (row.to_holding_id !== null) leave(row.to_holding_id, amount, working);
  if (row.from_holding_id !== null) working.change(row.from_holding_id, amount);
  const holdingId = row.from_holding_id ?? row.to_holding_id;
  if (holdingId === null) throw new Error(`Movement ${row.id} touches no holding`);
  if (row.from_account !== row.to_account) {
    const layer = working.layerOf(holdingId);
    const cameIn = row.to_account === 'location';
    const change = cameIn
      ? { ...takeFromLayer(layer, amount), variance: 0n }
      : takeBackRevalued(layer, amount, cost, working.revalued.has(row.layer_id));
    if (!change) throw movedOn('These goods were found again since. Reverse that count first.');
    working.layers.set(row.layer_id, change.layer);
    cost = change.cost;
    const { layerId, outQuantity: quantityGone } = change.layer;
    working.variances.push({ layerId, amount: change.variance, quantityGone });
  }
  const from = place(row.to_account, row.to_holding_id, working);
  if (row.from_holding_id === row.to_holding_id && row.from_location_id !== null) {
    working.places.set(holdingId, row.from_location_id); // an opened container is carried back
  }
  return {
    id: newId(),
    layerId: row.layer_id,
    from,
    to: place(row.from_account, row.from_holding_id, working),
    quantity: amount,
    cost,
    occurredOn: day,
    visitId: row.visit_id,
    usageLineId: row.usage_line_id,
    shortfallId: row.shortfall_id,
    sureness: row.sureness ?? null,
    note,
    reversesId: row.id,
  };
}

function leave(holdingId: string, amount: bigint, working: Working): void {
  if (working.onHand(holdingId) < amount) {
    throw movedOn('Part of these goods was used or moved since. Reverse that first.');
  }
  working.change(holdingId, -amount);
}

function movedOn(sentence: string) {
  return refuseStock('stock_moved_on', sentence);
}

/** A holding's own location of now: an opened container may have been carried elsewhere. */
function place(account: Account, holdingId: string | null, working: Working): Place {
  if (holdingId === null) return { account };
  return { account, holdingId, locationId: working.locationOf(holdingId) };
}
