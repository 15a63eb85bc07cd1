import { isWholeUnit, quantity } from '#lib/measure';
import { expandUsage, readRestoration, type TemplateVersion } from '#lib/procedures';
import { consumableId, consumableWithId } from './catalogue.js';
import type { VisitPayload } from './steps.js';
import { TEMPLATES, templateId } from './templates.js';

/** Millionths of a stock unit; exact, because no number here comes near 2^53. */
export type Micro = number;

export function micro(amount: number): Micro {
  return Math.round(amount * 1_000_000);
}

/** A decimal as it travels. */
export function decimal(amount: Micro): string {
  return String(Math.round(amount) / 1_000_000);
}

export interface PlannedUse {
  /** Key of the consumable. */
  readonly consumable: string;
  readonly dispensed: Micro;
}

const VERSIONS = new Map(
  TEMPLATES.flatMap((template) =>
    template.versions.map((version, i): [string, TemplateVersion] => [
      `${templateId(template.key)}/${i + 1}`,
      {
        templateId: templateId(template.key),
        version: i + 1,
        name: template.name,
        minutes: version.minutes,
        assistantMinutes: version.minutes,
        layerThicknessMm: quantity(version.layerThicknessMm),
        active: true,
        lines: version.lines.map((line, n) => ({
          lineNumber: n + 1,
          consumableId: line.consumable === null ? null : consumableId(line.consumable),
          driver: line.driver,
          placed: quantity(line.placed),
          dispensed: quantity(line.dispensed),
          everyAttempt: line.everyAttempt,
          reasons: line.reasons,
          // Neither changes what is taken out of the containers.
          sharesDose: false,
          anaesthetic: false,
        })),
      },
    ]),
  ),
);

/** What a visit takes, by the same rules as the book's own: planned lines, then those by hand. */
export function planUsage(visit: VisitPayload): PlannedUse[] {
  const restorations = visit.restorations.map((input, i) => {
    const read = readRestoration(input, i, 'iso', (id, version) =>
      VERSIONS.get(`${id}/${version}`),
    );
    if (read.ok) return read.restoration;
    const why = read.problems.map((p) => `${p.field} ${p.message}`).join(', ');
    throw new Error(`A restoration of the demo does not fit: ${why}`);
  });
  const planned = expandUsage({
    restorations,
    staffCount: visit.staffCount,
    isWhole: (id) => isWholeUnit(consumableWithId(id).unit),
  });
  return [
    ...planned.map((line) => ({
      consumable: consumableWithId(line.consumableId).key,
      dispensed: Number(line.dispensed),
    })),
    ...(visit.usage ?? []).map((line) => ({
      consumable: consumableWithId(line.consumableId).key,
      dispensed: micro(Number(line.dispensed)),
    })),
  ];
}
