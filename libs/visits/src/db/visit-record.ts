import { formatMoney, formatQuantity, type Money, type Quantity } from '#lib/measure';
import type { CostShareKey, IsoDate, Tx } from '#lib/platform';
import type { VisitCost } from '../domain/attribute-cost.js';

export interface NewRestoration {
  readonly id: string;
  readonly tooth: number;
  readonly surfaces: string;
  readonly cavityClass: string | null;
  readonly reason: string;
  readonly templateId: string;
  readonly templateVersion: number;
  readonly shades: readonly string[];
  readonly attempts: number;
  readonly cycles: number;
  readonly volumeMm3: Quantity;
  readonly volumeSource: string;
  readonly lengthMm: Quantity | null;
  readonly widthMm: Quantity | null;
  readonly depthMm: Quantity;
  readonly minutes: number;
  readonly assistantMinutes: number;
  readonly redoOf: string | null;
}

export interface NewUsageLine {
  readonly id: string;
  readonly restoration: number | null;
  readonly tooth: number | null;
  readonly attempt: number;
  readonly consumableId: string;
  readonly driver: string | null;
  readonly planned: Quantity;
  readonly placed: Quantity;
  readonly dispensed: Quantity;
  readonly sharesDose: boolean;
  readonly charged: Quantity;
  readonly cost: Money;
}

export interface NewShortfall {
  readonly id: string;
  readonly usageLineId: string;
  readonly consumableId: string;
  readonly lotId: string | null;
  readonly quantity: Quantity;
  readonly unitCost: Money;
  readonly costKnown: boolean;
}

export interface NewVisit {
  readonly id: string;
  readonly chartReference: string;
  readonly visitedOn: IsoDate;
  readonly dentistId: string;
  readonly locationId: string;
  readonly staffCount: number;
  readonly costShareKey: CostShareKey;
  readonly withoutAnaesthetic: boolean;
  readonly recordedAt: Date;
  readonly bookedVisitId: string | null;
  readonly restorations: readonly NewRestoration[];
  readonly lines: readonly NewUsageLine[];
  readonly shortfalls: readonly NewShortfall[];
  readonly cost: VisitCost;
}

const INSERT = `
WITH visit AS (
  INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id, location_id,
    staff_count, cost_share_key, without_anaesthetic, material_cost, retake_cost, estimated,
    recorded_by, recorded_at, booked_visit_id)
  SELECT v.id, $2, v.chart_reference, v.visited_on, v.dentist_id, v.location_id,
    v.staff_count, v.cost_share_key, v.without_anaesthetic, v.material_cost, v.retake_cost,
    v.estimated, $1, v.recorded_at, v.booked_visit_id
  FROM json_to_record($3::json) AS v(id uuid, chart_reference text, visited_on date,
    dentist_id uuid, location_id uuid, staff_count smallint, cost_share_key text,
    without_anaesthetic boolean, material_cost numeric, retake_cost numeric, estimated boolean, recorded_at timestamptz,
    booked_visit_id uuid)
  RETURNING id, booked_visit_id
), kept AS (
  UPDATE booked_visits b SET kept = b.kept + 1,
    state = CASE WHEN b.kept + 1 = b.alike THEN 'kept' ELSE b.state END
  FROM visit v WHERE b.id = v.booked_visit_id AND b.state = 'booked'
  RETURNING b.id
), new_restorations AS (
  INSERT INTO restorations (id, practice_id, visit_id, position, tooth, surfaces, cavity_class,
    reason, template_id, template_version, shades, attempts, cycles, volume_mm3, volume_source,
    length_mm, width_mm, depth_mm, minutes, assistant_minutes, redo_of, own_cost, shared_cost,
    retake_cost)
  SELECT r.id, $2, v.id, r.position, r.tooth, r.surfaces, r.cavity_class, r.reason,
    r.template_id, r.template_version, r.shades, r.attempts, r.cycles, r.volume_mm3,
    r.volume_source, r.length_mm, r.width_mm, r.depth_mm, r.minutes, r.assistant_minutes, r.redo_of,
    r.own_cost, r.shared_cost, r.retake_cost
  FROM visit v, json_to_recordset($4::json) AS r(id uuid, position integer,
    tooth smallint, surfaces text, cavity_class text, reason text, template_id uuid,
    template_version integer, shades uuid[], attempts smallint, cycles smallint, volume_mm3 numeric,
    volume_source text, length_mm numeric, width_mm numeric, depth_mm numeric, minutes integer,
    assistant_minutes integer, redo_of uuid, own_cost numeric, shared_cost numeric, retake_cost numeric)
), new_costs AS (
  INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
  SELECT $2, r.restoration_id, r.category, r.cost
  FROM json_to_recordset($5::json) AS r(restoration_id uuid, category text,
    cost numeric)
), new_lines AS (
  INSERT INTO usage_lines (id, practice_id, visit_id, position, restoration_id, tooth, attempt,
    consumable_id, driver, planned, placed, dispensed, shares_dose, charged, cost)
  SELECT r.id, $2, v.id, r.position, r.restoration_id, r.tooth, r.attempt,
    r.consumable_id, r.driver, r.planned, r.placed, r.dispensed, r.shares_dose, r.charged, r.cost
  FROM visit v, json_to_recordset($6::json) AS r(id uuid, position integer,
    restoration_id uuid, tooth smallint, attempt smallint, consumable_id uuid, driver text,
    planned numeric, placed numeric, dispensed numeric, shares_dose boolean, charged numeric, cost numeric)
)
, new_shortfalls AS (
  INSERT INTO shortfalls (id, practice_id, usage_line_id, visit_id, consumable_id, location_id,
    lot_id, used_on, quantity, unit_cost, cost_known)
  SELECT r.id, $2, r.usage_line_id, v.id, r.consumable_id, r.location_id, r.lot_id,
    r.used_on, r.quantity, r.unit_cost, r.cost_known
  FROM visit v, json_to_recordset($7::json) AS r(id uuid, usage_line_id uuid,
    consumable_id uuid, location_id uuid, lot_id uuid, used_on date, quantity numeric,
    unit_cost numeric, cost_known boolean)
)
SELECT id FROM kept`;

/**
 * Writes a visit with its restorations, lines and shortfalls in one round trip, and marks the booking
 * that it keeps. Answers whether that booking was still to be kept; true where there is none.
 */
export async function insertVisit(tx: Tx, personId: string, visit: NewVisit): Promise<boolean> {
  const row = {
    id: visit.id,
    chart_reference: visit.chartReference,
    visited_on: visit.visitedOn,
    dentist_id: visit.dentistId,
    location_id: visit.locationId,
    staff_count: visit.staffCount,
    cost_share_key: visit.costShareKey,
    without_anaesthetic: visit.withoutAnaesthetic,
    material_cost: formatMoney(visit.cost.total),
    retake_cost: formatMoney(visit.cost.retake),
    estimated: visit.shortfalls.length > 0,
    recorded_at: visit.recordedAt,
    booked_visit_id: visit.bookedVisitId,
  };
  const lists = [
    visit.restorations.map((r, i) => restorationRow(r, i, visit.cost)),
    visit.restorations.flatMap((r, i) => costRows(r.id, visit.cost.restorations[i])),
    visit.lines.map((line, i) => lineRow(line, i, visit.restorations)),
    visit.shortfalls.map((s) => shortfallRow(s, visit)),
  ];
  const kept = await tx.named('visit-insert', INSERT, [
    personId,
    tx.practiceId,
    JSON.stringify(row),
    ...lists.map((list) => JSON.stringify(list)),
  ]);
  return visit.bookedVisitId === null || kept.length === 1;
}

function restorationRow(r: NewRestoration, index: number, cost: VisitCost): object {
  return {
    id: r.id,
    position: index + 1,
    tooth: r.tooth,
    surfaces: r.surfaces,
    cavity_class: r.cavityClass,
    reason: r.reason,
    template_id: r.templateId,
    template_version: r.templateVersion,
    shades: r.shades,
    attempts: r.attempts,
    cycles: r.cycles,
    volume_mm3: formatQuantity(r.volumeMm3),
    volume_source: r.volumeSource,
    length_mm: r.lengthMm === null ? null : formatQuantity(r.lengthMm),
    width_mm: r.widthMm === null ? null : formatQuantity(r.widthMm),
    depth_mm: formatQuantity(r.depthMm),
    minutes: r.minutes,
    assistant_minutes: r.assistantMinutes,
    redo_of: r.redoOf,
    ...costColumns(cost.restorations[index]),
  };
}

type OneCost = VisitCost['restorations'][number] | undefined;

export function costColumns(cost: OneCost): object {
  if (!cost) throw new Error('A restoration has no cost');
  return {
    own_cost: formatMoney(cost.own),
    shared_cost: formatMoney(cost.shared),
    retake_cost: formatMoney(cost.retake),
  };
}

export function costRows(restorationId: string, cost: OneCost): object[] {
  return [...(cost?.byCategory ?? [])].map(([category, amount]) => ({
    restoration_id: restorationId,
    category,
    cost: formatMoney(amount),
  }));
}

function lineRow(
  line: NewUsageLine,
  index: number,
  restorations: readonly NewRestoration[],
): object {
  return {
    id: line.id,
    position: index + 1,
    restoration_id: line.restoration === null ? null : restorations[line.restoration]?.id,
    tooth: line.tooth,
    attempt: line.attempt,
    consumable_id: line.consumableId,
    driver: line.driver,
    planned: formatQuantity(line.planned),
    placed: formatQuantity(line.placed),
    dispensed: formatQuantity(line.dispensed),
    shares_dose: line.sharesDose,
    charged: formatQuantity(line.charged),
    cost: formatMoney(line.cost),
  };
}

function shortfallRow(s: NewShortfall, visit: NewVisit): object {
  return {
    id: s.id,
    usage_line_id: s.usageLineId,
    consumable_id: s.consumableId,
    location_id: visit.locationId,
    lot_id: s.lotId,
    used_on: visit.visitedOn,
    quantity: formatQuantity(s.quantity),
    unit_cost: formatMoney(s.unitCost),
    cost_known: s.costKnown,
  };
}
