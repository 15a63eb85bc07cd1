import { Injectable } from '@nestjs/common';
import {
  formatQuantity,
  isWholeUnit,
  type Quantity,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import {
  type Actor,
  type Claimed,
  Clock,
  newId,
  type Tx,
  UnitOfWork,
  unknownReference,
} from '#lib/platform';
import { lockHoldings } from '../db/lock-candidates.js';
import { carriedAway, layersOfReversedDeliveries } from '../db/reversed-deliveries.js';
import { applyStockChanges, type NewMovement } from '../db/stock-changes.js';
import type { Candidate, LayerState } from '../domain/candidate.js';
import { findAgain, isWholePart, takeFromLayer } from '../domain/holding-change.js';
import type { CountDto, CountStockDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';
import { dayOf, refuseBeforeReceipt } from './checks.js';
import { StockArrivals } from './stock-arrivals.js';

interface Counted {
  readonly holding: Candidate;
  readonly counted: Quantity;
  readonly index: number;
}

/** Sets holdings to what was really there; the differences are booked, nothing is overwritten. */
@Injectable()
export class CountStock {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
  ) {}

  async run(actor: Actor, key: string, command: CountStockDto): Promise<Claimed<CountDto>> {
    const operation = 'POST /api/counts';
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.count(tx, actor, command),
    );
  }

  private async count(tx: Tx, actor: Actor, command: CountStockDto): Promise<CountDto> {
    const day = dayOf(command.countedOn, 'countedOn', actor, this.clock);
    const lines = await this.read(tx, command, day);
    const carried = await refuseWhatNeverWas(tx, lines);
    const layers = new Map<string, LayerState>();
    const holdings = new Map<string, Quantity>();
    const movements: NewMovement[] = [];
    for (const line of lossesFirst(lines)) {
      const { holding, counted } = line;
      movements.push(difference(line, day, { layers, carried }));
      holdings.set(holding.holdingId, counted);
    }
    if (movements.length > 0) {
      await applyStockChanges(tx, actor.personId, { newHoldings: [], holdings, layers, movements });
    }
    const gained = lines
      .filter((l) => l.counted > l.holding.onHand)
      .map((l) => l.holding.consumableId);
    if (gained.length > 0) await this.arrivals.announce(tx, actor, [...new Set(gained)]);
    return {
      countedOn: day,
      lines: lines.map(({ holding, counted }) => ({
        holdingId: holding.holdingId,
        expected: formatQuantity(holding.onHand),
        counted: formatQuantity(counted),
        difference: formatQuantity(quantityFromMicro(counted - holding.onHand)),
      })),
      movementIds: movements.map((m) => m.id),
    };
  }

  private async read(tx: Tx, command: CountStockDto, day: string): Promise<Counted[]> {
    const ids = command.lines.map((line) => line.holdingId);
    const holdings = await lockHoldings(tx, ids);
    const units = await tx.query<{ id: string; stock_unit: string }>(
      'SELECT id, stock_unit FROM consumables WHERE id = ANY($1::uuid[])',
      [[...holdings.values()].map((h) => h.consumableId)],
    );
    const unitById = new Map(units.map((u) => [u.id, u.stock_unit]));
    const seen = new Set<string>();
    return command.lines.map((line, index) => {
      const field = `lines[${index}].holdingId`;
      const holding = holdings.get(line.holdingId);
      if (!holding) throw unknownReference(field, 'holding');
      if (seen.has(line.holdingId)) {
        throw refuseStock('nothing_to_do', 'A holding is counted twice.', [
          { field, message: 'is counted in an earlier line' },
        ]);
      }
      seen.add(line.holdingId);
      refuseBeforeReceipt(holding, day, field);
      const counted = quantity(line.counted);
      const whole = isWholeUnit(unitById.get(holding.consumableId) ?? '');
      if (!isWholePart(holding, counted, whole)) {
        throw refuseStock('not_whole', 'Doses and pieces are counted whole.', [
          { field: `lines[${index}].counted`, message: 'must be whole doses or pieces' },
        ]);
      }
      return { holding, counted, index };
    });
  }
}

/** Answers what of each layer was carried over to another line: it cannot be found under this one. */
async function refuseWhatNeverWas(
  tx: Tx,
  lines: readonly Counted[],
): Promise<ReadonlyMap<string, Quantity>> {
  const found = lines.filter(({ counted, holding }) => counted > holding.onHand);
  if (found.length === 0) return new Map();
  const ids = found.map(({ holding }) => holding.layerId);
  const undone = await layersOfReversedDeliveries(tx, ids);
  const wrong = found.find(({ holding }) => undone.has(holding.layerId));
  if (wrong) throw moreThanReceived(wrong.index);
  return carriedAway(tx, ids);
}

function moreThanReceived(index: number) {
  return refuseStock(
    'more_than_received',
    'More is there than this delivery line ever brought. Book the delivery it came with.',
    [{ field: `lines[${index}].counted`, message: 'is more than was ever received' }],
  );
}

/** What is missing in one place may be what is found in another: so losses are booked first. */
function lossesFirst(lines: readonly Counted[]): Counted[] {
  const lost = lines.filter(({ counted, holding }) => counted < holding.onHand);
  return [...lost, ...lines.filter(({ counted, holding }) => counted > holding.onHand)];
}

interface Layers {
  readonly layers: Map<string, LayerState>;
  readonly carried: ReadonlyMap<string, Quantity>;
}

/** The movement that reconciles one holding; updates its layer's state in `layers`. */
function difference(line: Counted, day: string, { layers, carried }: Layers): NewMovement {
  const { holding, counted, index } = line;
  const state = layers.get(holding.layerId) ?? holding;
  const lost = holding.onHand > counted;
  const amount = quantityFromMicro(lost ? holding.onHand - counted : counted - holding.onHand);
  const change = lost ? takeFromLayer(state, amount) : findAgain(state, amount);
  const goneOn = carried.get(holding.layerId) ?? 0n;
  if (!change || (!lost && change.layer.outQuantity < goneOn)) throw moreThanReceived(index);
  layers.set(holding.layerId, change.layer);
  const here = {
    account: 'location' as const,
    holdingId: holding.holdingId,
    locationId: holding.locationId,
  };
  const away = { account: 'count' as const };
  return {
    id: newId(),
    layerId: holding.layerId,
    from: lost ? here : away,
    to: lost ? away : here,
    quantity: amount,
    cost: change.cost,
    occurredOn: day,
  };
}
