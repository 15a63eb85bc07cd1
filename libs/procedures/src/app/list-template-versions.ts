import { Injectable } from '@nestjs/common';
import { findNamed } from '#lib/catalogue';
import { formatQuantity, quantity } from '#lib/measure';
import { type Actor, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { TemplateVersionEntity } from '../db/template-version.entity.js';

export interface VersionSummary {
  readonly version: number;
  readonly minutes: number;
  readonly assistantMinutes: number;
  readonly layerThicknessMm: string;
  readonly note: string | null;
  readonly recordedBy: string;
  readonly recordedAt: string;
}

/** All versions of a template, the newest first; a template has a handful. */
@Injectable()
export class ListTemplateVersions {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, templateId: string): Promise<{ items: VersionSummary[] }> {
    const rows = await this.uow.read(actor.practiceId, async (tx) => {
      await findNamed(tx, ProcedureTemplateEntity, templateId, 'procedure template');
      return tx.manager.find(TemplateVersionEntity, {
        where: { templateId },
        order: { version: 'DESC' },
      });
    });
    return { items: rows.map(summaryOf) };
  }
}

function summaryOf(row: TemplateVersionEntity): VersionSummary {
  return {
    version: row.version,
    minutes: row.minutes,
    assistantMinutes: row.assistantMinutes,
    layerThicknessMm: formatQuantity(quantity(row.layerThicknessMm)),
    note: row.note,
    recordedBy: row.recordedBy,
    recordedAt: row.recordedAt.toISOString(),
  };
}
