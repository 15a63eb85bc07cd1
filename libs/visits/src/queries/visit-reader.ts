import { Injectable } from '@nestjs/common';
import { formatTooth, type IsoTooth } from '#lib/dentition';
import { formatMoney, formatQuantity, layersForDepth, money, quantity } from '#lib/measure';
import { type Actor, refuse, type Tx } from '#lib/platform';
import { sharedDose } from '../domain/share-dose.js';
import type {
  SharedDoseDto,
  UsageLineDto,
  VisitDto,
  VisitRestorationDto,
} from '../http/visit-outputs.dto.js';

interface VisitRow {
  id: string;
  chart_reference: string;
  visited_on: string;
  dentist: { id: string; name: string };
  location: { id: string; name: string };
  staff_count: number;
  cost_share_key: string;
  without_anaesthetic: boolean;
  material_cost: string;
  retake_cost: string;
  estimated: boolean;
  recorded_at: Date;
  recorded_by: string;
  reversed_at: Date | null;
  reversed_by: string | null;
  reversal_note: string | null;
  restorations: RestorationRow[];
  usage: UsageRow[];
}

interface RestorationRow extends Omit<VisitRestorationDto, 'tooth' | 'cost' | 'layers'> {
  tooth: IsoTooth;
  layer_thickness: string;
  own_cost: string;
  shared_cost: string;
  retake_cost: string;
}

interface UsageRow extends Omit<UsageLineDto, 'tooth' | 'line' | 'sharedDose'> {
  tooth: IsoTooth | null;
  shares_dose: boolean;
}

const OTHER = `json_build_object('restorationId', o.id, 'visitId', ov.id, 'visitedOn', ov.visited_on)`;

// Decimals leave as text: a JSON number would lose digits.
const VISIT = `
SELECT v.id, v.chart_reference, v.visited_on::text,
  json_build_object('id', d.id, 'name', d.display_name) AS dentist,
  json_build_object('id', l.id, 'name', l.name) AS location,
  v.staff_count, v.cost_share_key, v.without_anaesthetic, v.material_cost, v.retake_cost, v.estimated, v.recorded_at,
  by.display_name AS recorded_by, v.reversed_at, rev.display_name AS reversed_by, v.reversal_note,
  (SELECT json_agg(json_build_object('id', r.id, 'tooth', r.tooth, 'surfaces', r.surfaces,
     'cavityClass', r.cavity_class, 'reason', r.reason,
     'template', json_build_object('id', t.id, 'name', t.name),
     'templateVersion', r.template_version, 'shades', r.shades, 'attempts', r.attempts,
     'cycles', r.cycles, 'volumeMm3', r.volume_mm3::text, 'depthMm', r.depth_mm::text,
     'volumeSource', r.volume_source, 'lengthMm', r.length_mm::text, 'widthMm', r.width_mm::text,
     'layer_thickness', w.layer_thickness_mm::text, 'minutes', r.minutes,
     'assistantMinutes', r.assistant_minutes,
     'redoOf', (SELECT ${OTHER} FROM restorations o JOIN visits ov ON ov.id = o.visit_id
        WHERE o.id = r.redo_of),
     'redoneBy', (SELECT coalesce(json_agg(${OTHER} ORDER BY ov.visited_on, o.id), '[]')
        FROM restorations o JOIN visits ov ON ov.id = o.visit_id
        WHERE o.redo_of = r.id AND ov.reversed_at IS NULL),
     'own_cost', r.own_cost::text, 'shared_cost', r.shared_cost::text,
     'retake_cost', r.retake_cost::text) ORDER BY r.position)
   FROM restorations r JOIN procedure_templates t ON t.id = r.template_id
   JOIN template_versions w ON w.template_id = r.template_id AND w.version = r.template_version
   WHERE r.visit_id = v.id) AS restorations,
  (SELECT coalesce(json_agg(json_build_object('id', u.id, 'restoration', own.position - 1,
     'tooth', u.tooth, 'attempt', u.attempt,
     'consumable', json_build_object('id', c.id, 'name', c.name, 'shade', c.shade,
       'category', c.category, 'unit', c.stock_unit),
     'driver', u.driver, 'planned', u.planned::text, 'placed', u.placed::text,
     'dispensed', u.dispensed::text, 'shares_dose', u.shares_dose, 'charged', u.charged::text, 'cost', u.cost::text,
     'shortfall', coalesce((SELECT sum(s.quantity - s.settled) FROM shortfalls s
        WHERE s.usage_line_id = u.id AND s.cancelled_at IS NULL), 0)::text,
     'taken', coalesce(m.taken, '[]')) ORDER BY u.position), '[]')
   FROM usage_lines u
   JOIN consumables c ON c.id = u.consumable_id
   LEFT JOIN restorations own ON own.id = u.restoration_id
   LEFT JOIN LATERAL (
     SELECT json_agg(json_build_object('movementId', m.id, 'layerId', m.layer_id, 'lotId', y.lot_id,
       'lotNumber', t.lot_number, 'quantity', m.quantity::text, 'cost', m.cost::text,
       'sureness', m.sureness, 'outOfOrder', m.out_of_order) ORDER BY m.sequence) AS taken
     FROM movements m JOIN layers y ON y.id = m.layer_id JOIN lots t ON t.id = y.lot_id
     WHERE m.usage_line_id = u.id AND m.to_account = 'visit') m ON true
   WHERE u.visit_id = v.id) AS usage
FROM visits v
JOIN people d ON d.id = v.dentist_id
JOIN locations l ON l.id = v.location_id
JOIN people by ON by.id = v.recorded_by
LEFT JOIN people rev ON rev.id = v.reversed_by
WHERE v.id = $1`;

/** Reads one visit as it was answered when it was posted, with what was settled since. */
@Injectable()
export class VisitReader {
  async get(tx: Tx, actor: Actor, id: string): Promise<VisitDto> {
    const [row] = await tx.query<VisitRow>(VISIT, [id]);
    if (!row) throw refuse('not_found', 'There is no visit with this id.');
    const notation = actor.toothNotation;
    return {
      id: row.id,
      chartReference: row.chart_reference,
      visitedOn: row.visited_on,
      dentist: row.dentist,
      location: row.location,
      staffCount: row.staff_count,
      costShareKey: row.cost_share_key,
      withoutAnaesthetic: row.without_anaesthetic,
      toothNotation: notation,
      currency: actor.currency,
      materialCost: shortMoney(row.material_cost),
      retakeCost: shortMoney(row.retake_cost),
      estimated: row.estimated,
      recordedAt: row.recorded_at.toISOString(),
      recordedBy: row.recorded_by,
      reversal: reversalOf(row),
      restorations: row.restorations.map((r) => restorationOf(r, notation)),
      usage: row.usage.map((line) => usageOf(line, row.usage, notation)),
    };
  }
}

function reversalOf(row: VisitRow): VisitDto['reversal'] {
  if (row.reversed_at === null) return null;
  return {
    reversedAt: row.reversed_at.toISOString(),
    reversedBy: row.reversed_by ?? '',
    note: row.reversal_note ?? '',
  };
}

function restorationOf(row: RestorationRow, notation: 'iso' | 'universal'): VisitRestorationDto {
  const { own_cost, shared_cost, retake_cost, tooth, layer_thickness, ...rest } = row;
  return {
    ...rest,
    tooth: formatTooth(tooth, notation),
    volumeMm3: shortQuantity(row.volumeMm3),
    lengthMm: row.lengthMm === null ? null : shortQuantity(row.lengthMm),
    widthMm: row.widthMm === null ? null : shortQuantity(row.widthMm),
    depthMm: shortQuantity(row.depthMm),
    layers: layersForDepth(quantity(row.depthMm), quantity(layer_thickness)),
    cost: {
      own: shortMoney(own_cost),
      shared: shortMoney(shared_cost),
      retake: shortMoney(retake_cost),
      total: formatMoney((money(own_cost) + money(shared_cost)) as ReturnType<typeof money>),
    },
  };
}

function usageOf(
  row: UsageRow,
  usage: readonly UsageRow[],
  notation: 'iso' | 'universal',
): UsageLineDto {
  const { shares_dose, ...rest } = row;
  return {
    ...rest,
    sharedDose: shares_dose ? sharedDoseOf(row.consumable.id, usage) : null,
    line: null,
    tooth: row.tooth === null ? null : formatTooth(row.tooth, notation),
    planned: shortQuantity(row.planned),
    placed: shortQuantity(row.placed),
    dispensed: shortQuantity(row.dispensed),
    charged: shortQuantity(row.charged),
    cost: shortMoney(row.cost),
    shortfall: shortQuantity(row.shortfall),
    taken: row.taken.map((taken) => ({
      ...taken,
      quantity: shortQuantity(taken.quantity),
      cost: shortMoney(taken.cost),
    })),
  };
}

function sharedDoseOf(consumableId: string, usage: readonly UsageRow[]): SharedDoseDto | null {
  return sharedDose(
    usage
      .filter((line) => line.shares_dose && line.consumable.id === consumableId)
      .map((line) => ({ dispensed: quantity(line.dispensed), charged: quantity(line.charged) })),
  );
}

function shortMoney(text: string): string {
  return formatMoney(money(text));
}

function shortQuantity(text: string): string {
  return formatQuantity(quantity(text));
}
