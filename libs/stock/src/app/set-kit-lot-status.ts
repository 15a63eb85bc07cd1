import { Injectable } from '@nestjs/common';
import { type Actor, newId, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { lockConsumables } from '../db/lock-candidates.js';
import type { KitLotStatusAnswerDto, LotStatusDto } from '../http/stock.dto.js';
import { StockArrivals } from './stock-arrivals.js';

interface PartRow {
  readonly lot_id: string;
  readonly consumable_id: string;
}

const PARTS = `
SELECT DISTINCT l.lot_id, l.consumable_id FROM layers l
WHERE l.kit_lot_id = $1 ORDER BY l.lot_id`;

/** Holds back, or releases, a kit with the lots of all its parts, in every location at once. */
@Injectable()
export class SetKitLotStatus {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly arrivals: StockArrivals,
  ) {}

  async run(actor: Actor, kitLotId: string, command: LotStatusDto): Promise<KitLotStatusAnswerDto> {
    return this.uow.run(actor.practiceId, (tx) => this.set(tx, actor, kitLotId, command));
  }

  private async set(
    tx: Tx,
    actor: Actor,
    kitLotId: string,
    { status, note }: LotStatusDto,
  ): Promise<KitLotStatusAnswerDto> {
    const [kit] = await tx.query('SELECT FROM kit_lots WHERE id = $1', [kitLotId]);
    if (!kit) throw refuse('not_found', 'There is no kit lot with this id.');
    const before = await tx.query<PartRow>(PARTS, [kitLotId]);
    const consumables = [...new Set(before.map((part) => part.consumable_id))];
    await lockConsumables(tx, consumables);
    const lotIds = (await tx.query<PartRow>(PARTS, [kitLotId])).map((part) => part.lot_id);
    await tx.query('UPDATE kit_lots SET status = $2 WHERE id = $1', [kitLotId, status]);
    await tx.query('UPDATE lots SET status = $2 WHERE id = ANY($1::uuid[])', [lotIds, status]);
    await tx.query('UPDATE layers SET lot_status = $2 WHERE lot_id = ANY($1::uuid[])', [
      lotIds,
      status,
    ]);
    await tx.query(
      `INSERT INTO lot_status_changes (id, practice_id, lot_id, status, note, recorded_by)
       SELECT r.id, current_practice(), r.lot_id, $2, $3, $4
       FROM json_to_recordset($1::json) AS r(id uuid, lot_id uuid)`,
      [
        JSON.stringify(lotIds.map((lot_id) => ({ id: newId(), lot_id }))),
        status,
        note,
        actor.personId,
      ],
    );
    if (status === 'released') await this.arrivals.announce(tx, actor, consumables);
    return { kitLotId, status, lotIds };
  }
}
