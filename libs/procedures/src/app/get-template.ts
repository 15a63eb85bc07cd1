import { Injectable } from '@nestjs/common';
import { findNamed } from '#lib/catalogue';
import { type Actor, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { type TemplateView, templateView } from './template-view.js';

@Injectable()
export class GetTemplate {
  constructor(private readonly uow: UnitOfWork) {}

  /** The latest version when none is named. */
  async run(actor: Actor, id: string, version?: number): Promise<TemplateView> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const template = await findNamed(tx, ProcedureTemplateEntity, id, 'procedure template');
      return templateView(tx, template, version ?? template.latestVersion);
    });
  }
}
