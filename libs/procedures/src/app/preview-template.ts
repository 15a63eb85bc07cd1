import { Injectable } from '@nestjs/common';
import { type ConsumableFacts, findNamed, loadConsumables } from '#lib/catalogue';
import { formatTooth, type ToothNotation } from '#lib/dentition';
import { formatQuantity, isWholeUnit, type StockUnit } from '#lib/measure';
import { type Actor, type Tx, UnitOfWork, unknownReference } from '#lib/platform';
import { loadTemplates } from '../db/load-templates.js';
import { ProcedureTemplateEntity } from '../db/procedure-template.entity.js';
import { expandUsage } from '../domain/expand-usage.js';
import type { RestorationInput } from '../domain/read-restoration.js';
import type { Driver, PlannedLine, PlannedRestoration } from '../domain/template.js';
import { readRestorations } from './read-restorations.js';

export interface PreviewQuestion {
  /** The latest when left out. */
  readonly version?: number | null;
  readonly restorations: readonly Omit<RestorationInput, 'templateId' | 'templateVersion'>[];
  /** Two when left out: who treats and who assists. */
  readonly staffCount?: number | null;
  /** The practice's own when left out. */
  readonly toothNotation?: ToothNotation | null;
}

export interface PreviewLine {
  readonly key: string;
  readonly restoration: number | null;
  readonly tooth: string | null;
  readonly attempt: number;
  readonly consumableId: string;
  readonly consumableName: string;
  readonly shade: string | null;
  readonly stockUnit: StockUnit;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
}

export interface Preview {
  readonly templateId: string;
  readonly version: number;
  /** Chair time of all restorations. */
  readonly minutes: number;
  readonly lines: readonly PreviewLine[];
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
      const consumables = await consumablesOf(tx, restorations);
      const lines = expandUsage({
        restorations,
        staffCount: question.staffCount ?? 2,
        isWhole: (id) => isWholeUnit(factsOf(consumables, id).stockUnit),
      });
      return {
        templateId,
        version: template.version,
        minutes: restorations.reduce((sum, each) => sum + each.minutes, 0),
        lines: lines.map((line) => lineView(line, notation, consumables)),
      };
    });
  }
}

type Consumables = ReadonlyMap<string, ConsumableFacts>;

async function consumablesOf(
  tx: Tx,
  restorations: readonly PlannedRestoration[],
): Promise<Consumables> {
  const named = restorations.flatMap(({ shades, template }) => [
    ...shades,
    ...template.lines.flatMap((line) => line.consumableId ?? []),
  ]);
  const consumables = await loadConsumables(tx, named);
  restorations.forEach(({ shades }, i) => {
    shades.forEach((id, n) => {
      if (consumables.has(id)) return;
      throw unknownReference(`restorations[${i}].shades[${n}]`, 'consumable');
    });
  });
  return consumables;
}

function factsOf(consumables: Consumables, id: string): ConsumableFacts {
  const facts = consumables.get(id);
  if (!facts) throw new Error(`Consumable ${id} of a planned line was not loaded`);
  return facts;
}

function lineView(
  line: PlannedLine,
  notation: ToothNotation,
  consumables: Consumables,
): PreviewLine {
  const { name, shade, stockUnit } = factsOf(consumables, line.consumableId);
  return {
    key: line.key,
    restoration: line.restoration,
    tooth: line.tooth === null ? null : formatTooth(line.tooth, notation),
    attempt: line.attempt,
    consumableId: line.consumableId,
    consumableName: name,
    shade,
    stockUnit,
    driver: line.driver,
    placed: formatQuantity(line.placed),
    dispensed: formatQuantity(line.dispensed),
  };
}
