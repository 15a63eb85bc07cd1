import { formatTooth, parseIsoTooth } from '#lib/dentition';
import type { Actor } from '#lib/platform';
import { moneyText } from '#lib/stock';
import type { RestorationSummaryDto } from '../http/restoration.dto.js';

export const RESTORATION_FACTS = `
SELECT r.id, r.visit_id, v.visited_on, v.chart_reference, r.tooth, r.surfaces, r.cavity_class,
       r.reason, r.template_id, t.name AS template_name, r.template_version, v.dentist_id,
       p.display_name AS dentist_name, r.attempts, r.own_cost, r.shared_cost, r.retake_cost,
       r.own_cost + r.shared_cost AS cost, v.reversed_at IS NOT NULL AS reversed,
       v.cost_share_key, v.estimated, v.material_cost
FROM restorations r
JOIN visits v ON v.id = r.visit_id
JOIN procedure_templates t ON t.id = r.template_id
JOIN people p ON p.id = v.dentist_id`;

export interface RestorationRow {
  readonly id: string;
  readonly visit_id: string;
  readonly visited_on: string;
  readonly chart_reference: string;
  readonly tooth: number;
  readonly surfaces: string;
  readonly cavity_class: string | null;
  readonly reason: string;
  readonly template_id: string;
  readonly template_name: string;
  readonly template_version: number;
  readonly dentist_id: string;
  readonly dentist_name: string;
  readonly attempts: number;
  readonly own_cost: string;
  readonly shared_cost: string;
  readonly retake_cost: string;
  readonly cost: string;
  readonly reversed: boolean;
  readonly cost_share_key: 'equal' | 'minutes' | 'surfaces';
  readonly estimated: boolean;
  readonly material_cost: string;
}

export function toRestoration(row: RestorationRow, actor: Actor): RestorationSummaryDto {
  const tooth = parseIsoTooth(row.tooth);
  return {
    id: row.id,
    visitId: row.visit_id,
    visitedOn: row.visited_on,
    chartReference: row.chart_reference,
    tooth: tooth === undefined ? String(row.tooth) : formatTooth(tooth, actor.toothNotation),
    surfaces: row.surfaces,
    cavityClass: row.cavity_class,
    reason: row.reason,
    template: { id: row.template_id, name: row.template_name, version: row.template_version },
    dentist: { id: row.dentist_id, name: row.dentist_name },
    attempts: row.attempts,
    cost: moneyText(row.cost),
    ownCost: moneyText(row.own_cost),
    sharedCost: moneyText(row.shared_cost),
    retakeCost: moneyText(row.retake_cost),
    reversed: row.reversed,
  };
}
