import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { changesBetween, findToChange, refusingTaken } from '#lib/catalogue';
import { type Actor, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { TEMPLATE_NAMES } from './taken-names.js';
import { summaryOf, type TemplateSummary } from './template-view.js';

export interface TemplateChanges {
  readonly name?: string | null;
  readonly active?: boolean | null;
}

/** What a template uses is never changed: that is a new version. */
@Injectable()
export class ChangeTemplate {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string, command: TemplateChanges): Promise<TemplateSummary> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, ProcedureTemplateEntity, id, 'procedure template');
      const name = command.name?.trim() ?? before.name;
      const active = command.active ?? before.active;
      const after: ProcedureTemplateEntity = { ...before, name, active };
      const changes = changesBetween(summaryOf(before), summaryOf(after));
      if (!changes) return summaryOf(before);
      await refusingTaken(TEMPLATE_NAMES, () =>
        tx.manager.update(ProcedureTemplateEntity, { id }, { name, active }),
      );
      await recordAudit(tx, actor, {
        action: 'procedure-template.changed',
        subjectKind: 'procedure-template',
        subjectId: id,
        details: changes,
      });
      return summaryOf(after);
    });
  }
}
