import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { changesBetween, findToChange, refusingTaken } from '#lib/catalogue';
import type { Reason } from '#lib/dentition';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { FeeEntity } from '../db/fee.entity.js';
import { versionsOf } from '../db/fee-versions.js';
import { checkTemplate } from './check-references.js';
import { textOrNull } from './coins.js';
import { type FeeHistoryView, feeHistory, feeSummary } from './fee-view.js';
import { FEE_NAMES } from './taken-names.js';

/** What is left out stays; null takes a class, template or reason away. */
export interface FeeChanges {
  readonly code?: string | null;
  readonly name?: string | null;
  readonly feeClass?: string | null;
  readonly templateId?: string | null;
  readonly reason?: Reason | null;
  readonly active?: boolean | null;
}

@Injectable()
export class ChangeFee {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, id: string, command: FeeChanges): Promise<FeeHistoryView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, FeeEntity, id, 'fee');
      const changed = {
        code: command.code?.trim() ?? before.code,
        name: command.name?.trim() ?? before.name,
        feeClass: command.feeClass === undefined ? before.feeClass : textOrNull(command.feeClass),
        templateId: command.templateId === undefined ? before.templateId : command.templateId,
        reason: command.reason === undefined ? before.reason : command.reason,
        active: command.active ?? before.active,
      };
      const after: FeeEntity = { ...before, ...changed };
      const changes = changesBetween(feeSummary(before), feeSummary(after));
      if (changes) {
        await checkTemplate(tx, after.templateId);
        await refusingTaken(FEE_NAMES, () => tx.manager.update(FeeEntity, { id }, changed));
        const subject = { subjectKind: 'fee', subjectId: id, details: changes };
        await recordAudit(tx, actor, { action: 'fee.changed', ...subject });
      }
      return feeHistory(after, await versionsOf(tx, id), this.clock.today(actor.timeZone));
    });
  }
}
