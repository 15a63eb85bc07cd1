import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { refusingTaken } from '#lib/catalogue';
import { type Actor, newId, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { TEMPLATE_NAMES } from './taken-names.js';
import {
  type NewVersion,
  readContent,
  sameContent,
  storedContent,
  USUAL_THICKNESS_MM,
  type VersionContent,
  writeVersion,
} from './template-input.js';
import { type TemplateView, templateView } from './template-view.js';

export interface NewTemplate extends NewVersion {
  readonly id?: string;
  readonly name: string;
}

@Injectable()
export class CreateTemplate {
  constructor(private readonly uow: UnitOfWork) {}

  /** Sent again with the same id and the same data, it answers the same and writes nothing. */
  async run(actor: Actor, command: NewTemplate): Promise<TemplateView> {
    const row: ProcedureTemplateEntity = {
      id: command.id ?? newId(),
      practiceId: actor.practiceId,
      name: command.name.trim(),
      active: true,
      latestVersion: 1,
    };
    return this.uow.run(actor.practiceId, async (tx) => {
      const content = await readContent(tx, command, USUAL_THICKNESS_MM);
      const earlier = command.id ? await findEarlier(tx, row, content) : null;
      if (earlier) return templateView(tx, earlier, 1);
      await refusingTaken(TEMPLATE_NAMES, () => tx.manager.insert(ProcedureTemplateEntity, row));
      await writeVersion(tx, actor, { templateId: row.id, version: 1 }, content);
      await recordAudit(tx, actor, {
        action: 'procedure-template.created',
        subjectKind: 'procedure-template',
        subjectId: row.id,
        details: { name: row.name, ...content },
      });
      return templateView(tx, row, 1);
    });
  }
}

/** The template an earlier request made with this id; a twin still running is waited for. */
async function findEarlier(
  tx: Tx,
  row: ProcedureTemplateEntity,
  content: VersionContent,
): Promise<ProcedureTemplateEntity | null> {
  await tx.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [`create ${row.id}`]);
  const earlier = await tx.manager.findOneBy(ProcedureTemplateEntity, { id: row.id });
  if (!earlier) return null;
  const first = await storedContent(tx, row.id, 1);
  if (earlier.name === row.name && first && sameContent(first.content, content)) return earlier;
  throw refuse('already_exists', 'There is already another procedure template with this id.', [
    { field: 'id', message: 'is already in use' },
  ]);
}
