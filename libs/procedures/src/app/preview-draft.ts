import { Injectable } from '@nestjs/common';
import { quantity } from '#lib/measure';
import { type Actor, newId, UnitOfWork } from '#lib/platform';
import type { TemplateVersion } from '../domain/template.js';
import type { UsageQuestion } from './preview-template.js';
import { readRestorations } from './read-restorations.js';
import { type ShownUsage, showUsage } from './show-usage.js';
import {
  type NewVersion,
  readContent,
  USUAL_THICKNESS_MM,
  type VersionContent,
} from './template-input.js';

/** What a visit would use by a version that nobody has written yet. */
@Injectable()
export class PreviewDraft {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, draft: NewVersion & UsageQuestion): Promise<ShownUsage> {
    const notation = draft.toothNotation ?? actor.toothNotation;
    return this.uow.read(actor.practiceId, async (tx) => {
      const content = await readContent(tx, draft, USUAL_THICKNESS_MM);
      const template = asTemplate(content);
      const { templateId } = template;
      const inputs = draft.restorations.map((facts) => ({ ...facts, templateId }));
      const restorations = readRestorations(inputs, notation, () => template);
      const { staffCount, withoutAnaesthetic } = draft;
      return showUsage(tx, restorations, { notation, staffCount, withoutAnaesthetic });
    });
  }
}

function asTemplate(content: VersionContent): TemplateVersion {
  return {
    templateId: newId(),
    version: 0,
    name: '',
    active: true,
    minutes: content.minutes,
    assistantMinutes: content.assistantMinutes,
    layerThicknessMm: quantity(content.layerThicknessMm),
    lines: content.lines.map((line) => ({
      ...line,
      placed: quantity(line.placed),
      dispensed: quantity(line.dispensed),
    })),
  };
}
