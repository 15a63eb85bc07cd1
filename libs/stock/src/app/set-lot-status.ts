import { Injectable } from '@nestjs/common';
import { type Actor, newId, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { lockConsumables } from '../db/lock-candidates.js';
import type { LotStatusAnswerDto, LotStatusDto } from '../http/stock.dto.js';
import { StockArrivals } from './stock-arrivals.js';

/** Holds a lot back (quarantined or recalled) or releases it, in every location at once. */
@Injectable()
export class SetLotStatus {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly arrivals: StockArrivals,
  ) {}

  async run(actor: Actor, lotId: string, command: LotStatusDto): Promise<LotStatusAnswerDto> {
    return this.uow.run(actor.practiceId, (tx) => this.set(tx, actor, lotId, command));
  }

  private async set(
    tx: Tx,
    actor: Actor,
    lotId: string,
    command: LotStatusDto,
  ): Promise<LotStatusAnswerDto> {
    const [lot] = await tx.query<{ consumable_id: string }>(
      'SELECT consumable_id FROM lots WHERE id = $1',
      [lotId],
    );
    if (!lot) throw refuse('not_found', 'There is no lot with this id.');
    await lockConsumables(tx, [lot.consumable_id]);
    await tx.query('UPDATE lots SET status = $2 WHERE id = $1', [lotId, command.status]);
    await tx.query('UPDATE layers SET lot_status = $2 WHERE lot_id = $1', [lotId, command.status]);
    await tx.query(
      `INSERT INTO lot_status_changes (id, practice_id, lot_id, status, note, recorded_by)
       VALUES ($1, current_practice(), $2, $3, $4, $5)`,
      [newId(), lotId, command.status, command.note, actor.personId],
    );
    if (command.status === 'released') await this.arrivals.announce(tx, actor, [lot.consumable_id]);
    return { lotId, status: command.status };
  }
}
