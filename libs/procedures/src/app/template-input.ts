import { type ConsumableFacts, loadConsumables } from '#lib/catalogue';
import type { Reason } from '#lib/dentition';
import { formatQuantity, isWholeUnit, quantity } from '#lib/measure';
import { type Actor, newId, type Tx, unknownReference } from '#lib/platform';
import { TemplateLineEntity } from '../db/template-line.entity.js';
import { TemplateVersionEntity } from '../db/template-version.entity.js';
import { type Driver, isVisitDriver } from '../domain/template.js';
import { lineProblems } from '../domain/template-rules.js';
import { isUsuallyAnaesthetic, usuallySharesDose } from '../domain/usual-flags.js';
import { refuseProcedure } from '../procedures.refusals.js';

export interface NewTemplateLine {
  /** Null or left out: the line takes the shades chosen for the restoration. */
  readonly consumableId?: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly everyAttempt?: boolean | null;
  readonly reasons?: readonly Reason[] | null;
  /** As is usual for its category when left out, like the next. */
  readonly sharesDose?: boolean | null;
  readonly anaesthetic?: boolean | null;
}

export interface NewVersion {
  readonly minutes: number;
  /** The chair time when left out. */
  readonly assistantMinutes?: number | null;
  /** 2 mm, which is common practice, or that of the version before when left out. */
  readonly layerThicknessMm?: string | null;
  readonly note?: string | null;
  readonly lines: readonly NewTemplateLine[];
}

/** Common practice for pastes cured in layers; the maker's own instructions come first. */
export const USUAL_THICKNESS_MM = '2';

/** What a version says: two versions that say the same are the same to whoever uses them. */
export interface VersionContent {
  readonly minutes: number;
  readonly assistantMinutes: number;
  readonly layerThicknessMm: string;
  readonly note: string | null;
  readonly lines: readonly LineContent[];
}

export interface LineContent {
  readonly lineNumber: number;
  readonly consumableId: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly everyAttempt: boolean;
  readonly reasons: Reason[] | null;
  readonly sharesDose: boolean;
  readonly anaesthetic: boolean;
}

/**
 * What a command asks for, with every default filled in. Refuses lines that name unknown consumables
 * or do not fit together.
 */
export async function readContent(
  tx: Tx,
  command: NewVersion,
  usualThickness: string,
): Promise<VersionContent> {
  const named = command.lines.flatMap((line) => line.consumableId ?? []);
  const consumables = await loadConsumables(tx, named);
  command.lines.forEach(({ consumableId }, i) => {
    if (!consumableId || consumables.has(consumableId)) return;
    throw unknownReference(`lines[${i}].consumableId`, 'consumable');
  });
  const content = contentOf(command, usualThickness, consumables);
  refuseProblems(content, (id) => consumables.get(id)?.stockUnit);
  return content;
}

function contentOf(
  command: NewVersion,
  usualThickness: string,
  consumables: ReadonlyMap<string, ConsumableFacts>,
): VersionContent {
  return {
    minutes: command.minutes,
    assistantMinutes: command.assistantMinutes ?? command.minutes,
    layerThicknessMm: plain(command.layerThicknessMm ?? usualThickness),
    note: command.note?.trim() || null,
    lines: command.lines.map((line, index) => ({
      lineNumber: index + 1,
      consumableId: line.consumableId ?? null,
      driver: line.driver,
      placed: plain(line.placed),
      dispensed: plain(line.dispensed),
      everyAttempt: line.everyAttempt ?? false,
      reasons: line.reasons ? [...line.reasons] : null,
      ...flagsOf(line, consumables.get(line.consumableId ?? '')),
    })),
  };
}

function flagsOf(line: NewTemplateLine, facts: ConsumableFacts | undefined) {
  const { driver } = line;
  // A line that takes the chosen shades takes paste.
  const usual = facts
    ? usuallySharesDose(facts.category) && !isWholeUnit(facts.stockUnit)
    : !line.consumableId;
  return {
    sharesDose: line.sharesDose ?? (usual && !isVisitDriver(driver)),
    anaesthetic: line.anaesthetic ?? (facts ? isUsuallyAnaesthetic(facts.category) : false),
  };
}

/** What a stored version says. */
export async function storedContent(
  tx: Tx,
  templateId: string,
  version: number,
): Promise<{ version: TemplateVersionEntity; content: VersionContent } | null> {
  const row = await tx.manager.findOneBy(TemplateVersionEntity, { templateId, version });
  if (!row) return null;
  const lines = await tx.manager.find(TemplateLineEntity, {
    where: { templateId, version },
    order: { lineNumber: 'ASC' },
  });
  const content: VersionContent = {
    minutes: row.minutes,
    assistantMinutes: row.assistantMinutes,
    layerThicknessMm: plain(row.layerThicknessMm),
    note: row.note,
    lines: lines.map((line) => ({
      lineNumber: line.lineNumber,
      consumableId: line.consumableId,
      driver: line.driver,
      placed: plain(line.placed),
      dispensed: plain(line.dispensed),
      everyAttempt: line.everyAttempt,
      reasons: line.reasons,
      sharesDose: line.sharesDose,
      anaesthetic: line.anaesthetic,
    })),
  };
  return { version: row, content };
}

export function sameContent(a: VersionContent, b: VersionContent): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function refuseProblems(
  content: VersionContent,
  unitOf: (consumableId: string) => string | undefined,
): void {
  const problems = lineProblems(content.lines, unitOf);
  const [first] = problems;
  if (!first) return;
  const detail = `${first.field} ${first.message}.`;
  throw refuseProcedure('template_does_not_fit', detail, problems);
}

/** Writes a version with its lines; it can never be changed. */
export async function writeVersion(
  tx: Tx,
  actor: Actor,
  key: { readonly templateId: string; readonly version: number },
  content: VersionContent,
): Promise<void> {
  const { lines, ...version } = content;
  const { practiceId } = actor;
  const row = { ...key, ...version, practiceId, recordedBy: actor.personId };
  await insert(tx, TemplateVersionEntity, [row]);
  await insert(
    tx,
    TemplateLineEntity,
    lines.map((line) => ({ ...key, ...line, id: newId(), practiceId })),
  );
}

async function insert<E extends object>(
  tx: Tx,
  entity: new () => E,
  rows: Partial<E>[],
): Promise<void> {
  const query = tx.manager.createQueryBuilder().insert().into(entity);
  await query
    .values(rows as Parameters<typeof query.values>[0])
    .updateEntity(false)
    .execute();
}

function plain(decimal: string): string {
  return formatQuantity(quantity(decimal));
}
