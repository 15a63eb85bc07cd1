import { formatSurfaces, formatTooth } from '#lib/dentition';
import { formatMoney, formatQuantity, layersForDepth } from '#lib/measure';
import type { Actor } from '#lib/platform';
import type { PlannedRestoration } from '#lib/procedures';
import type { Take } from '#lib/stock';
import type { EarlierRestoration } from '../domain/check-redo.js';
import type { IssuedLine } from '../domain/issue-visit.js';
import { sharedDose } from '../domain/share-dose.js';
import type {
  OtherRestorationDto,
  SharedDoseDto,
  TakenDto,
  UsageLineDto,
  VisitPreviewDto,
  VisitRestorationDto,
} from '../http/visit-outputs.dto.js';
import { factsOf, type PlannedVisit } from './plan-visit.js';

/** The ids that a posting gave; a preview has none. */
export interface PostedIds {
  readonly restorations: readonly string[];
  readonly lines: readonly string[];
  readonly movementOf: ReadonlyMap<Take, string>;
}

/** A planned visit as it is shown, before or after it was posted. */
export function viewOf(
  planned: PlannedVisit,
  actor: Actor,
  visitedOn: string,
  ids?: PostedIds,
): VisitPreviewDto {
  const { location, cost, issued } = planned;
  return {
    visitedOn,
    location: { id: location.id, name: location.name },
    staffCount: planned.staffCount,
    costShareKey: planned.costShareKey,
    withoutAnaesthetic: planned.withoutAnaesthetic,
    toothNotation: planned.notation,
    currency: actor.currency,
    materialCost: formatMoney(cost.total),
    retakeCost: formatMoney(cost.retake),
    estimated: issued.lines.some((line) => line.missing !== null),
    restorations: planned.restorations.map((restoration, i) =>
      restorationView(restoration, planned, i, ids?.restorations[i] ?? null),
    ),
    usage: issued.lines.map((line, i) => lineView(line, planned, ids, ids?.lines[i] ?? null)),
  };
}

function restorationView(
  r: PlannedRestoration,
  planned: PlannedVisit,
  at: number,
  id: string | null,
): VisitRestorationDto {
  const cost = planned.cost.restorations[at];
  if (!cost) throw new Error('A restoration has no cost');
  return {
    id,
    tooth: formatTooth(r.tooth, planned.notation),
    surfaces: formatSurfaces(r.surfaces),
    cavityClass: r.cavityClass ?? null,
    reason: r.reason,
    template: { id: r.template.templateId, name: r.template.name },
    templateVersion: r.template.version,
    shades: [...r.shades],
    attempts: r.attempts,
    cycles: r.cycles,
    volumeMm3: formatQuantity(r.volumeMm3),
    volumeSource: r.volumeSource,
    lengthMm: r.lengthMm === null ? null : formatQuantity(r.lengthMm),
    widthMm: r.widthMm === null ? null : formatQuantity(r.widthMm),
    depthMm: formatQuantity(r.depthMm),
    layers: layersForDepth(r.depthMm, r.template.layerThicknessMm),
    minutes: r.minutes,
    assistantMinutes: r.assistantMinutes,
    redoOf: otherView(planned.redoOf[at] ?? null),
    redoneBy: [],
    cost: {
      own: formatMoney(cost.own),
      shared: formatMoney(cost.shared),
      retake: formatMoney(cost.retake),
      total: formatMoney((cost.own + cost.shared) as typeof cost.own),
    },
  };
}

function otherView(earlier: EarlierRestoration | null): OtherRestorationDto | null {
  if (!earlier) return null;
  return {
    restorationId: earlier.id,
    visitId: earlier.visit_id,
    visitedOn: earlier.visited_on,
  };
}

function sharedDoseOf(consumableId: string, { issued }: PlannedVisit): SharedDoseDto | null {
  return sharedDose(
    issued.lines
      .filter(({ draft }) => draft.sharesDose && draft.consumableId === consumableId)
      .map(({ draft, charged }) => ({ dispensed: draft.dispensed, charged })),
  );
}

function lineView(
  line: IssuedLine,
  planned: PlannedVisit,
  ids: PostedIds | undefined,
  id: string | null,
): UsageLineDto {
  const { draft } = line;
  const consumable = factsOf(planned.facts, draft.consumableId);
  return {
    id,
    line: ids ? null : draft.key,
    restoration: draft.restoration,
    tooth: draft.tooth === null ? null : formatTooth(draft.tooth, planned.notation),
    attempt: draft.attempt,
    consumable: {
      id: consumable.id,
      name: consumable.name,
      shade: consumable.shade,
      category: consumable.category,
      unit: consumable.stock_unit,
    },
    driver: draft.driver,
    planned: formatQuantity(draft.planned),
    placed: formatQuantity(draft.placed),
    dispensed: formatQuantity(draft.dispensed),
    charged: formatQuantity(line.charged),
    sharedDose: draft.sharesDose ? sharedDoseOf(draft.consumableId, planned) : null,
    cost: formatMoney(line.cost),
    shortfall: line.missing ? formatQuantity(line.missing.quantity) : '0',
    taken: line.takes.map((take) => takenView(take, ids?.movementOf.get(take) ?? null)),
  };
}

function takenView(take: Take, movementId: string | null): TakenDto {
  return {
    movementId,
    layerId: take.layerId,
    lotId: take.lotId,
    lotNumber: take.lotNumber,
    quantity: formatQuantity(take.quantity),
    cost: formatMoney(take.cost),
    sureness: take.sureness,
    outOfOrder: take.outOfOrder,
  };
}
