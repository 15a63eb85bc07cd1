import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { findToChange } from '#lib/catalogue';
import { type Actor, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import {
  type NewVersion,
  readContent,
  sameContent,
  storedContent,
  writeVersion,
} from './template-input.js';
import { type TemplateView, templateView } from './template-view.js';

@Injectable()
export class CreateTemplateVersion {
  constructor(private readonly uow: UnitOfWork) {}

  /** A version that says what the latest one says is not written again: that one is answered. */
  async run(actor: Actor, templateId: string, command: NewVersion): Promise<TemplateView> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const template = await findToChange(
        tx,
        ProcedureTemplateEntity,
        templateId,
        'procedure template',
      );
      const latest = await storedContent(tx, templateId, template.latestVersion);
      if (!latest) throw new Error(`Template ${templateId} has lost its latest version`);
      const content = await readContent(tx, command, latest.content.layerThicknessMm);
      if (sameContent(latest.content, content)) {
        return templateView(tx, template, template.latestVersion);
      }
      const version = template.latestVersion + 1;
      await writeVersion(tx, actor, { templateId, version }, content);
      await tx.manager.update(
        ProcedureTemplateEntity,
        { id: templateId },
        { latestVersion: version },
      );
      await recordAudit(tx, actor, {
        action: 'procedure-template.version-created',
        subjectKind: 'procedure-template',
        subjectId: templateId,
        details: { version, ...content },
      });
      return templateView(tx, { ...template, latestVersion: version }, version);
    });
  }
}
