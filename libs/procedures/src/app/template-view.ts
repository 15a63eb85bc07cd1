import { type ConsumableFacts, loadConsumables } from '#lib/catalogue';
import type { StockUnit } from '#lib/measure';
import { refuse, type Tx } from '#lib/platform';
import type { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { type LineContent, storedContent, type VersionContent } from './template-input.js';

export interface TemplateSummary {
  readonly id: string;
  readonly name: string;
  readonly active: boolean;
  readonly latestVersion: number;
}

export interface TemplateLineView extends LineContent {
  /** Null for the chosen shades. */
  readonly consumableName: string | null;
  readonly stockUnit: StockUnit | null;
}

export interface TemplateView extends TemplateSummary, Omit<VersionContent, 'lines'> {
  readonly version: number;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly lines: readonly TemplateLineView[];
}

export function summaryOf(row: ProcedureTemplateEntity): TemplateSummary {
  const { practiceId: _, ...summary } = row;
  return summary;
}

/** A template as one of its versions describes it. */
export async function templateView(
  tx: Tx,
  template: ProcedureTemplateEntity,
  version: number,
): Promise<TemplateView> {
  const stored = await storedContent(tx, template.id, version);
  if (!stored) {
    throw refuse('not_found', 'This procedure template has no such version.', [
      { field: 'version', message: 'is not a version of this template' },
    ]);
  }
  const { lines, ...content } = stored.content;
  const named = lines.flatMap((line) => line.consumableId ?? []);
  const consumables = await loadConsumables(tx, named);
  return {
    ...summaryOf(template),
    ...content,
    version,
    recordedBy: stored.version.recordedBy,
    recordedAt: stored.version.recordedAt.toISOString(),
    lines: lines.map((line) => lineView(line, consumables)),
  };
}

function lineView(
  line: LineContent,
  consumables: ReadonlyMap<string, ConsumableFacts>,
): TemplateLineView {
  const facts = line.consumableId === null ? undefined : consumables.get(line.consumableId);
  return {
    ...line,
    consumableName: facts?.name ?? null,
    stockUnit: facts?.stockUnit ?? null,
  };
}
