import { Injectable } from '@nestjs/common';
import { findNamed } from '#lib/catalogue';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { FeeEntity } from '../db/fee.entity.js';
import { versionsOf } from '../db/fee-versions.js';
import { type FeeHistoryView, feeHistory } from './fee-view.js';

@Injectable()
export class GetFee {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, id: string): Promise<FeeHistoryView> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const row = await findNamed(tx, FeeEntity, id, 'fee');
      return feeHistory(row, await versionsOf(tx, id), this.clock.today(actor.timeZone));
    });
  }
}
