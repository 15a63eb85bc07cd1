import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, invalidFields, newId, type Tx } from '#lib/platform';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import {
  type NewTemplateLine,
  type NewVersion,
  readContent,
  sameContent,
  storedContent,
  USUAL_THICKNESS_MM,
  type VersionContent,
  writeVersion,
} from './template-input.js';

/** A template as a list says it; what is left out stays as it is, or is as usual in a new one. */
export interface EnteredTemplate {
  readonly name: string;
  readonly active: boolean | null;
  readonly minutes: number | null;
  readonly assistantMinutes: number | null;
  readonly layerThicknessMm: string | null;
  readonly note: string | null;
  readonly lines: readonly NewTemplateLine[];
}

/** Enters templates by their names, for lists that come in from files. */
@Injectable()
export class EnterTemplate {
  /**
   * Writes the template, or a new version where the book's latest says something else, in the caller's
   * transaction. Throws a refusal that names the fields, e.g. `lines[2].placed`, before it writes.
   */
  async run(tx: Tx, actor: Actor, said: EnteredTemplate): Promise<'new' | 'changed' | 'same'> {
    const known = await tx.manager
      .createQueryBuilder(ProcedureTemplateEntity, 'row')
      .setLock('pessimistic_write')
      .where('lower(row.name) = lower(:name)', { name: said.name })
      .getOne();
    if (!known) {
      await enterNew(tx, actor, said);
      return 'new';
    }
    const newVersion = await enterVersion(tx, actor, { known, said });
    const switched = await switchUse(tx, actor, { known, said });
    return newVersion || switched ? 'changed' : 'same';
  }
}

async function enterNew(tx: Tx, actor: Actor, said: EnteredTemplate): Promise<void> {
  if (said.minutes === null) {
    throw invalidFields([
      { field: 'minutes', message: 'is needed for what is not in the book yet' },
    ]);
  }
  const content = await readContent(tx, { ...said, minutes: said.minutes }, USUAL_THICKNESS_MM);
  const row: ProcedureTemplateEntity = {
    id: newId(),
    practiceId: actor.practiceId,
    name: said.name,
    active: said.active ?? true,
    latestVersion: 1,
  };
  await tx.manager.insert(ProcedureTemplateEntity, row);
  await writeVersion(tx, actor, { templateId: row.id, version: 1 }, content);
  await audit(tx, actor, row.id, { action: 'created', details: { name: row.name, ...content } });
}

interface Known {
  readonly known: ProcedureTemplateEntity;
  readonly said: EnteredTemplate;
}

async function enterVersion(tx: Tx, actor: Actor, { known, said }: Known): Promise<boolean> {
  const latest = await storedContent(tx, known.id, known.latestVersion);
  if (!latest) throw new Error(`Template ${known.id} has lost its latest version`);
  const asked = filledIn(said, latest.content);
  const content = await readContent(tx, asked, latest.content.layerThicknessMm);
  if (sameContent(latest.content, content)) return false;
  const version = known.latestVersion + 1;
  await writeVersion(tx, actor, { templateId: known.id, version }, content);
  await tx.manager.update(ProcedureTemplateEntity, { id: known.id }, { latestVersion: version });
  const details = { version, ...content };
  await audit(tx, actor, known.id, { action: 'version-created', details });
  return true;
}

/** What was left out is what the latest version says. */
function filledIn(said: EnteredTemplate, latest: VersionContent): NewVersion {
  return {
    minutes: said.minutes ?? latest.minutes,
    assistantMinutes: said.assistantMinutes ?? latest.assistantMinutes,
    layerThicknessMm: said.layerThicknessMm,
    note: said.note ?? latest.note,
    lines: said.lines,
  };
}

async function switchUse(tx: Tx, actor: Actor, { known, said }: Known): Promise<boolean> {
  const { active } = said;
  if (active === null || active === known.active) return false;
  await tx.manager.update(ProcedureTemplateEntity, { id: known.id }, { active });
  const details = { active: { from: known.active, to: active } };
  await audit(tx, actor, known.id, { action: 'changed', details });
  return true;
}

function audit(
  tx: Tx,
  actor: Actor,
  subjectId: string,
  what: { readonly action: string; readonly details: Readonly<Record<string, unknown>> },
): Promise<void> {
  return recordAudit(tx, actor, {
    action: `procedure-template.${what.action}`,
    subjectKind: 'procedure-template',
    subjectId,
    details: what.details,
  });
}
