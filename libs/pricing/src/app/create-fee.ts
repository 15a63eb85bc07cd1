import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { refusingTaken } from '#lib/catalogue';
import type { Reason } from '#lib/dentition';
import { formatMoney } from '#lib/measure';
import { type Actor, Clock, newId, UnitOfWork } from '#lib/platform';
import { FeeEntity } from '../db/fee.entity.js';
import { insertFeeVersion, versionsOf } from '../db/fee-versions.js';
import { checkTemplate } from './check-references.js';
import { textOrNull } from './coins.js';
import { type FeeContent, feeVersionOf } from './fee-content.js';
import { type FeeHistoryView, feeHistory, feeSummary } from './fee-view.js';
import { FEE_NAMES } from './taken-names.js';

export interface NewFee extends FeeContent {
  readonly code: string;
  readonly name: string;
  readonly feeClass?: string | null;
  readonly templateId?: string | null;
  readonly reason?: Reason | null;
}

@Injectable()
export class CreateFee {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: NewFee): Promise<FeeHistoryView> {
    const booking = { actor, key, operation: 'POST /api/fees', body: command };
    const done = await this.uow.runOnce(booking, async (tx) => {
      const version = feeVersionOf(actor, command);
      const row: FeeEntity = {
        id: newId(),
        practiceId: actor.practiceId,
        code: command.code.trim(),
        name: command.name.trim(),
        feeClass: textOrNull(command.feeClass),
        templateId: command.templateId ?? null,
        reason: command.reason ?? null,
        active: true,
      };
      await checkTemplate(tx, row.templateId);
      await refusingTaken(FEE_NAMES, () => tx.manager.insert(FeeEntity, row));
      await insertFeeVersion(tx, actor.personId, { feeId: row.id, ...version });
      const { id, ...details } = feeSummary(row);
      await recordAudit(tx, actor, {
        action: 'fee.created',
        subjectKind: 'fee',
        subjectId: id,
        details: { ...details, ...version, fee: formatMoney(version.fee) },
      });
      return feeHistory(row, await versionsOf(tx, id), this.clock.today(actor.timeZone));
    });
    return done.body;
  }
}
