import { type ConsumableFacts, loadConsumables } from '#lib/catalogue';
import { formatTooth, type ToothNotation } from '#lib/dentition';
import { formatQuantity, isWholeUnit, type StockUnit } from '#lib/measure';
import { type Tx, unknownReference } from '#lib/platform';
import { expandUsage } from '../domain/expand-usage.js';
import type { Driver, PlannedLine, PlannedRestoration } from '../domain/template.js';

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
  readonly sharesDose: boolean;
}

export interface ShownUsage {
  /** Chair time of all restorations. */
  readonly minutes: number;
  readonly assistantMinutes: number;
  readonly lines: readonly PreviewLine[];
}

interface Chair {
  readonly notation: ToothNotation;
  /** Two when left out: who treats and who assists. */
  readonly staffCount: number | null | undefined;
  readonly withoutAnaesthetic: boolean | null | undefined;
}

/** What a visit with these restorations would use, in words and units. */
export async function showUsage(
  tx: Tx,
  restorations: readonly PlannedRestoration[],
  { notation, staffCount, withoutAnaesthetic }: Chair,
): Promise<ShownUsage> {
  const consumables = await consumablesOf(tx, restorations);
  const lines = expandUsage({
    restorations,
    staffCount: staffCount ?? 2,
    withoutAnaesthetic: withoutAnaesthetic ?? false,
    isWhole: (id) => isWholeUnit(factsOf(consumables, id).stockUnit),
  });
  return {
    minutes: restorations.reduce((sum, each) => sum + each.minutes, 0),
    assistantMinutes: restorations.reduce((sum, each) => sum + each.assistantMinutes, 0),
    lines: lines.map((line) => lineView(line, notation, consumables)),
  };
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
    sharesDose: line.sharesDose,
  };
}
