import { type IsoTooth, parseIsoTooth, parseSurfaces, type Reason } from '#lib/dentition';
import { money, quantity } from '#lib/measure';
import type { PlannedRestoration, TemplateLine } from '#lib/procedures';
import type { PricedConsumable } from './way-material.js';

export const CONSUMABLES: Readonly<Record<string, PricedConsumable>> = {
  bib: { stock_unit: 'piece', unitCost: money('0.045'), dose: null },
  glove: { stock_unit: 'piece', unitCost: money('0.09'), dose: null },
  dam: { stock_unit: 'piece', unitCost: money('0.5'), dose: null },
  gel: { stock_unit: 'mL', unitCost: money('4.166667'), dose: null },
  paste: { stock_unit: 'g', unitCost: money('18'), dose: null },
  enamel: { stock_unit: 'g', unitCost: money('21.3'), dose: null },
  capsule: { stock_unit: 'g', unitCost: money('22'), dose: quantity('0.25') },
  unknown: { stock_unit: 'g', unitCost: null, dose: null },
};

export function consumableOf(id: string): PricedConsumable {
  const found = CONSUMABLES[id];
  if (!found) throw new Error(`${id} is not one of the tests`);
  return found;
}

export function templateLine(
  consumableId: string | null,
  driver: TemplateLine['driver'],
  dispensed: string,
): Omit<TemplateLine, 'lineNumber'> {
  const amount = quantity(dispensed);
  const usual = { placed: amount, everyAttempt: false, reasons: null };
  const flags = { sharesDose: false, anaesthetic: false };
  return { consumableId, driver, dispensed: amount, ...usual, ...flags };
}

function toothOf(number: number): IsoTooth {
  const tooth = parseIsoTooth(number);
  if (tooth === undefined) throw new Error(`${number} is no tooth`);
  return tooth;
}

export function restorationOn(
  on: readonly [tooth: number, surfaces: string],
  reason: Reason,
  lines: readonly Omit<TemplateLine, 'lineNumber'>[],
  more: Partial<PlannedRestoration> = {},
): PlannedRestoration {
  const tooth = toothOf(on[0]);
  const read = parseSurfaces(tooth, on[1]);
  if (!read.ok) throw new Error(`${on[1]} cannot be on ${on[0]}`);
  return {
    tooth,
    surfaces: read.surfaces,
    reason,
    template: {
      templateId: 't',
      version: 1,
      name: 'Filling',
      minutes: 40,
      assistantMinutes: 40,
      layerThicknessMm: quantity('2'),
      active: true,
      lines: lines.map((line, i) => ({ ...line, lineNumber: i + 1 })),
    },
    shades: [],
    attempts: 1,
    cycles: 1,
    volumeMm3: quantity('12'),
    volumeSource: 'planning value',
    lengthMm: null,
    widthMm: null,
    depthMm: quantity('2'),
    minutes: 40,
    assistantMinutes: 40,
    ...more,
  };
}
