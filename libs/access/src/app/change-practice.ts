import { Injectable } from '@nestjs/common';
import { type Actor, type CostShareKey, invalidFields, UnitOfWork } from '#lib/platform';
import { PracticeEntity } from '../db/practice.entity.js';
import { timeZoneProblem } from '../domain/practice-rules.js';
import { recordAudit } from './record-audit.js';
import type { PracticeView } from './views.js';

export interface PracticeChanges {
  readonly name?: string | null | undefined;
  readonly timeZone?: string | null | undefined;
  readonly toothNotation?: 'iso' | 'universal' | null | undefined;
  readonly costShareKey?: CostShareKey | null | undefined;
  readonly expiryWarningDays?: number | null | undefined;
}

/** Changes the settings of the practice. Its currency stays: every price in the book is in it. */
@Injectable()
export class ChangePractice {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, command: PracticeChanges): Promise<PracticeView> {
    const zoneProblem = command.timeZone == null ? undefined : timeZoneProblem(command.timeZone);
    if (zoneProblem !== undefined) {
      throw invalidFields([{ field: 'timeZone', message: zoneProblem }]);
    }
    return this.uow.run(actor.practiceId, async (tx) => {
      const id = actor.practiceId;
      const before = await tx.manager.findOneByOrFail(PracticeEntity, { id });
      const changed = {
        name: command.name?.trim() ?? before.name,
        timeZone: command.timeZone ?? before.timeZone,
        toothNotation: command.toothNotation ?? before.toothNotation,
        costShareKey: command.costShareKey ?? before.costShareKey,
        expiryWarningDays: command.expiryWarningDays ?? before.expiryWarningDays,
      };
      await tx.manager.update(PracticeEntity, { id }, changed);
      const after = { ...before, ...changed };
      await recordAudit(tx, actor, {
        action: 'practice.changed',
        subjectKind: 'practice',
        subjectId: id,
        details: { before: { ...before }, after },
      });
      return after;
    });
  }
}
