import { Injectable } from '@nestjs/common';
import { findNamed } from '#lib/catalogue';
import type { ToothNotation } from '#lib/dentition';
import { type Actor, UnitOfWork, unknownReference } from '#lib/platform';
import { loadTemplates } from '../db/load-templates.js';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import type { RestorationInput } from '../domain/read-restoration.js';
import { readRestorations } from './read-restorations.js';
import { type ShownUsage, showUsage } from './show-usage.js';

/** What is asked of a template, whichever version or draft of it answers. */
export interface UsageQuestion {
  readonly restorations: readonly Omit<RestorationInput, 'templateId' | 'templateVersion'>[];
  /** Two when left out: who treats and who assists. */
  readonly staffCount?: number | null;
  readonly withoutAnaesthetic?: boolean | null;
  /** The practice's own when left out. */
  readonly toothNotation?: ToothNotation | null;
}

export interface PreviewQuestion extends UsageQuestion {
  /** The latest when left out. */
  readonly version?: number | null;
}

export interface Preview extends ShownUsage {
  readonly templateId: string;
  readonly version: number;
}

/** What a visit with these restorations would use by this template; nothing is written. */
@Injectable()
export class PreviewTemplate {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, templateId: string, question: PreviewQuestion): Promise<Preview> {
    const notation = question.toothNotation ?? actor.toothNotation;
    return this.uow.read(actor.practiceId, async (tx) => {
      await findNamed(tx, ProcedureTemplateEntity, templateId, 'procedure template');
      const version = question.version ?? undefined;
      const templateOf = await loadTemplates(tx, [{ templateId, version }]);
      const template = templateOf(templateId, version);
      if (!template) throw unknownReference('version', 'version of this template');
      const inputs = question.restorations.map((facts) => ({ ...facts, templateId }));
      const restorations = readRestorations(inputs, notation, () => template);
      const { staffCount, withoutAnaesthetic } = question;
      const chair = { notation, staffCount, withoutAnaesthetic };
      const usage = await showUsage(tx, restorations, chair);
      return { templateId, version: template.version, ...usage };
    });
  }
}
