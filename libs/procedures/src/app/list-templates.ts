import { Injectable } from '@nestjs/common';
import { type ListQuery, pageByName, type SortColumn } from '#lib/catalogue';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { summaryOf, type TemplateSummary } from './template-view.js';

const SORTS: Readonly<Record<string, SortColumn<ProcedureTemplateEntity>>> = {
  version: { column: 'latest_version', kind: 'number', valueOf: (row) => row.latestVersion },
};

@Injectable()
export class ListTemplates {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ListQuery): Promise<Page<TemplateSummary>> {
    return this.uow.read(actor.practiceId, (tx) =>
      pageByName(tx, { entity: ProcedureTemplateEntity, query, sorts: SORTS, toView: summaryOf }),
    );
  }
}
