import { formatMoney, formatQuantity, type Money, type Quantity } from '#lib/measure';
import type { Tx } from '#lib/platform';
import type { Day, LayerState, Sureness } from '../domain/candidate.js';
import { type VarianceBack, writeVariancesBack } from './price-variances.js';

export type Account = 'supplier' | 'location' | 'visit' | 'waste' | 'count' | 'return';

export const WASTE_REASONS = [
  'expired',
  'after-opening limit',
  'contaminated',
  'wrong shade opened',
  'residue',
  'damaged',
  'temperature',
  'recall',
  'sample',
] as const;
export type WasteReason = (typeof WASTE_REASONS)[number];

/** One side of a movement: an account, and for stock the holding and where it is. */
export interface Place {
  readonly account: Account;
  readonly holdingId?: string;
  readonly locationId?: string;
}

export interface NewMovement {
  readonly id: string;
  readonly layerId: string;
  readonly from: Place;
  readonly to: Place;
  readonly quantity: Quantity;
  readonly cost: Money;
  readonly occurredOn: Day;
  readonly visitId?: string | null;
  readonly usageLineId?: string | null;
  readonly shortfallId?: string | null;
  readonly sureness?: Sureness | null;
  readonly outOfOrder?: boolean;
  readonly wasteReason?: WasteReason | null;
  readonly note?: string | null;
  readonly reversesId?: string | null;
}

export interface NewHolding {
  readonly id: string;
  readonly layerId: string;
  readonly locationId: string;
  readonly onHand: Quantity;
  readonly openedOn: Day | null;
  readonly useBy: Day | null;
}

/** Everything one booking changes in the stock. Holdings and layers are new totals of locked rows. */
export interface StockChanges {
  readonly newHoldings: readonly NewHolding[];
  readonly holdings: ReadonlyMap<string, Quantity>;
  readonly layers: ReadonlyMap<string, LayerState>;
  /** Opened containers that were carried elsewhere, with their new location. */
  readonly places?: ReadonlyMap<string, string>;
  readonly movements: readonly NewMovement[];
  /** Variance of revalued layers to which something came back; of the day of the first movement. */
  readonly variances?: readonly VarianceBack[];
}

// Totals come as arrays, which the planner takes for short: it finds the rows by their ids. Taken for
// long, as a list of JSON is, all rows there are would be read.
const APPLY = `
WITH new_holdings AS (
  INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand, opened_on, use_by)
  SELECT r.id, $1, r.layer_id, r.location_id, r.on_hand, r.opened_on, r.use_by
  FROM json_to_recordset($3::json) AS r(id uuid, layer_id uuid, location_id uuid,
    on_hand numeric, opened_on date, use_by date)
), changed_holdings AS (
  UPDATE holdings h SET on_hand = r.on_hand, location_id = coalesce(r.location_id, h.location_id)
  FROM unnest($4::uuid[], $5::numeric[], $6::uuid[]) AS r(id, on_hand, location_id)
  WHERE h.id = r.id RETURNING h.id
), changed_layers AS (
  UPDATE layers l SET out_quantity = r.out_quantity, out_cost = r.out_cost
  FROM unnest($7::uuid[], $8::numeric[], $9::numeric[]) AS r(id, out_quantity, out_cost)
  WHERE l.id = r.id RETURNING l.id
), new_movements AS (
  INSERT INTO movements (id, practice_id, layer_id, from_account, to_account, from_holding_id,
    from_location_id, to_holding_id, to_location_id, quantity, cost, occurred_on, visit_id,
    usage_line_id, shortfall_id, sureness, out_of_order, waste_reason, note, reverses_id,
    recorded_by)
  SELECT r.id, $1, r.layer_id, r.from_account, r.to_account, r.from_holding_id,
    r.from_location_id, r.to_holding_id, r.to_location_id, r.quantity, r.cost, r.occurred_on,
    r.visit_id, r.usage_line_id, r.shortfall_id, r.sureness, coalesce(r.out_of_order, false),
    r.waste_reason, r.note, r.reverses_id, $2
  FROM json_to_recordset($10::json) AS r(id uuid, layer_id uuid,
    from_account text, to_account text, from_holding_id uuid, from_location_id uuid,
    to_holding_id uuid, to_location_id uuid, quantity numeric, cost numeric, occurred_on date,
    visit_id uuid, usage_line_id uuid, shortfall_id uuid, sureness text, out_of_order boolean,
    waste_reason text, note text, reverses_id uuid)
)
SELECT (SELECT count(*) FROM changed_holdings)::int AS holdings,
       (SELECT count(*) FROM changed_layers)::int AS layers`;

/** A property left out is NULL in the row: most movements have few of them. */
function movementRow(m: NewMovement): object {
  return {
    id: m.id,
    layer_id: m.layerId,
    from_account: m.from.account,
    to_account: m.to.account,
    from_holding_id: m.from.holdingId,
    from_location_id: m.from.locationId,
    to_holding_id: m.to.holdingId,
    to_location_id: m.to.locationId,
    quantity: formatQuantity(m.quantity),
    cost: formatMoney(m.cost),
    occurred_on: m.occurredOn,
    visit_id: m.visitId ?? undefined,
    usage_line_id: m.usageLineId ?? undefined,
    shortfall_id: m.shortfallId ?? undefined,
    sureness: m.sureness ?? undefined,
    out_of_order: m.outOfOrder,
    waste_reason: m.wasteReason ?? undefined,
    note: m.note ?? undefined,
    reverses_id: m.reversesId ?? undefined,
  };
}

/** Writes the changes in one round trip. The rows must have been locked by this transaction. */
export async function applyStockChanges(
  tx: Tx,
  personId: string,
  changes: StockChanges,
): Promise<void> {
  const added = new Set(changes.newHoldings.map((h) => h.id));
  const holdings = [...changes.holdings].filter(([id]) => !added.has(id));
  const newHoldings = changes.newHoldings.map((h) => ({
    id: h.id,
    layer_id: h.layerId,
    location_id: h.locationId,
    on_hand: formatQuantity(changes.holdings.get(h.id) ?? h.onHand),
    opened_on: h.openedOn,
    use_by: h.useBy,
  }));
  const layers = [...changes.layers.values()];
  const [done] = await tx.named<{ holdings: number; layers: number }>('stock-apply', APPLY, [
    tx.practiceId,
    personId,
    JSON.stringify(newHoldings),
    holdings.map(([id]) => id),
    holdings.map(([, onHand]) => formatQuantity(onHand)),
    holdings.map(([id]) => changes.places?.get(id) ?? null),
    layers.map((layer) => layer.layerId),
    layers.map((layer) => formatQuantity(layer.outQuantity)),
    layers.map((layer) => formatMoney(layer.outCost)),
    JSON.stringify(changes.movements.map(movementRow)),
  ]);
  if (done?.holdings !== holdings.length || done.layers !== changes.layers.size) {
    throw new Error('A holding or layer to be changed was not there');
  }
  const [first] = changes.movements;
  if (first && changes.variances) {
    await writeVariancesBack(tx, { personId, day: first.occurredOn }, changes.variances);
  }
}
