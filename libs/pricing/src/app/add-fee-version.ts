import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { findToChange } from '#lib/catalogue';
import { formatMoney } from '#lib/measure';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { FeeEntity } from '../db/fee.entity.js';
import { insertFeeVersion, versionsOf } from '../db/fee-versions.js';
import { type FeeContent, feeVersionOf } from './fee-content.js';
import { type FeeHistoryView, feeHistory } from './fee-view.js';

/** What a fee comes to from a day on. Earlier versions stay; a later one of the same day counts. */
@Injectable()
export class AddFeeVersion {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, id: string, command: FeeContent): Promise<FeeHistoryView> {
    const operation = `POST /api/fees/${id}/versions`;
    const done = await this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const row = await findToChange(tx, FeeEntity, id, 'fee');
      const version = feeVersionOf(actor, command);
      await insertFeeVersion(tx, actor.personId, { feeId: id, ...version });
      await recordAudit(tx, actor, {
        action: 'fee.version-added',
        subjectKind: 'fee',
        subjectId: id,
        details: { code: row.code, ...version, fee: formatMoney(version.fee) },
      });
      return feeHistory(row, await versionsOf(tx, id), this.clock.today(actor.timeZone));
    });
    return done.body;
  }
}
