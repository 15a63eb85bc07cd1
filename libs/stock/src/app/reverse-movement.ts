import { Injectable } from '@nestjs/common';
import { type Actor, type Claimed, Clock, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { lockConsumables } from '../db/lock-candidates.js';
import { layersOfReversedDeliveries } from '../db/reversed-deliveries.js';
import { applyStockChanges } from '../db/stock-changes.js';
import type { BookedDto, ReversalDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';
import { counterMovements, MOVEMENT_COLUMNS, type MovementRow } from './counter-movements.js';
import { StockArrivals } from './stock-arrivals.js';

/** Undoes one write-off, return, move, opening or count difference by a counter-entry that names it. */
@Injectable()
export class ReverseMovement {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
  ) {}

  async run(
    actor: Actor,
    key: string,
    movementId: string,
    command: ReversalDto,
  ): Promise<Claimed<BookedDto>> {
    const operation = `POST /api/movements/${movementId}/reversal`;
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.reverse(tx, actor, movementId, command),
    );
  }

  private async reverse(
    tx: Tx,
    actor: Actor,
    movementId: string,
    command: ReversalDto,
  ): Promise<BookedDto> {
    const row = await loadMovement(tx, movementId);
    refuseIrreversible(row);
    const day = this.clock.today(actor.timeZone);
    await lockConsumables(tx, [row.consumable_id]);
    await refuseReversedTwice(tx, movementId);
    await refuseReversedDelivery(tx, row);
    const changes = await counterMovements(tx, [row], day, command.note);
    await applyStockChanges(tx, actor.personId, changes);
    const [counter] = changes.movements;
    const holdingId = row.from_holding_id ?? row.to_holding_id;
    if (!counter || holdingId === null) throw new Error('A reversal made no movement');
    await this.arrivals.announce(tx, actor, [row.consumable_id]);
    return { movementIds: [counter.id], holdingId };
  }
}

interface NamedMovementRow extends MovementRow {
  readonly consumable_id: string;
}

async function loadMovement(tx: Tx, id: string): Promise<NamedMovementRow> {
  const [row] = await tx.query<NamedMovementRow>(
    `SELECT ${MOVEMENT_COLUMNS}, l.consumable_id FROM movements m JOIN layers l ON l.id = m.layer_id
     WHERE m.id = $1`,
    [id],
  );
  if (!row) throw refuse('not_found', 'There is no movement with this id.');
  return row;
}

function refuseIrreversible(row: MovementRow): void {
  const why =
    row.reverses_id !== null
      ? 'It is itself a reversal: book the goods again instead.'
      : row.visit_id !== null
        ? 'It belongs to a visit: reverse the visit.'
        : row.from_account === 'supplier'
          ? 'It belongs to a delivery: reverse the delivery.'
          : undefined;
  if (why) throw refuseStock('cannot_reverse', why, [{ field: 'id', message: why }]);
}

/** What a delivery that never was seemed to lack cannot be found again. */
async function refuseReversedDelivery(tx: Tx, row: MovementRow): Promise<void> {
  const undone = await layersOfReversedDeliveries(tx, [row.layer_id]);
  if (undone.size === 0) return;
  throw refuseStock('stock_moved_on', 'The delivery that these goods came with was reversed.');
}

/** Asked after the locks, so that of two reversals at once the second sees the first. */
async function refuseReversedTwice(tx: Tx, id: string): Promise<void> {
  const [twin] = await tx.query('SELECT 1 FROM movements WHERE reverses_id = $1', [id]);
  if (twin) throw refuseStock('already_reversed', 'This movement was reversed before.');
}
