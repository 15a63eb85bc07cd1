import { Injectable } from '@nestjs/common';
import { type Actor, type Claimed, Clock, refuse, type Tx, UnitOfWork } from '#lib/platform';
import {
  applyStockChanges,
  counterMovements,
  lockConsumables,
  MOVEMENT_COLUMNS,
  type MovementRow,
  NOT_REVERSED,
  type ReversalDto,
  StockArrivals,
} from '#lib/stock';
import { bookAgain } from '../db/booked-record.js';
import type { VisitDto } from '../http/visit-outputs.dto.js';
import { VisitReader } from '../queries/visit-reader.js';
import { refuseVisit } from '../visits.refusals.js';

/**
 * Undoes a visit that was recorded wrongly: counter-entries put back what it took, with the value it
 * took along, its open shortfalls are closed, and what it kept is booked again. The visit stays in
 * the book, marked as reversed.
 */
@Injectable()
export class ReverseVisit {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly arrivals: StockArrivals,
    private readonly reader: VisitReader,
  ) {}

  async run(
    actor: Actor,
    key: string,
    visitId: string,
    command: ReversalDto,
  ): Promise<Claimed<VisitDto>> {
    const operation = `POST /api/visits/${visitId}/reversal`;
    return this.uow.runOnce({ actor, key, operation, body: command }, (tx) =>
      this.reverse(tx, actor, visitId, command.note),
    );
  }

  private async reverse(tx: Tx, actor: Actor, id: string, note: string): Promise<VisitDto> {
    const used = await tx.query<{ consumable_id: string }>(
      'SELECT DISTINCT consumable_id FROM usage_lines WHERE visit_id = $1',
      [id],
    );
    await lockConsumables(
      tx,
      used.map((line) => line.consumable_id),
    );
    const [visit] = await tx.query<{ reversed_at: Date | null; booked_visit_id: string | null }>(
      'SELECT reversed_at, booked_visit_id FROM visits WHERE id = $1 FOR NO KEY UPDATE',
      [id],
    );
    if (!visit) throw refuse('not_found', 'There is no visit with this id.');
    if (visit.reversed_at) {
      throw refuseVisit('already_reversed', 'This visit was reversed before.');
    }
    const now = this.clock.now();
    await tx.query(
      `UPDATE shortfalls SET cancelled_at = $2
       WHERE visit_id = $1 AND settled < quantity AND cancelled_at IS NULL`,
      [id, now],
    );
    const rows = await tx.query<MovementRow & { consumable_id: string }>(
      `SELECT ${MOVEMENT_COLUMNS}, l.consumable_id FROM movements m JOIN layers l ON l.id = m.layer_id
       WHERE m.visit_id = $1 AND m.reverses_id IS NULL AND ${NOT_REVERSED} ORDER BY m.sequence`,
      [id],
    );
    const today = this.clock.today(actor.timeZone);
    await applyStockChanges(tx, actor.personId, await counterMovements(tx, rows, today, note));
    await tx.query(
      'UPDATE visits SET reversed_at = $2, reversed_by = $3, reversal_note = $4 WHERE id = $1',
      [id, now, actor.personId, note],
    );
    if (visit.booked_visit_id) await bookAgain(tx, visit.booked_visit_id);
    await this.arrivals.announce(tx, actor, [...new Set(rows.map((row) => row.consumable_id))]);
    return this.reader.get(tx, actor, id);
  }
}
