import { Injectable } from '@nestjs/common';
import { type Actor, Clock, refuse, UnitOfWork } from '#lib/platform';
import type { LayerDto, MassBalanceDto } from '../http/stock-answers.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  toConsumable,
  toLot,
} from './consumable-ref.js';
import { HOLDING_FACTS, type HoldingRow, toHolding } from './holding-facts.js';
import { microOf, moneyText, quantityText } from './wire.js';

/** Rule 2 of one layer as the view layer_balances has it. */
export interface BalanceColumns {
  readonly received: string;
  readonly on_hand: string;
  readonly used: string;
  readonly wasted: string;
  readonly returned: string;
  readonly count_difference: string;
  readonly balanced: boolean;
}

export const BALANCE_COLUMNS = `b.received, b.on_hand, b.used, b.wasted, b.returned,
  b.count_difference, b.balanced`;

export function toMassBalance(row: BalanceColumns): MassBalanceDto {
  return {
    received: quantityText(row.received),
    onHand: quantityText(row.on_hand),
    used: quantityText(row.used),
    wasted: quantityText(row.wasted),
    returned: quantityText(row.returned),
    countDifference: quantityText(row.count_difference),
    balanced: row.balanced,
  };
}

const LAYER = `
SELECT l.id, l.delivery_id, d.reference, l.line_number, d.supplier_id,
       (SELECT s.name FROM suppliers s WHERE s.id = d.supplier_id) AS supplier_name,
       l.received_on, l.presentation_id,
       (SELECT q.name FROM presentations q WHERE q.id = l.presentation_id) AS presentation_name,
       l.packs, l.pack_price, l.kit_pack_price, l.sample, l.landed_cost, l.out_cost, l.landed_cost - l.out_cost AS worth,
       b.cost_in, b.cost_out, b.revalued, ${BALANCE_COLUMNS}, ${CONSUMABLE_COLUMNS}, ${LOT_COLUMNS}
FROM layers l
JOIN layer_balances b ON b.layer_id = l.id
JOIN deliveries d ON d.id = l.delivery_id
JOIN lots t ON t.id = l.lot_id
JOIN consumables c ON c.id = l.consumable_id
WHERE l.practice_id = $1 AND l.id = $2`;

interface LayerRow extends BalanceColumns, ConsumableColumns, LotColumns {
  readonly id: string;
  readonly delivery_id: string;
  readonly reference: string | null;
  readonly line_number: number;
  readonly supplier_id: string;
  readonly supplier_name: string;
  readonly received_on: string;
  readonly presentation_id: string;
  readonly presentation_name: string;
  readonly packs: number;
  readonly pack_price: string;
  readonly kit_pack_price: string | null;
  readonly sample: boolean;
  readonly landed_cost: string;
  readonly out_cost: string;
  readonly worth: string;
  readonly cost_in: string;
  readonly cost_out: string;
  readonly revalued: string;
}

/** One delivery line as stock: what came, what became of it, what it cost; both balance. */
@Injectable()
export class LayerReader {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async get(actor: Actor, id: string): Promise<LayerDto> {
    const today = this.clock.today(actor.timeZone);
    return this.uow.read(actor.practiceId, async (tx) => {
      const [row] = await tx.query<LayerRow>(LAYER, [actor.practiceId, id]);
      if (!row) throw refuse('not_found', 'There is no layer with this id.');
      const holdings = await tx.query<HoldingRow>(
        `${HOLDING_FACTS} AND h.layer_id = $3 ORDER BY h.id`,
        [actor.practiceId, today, id],
      );
      return toLayer(row, holdings);
    });
  }
}

function toLayer(row: LayerRow, holdings: readonly HoldingRow[]): LayerDto {
  return {
    id: row.id,
    deliveryId: row.delivery_id,
    deliveryReference: row.reference,
    lineNumber: row.line_number,
    supplier: { id: row.supplier_id, name: row.supplier_name },
    receivedOn: row.received_on,
    consumable: toConsumable(row),
    lot: toLot(row),
    presentationId: row.presentation_id,
    presentationName: row.presentation_name,
    packs: row.packs,
    packPrice: moneyText(row.pack_price),
    paidPerPack: moneyText(row.kit_pack_price ?? row.pack_price),
    sample: row.sample,
    mass: toMassBalance(row),
    cost: {
      landedCost: moneyText(row.landed_cost),
      outCost: moneyText(row.out_cost),
      remainingValue: moneyText(row.worth),
      costIn: moneyText(row.cost_in),
      costOut: moneyText(row.cost_out),
      revalued: moneyText(row.revalued),
      balanced:
        microOf(row.cost_in) - microOf(row.cost_out) + microOf(row.revalued) === microOf(row.worth),
    },
    holdings: holdings.map(toHolding),
  };
}
