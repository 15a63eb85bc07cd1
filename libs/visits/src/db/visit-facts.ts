import {
  type Money,
  money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantity,
} from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import type { EarlierRestoration } from '../domain/check-redo.js';

export interface ConsumableFacts {
  readonly id: string;
  readonly name: string;
  readonly shade: string | null;
  readonly category: string;
  readonly stock_unit: string;
  readonly active: boolean;
  readonly life_after_opening: number | null;
  readonly life_after_opening_unit: 'day' | 'month' | null;
  /** Cost per stock unit of the latest delivery that cost something, else the list price. */
  readonly unitCost: Money | null;
  /** Content of a single dose, where that is how it is bought. */
  readonly dose: Quantity | null;
}

export interface ScannedLotFacts {
  readonly id: string;
  readonly consumable_id: string;
  readonly lot_number: string | null;
  readonly status: string;
  readonly expires_on: IsoDate | null;
  readonly received_on: IsoDate | null;
}

export interface VisitFacts {
  readonly location: {
    readonly id: string;
    readonly name: string;
    readonly active: boolean;
  } | null;
  readonly dentist: {
    readonly id: string;
    readonly display_name: string;
    readonly role: string;
    readonly active: boolean;
  } | null;
  readonly consumables: ReadonlyMap<string, ConsumableFacts>;
  readonly lots: ReadonlyMap<string, ScannedLotFacts>;
  /** Restorations that are said to be done again. */
  readonly earlier: ReadonlyMap<string, EarlierRestoration>;
}

interface ConsumableRow extends Omit<ConsumableFacts, 'unitCost' | 'dose'> {
  readonly paid: string | null;
  readonly paid_for: string | null;
  readonly dose: string | null;
}

// Decimals leave as text: a JSON number would lose digits.
const FACTS = `
SELECT
  (SELECT json_build_object('id', id, 'name', name, 'active', active)
     FROM locations WHERE id = $1) AS location,
  (SELECT json_build_object('id', id, 'display_name', display_name, 'role', role, 'active', active)
     FROM people WHERE id = $2) AS dentist,
  (SELECT coalesce(json_agg(json_build_object(
       'id', c.id, 'name', c.name, 'shade', c.shade, 'category', c.category,
       'stock_unit', c.stock_unit, 'active', c.active, 'life_after_opening', c.life_after_opening,
       'life_after_opening_unit', c.life_after_opening_unit,
       'paid', coalesce(paid.landed_cost, list.list_price)::text,
       'paid_for', coalesce(paid.received, list.content)::text,
       'dose', CASE coalesce(last.dispensing, list.dispensing) WHEN 'single-dose'
               THEN coalesce(last.content_per_container, list.content_per_container)::text END)), '[]')
     FROM consumables c
     LEFT JOIN LATERAL (
       SELECT l.landed_cost, l.received FROM layers l JOIN deliveries d ON d.id = l.delivery_id
       WHERE l.practice_id = current_practice() AND l.consumable_id = c.id AND l.landed_cost > 0
         AND d.reversed_at IS NULL AND NOT l.undone
       ORDER BY l.received_on DESC, l.id DESC LIMIT 1) paid ON true
     LEFT JOIN LATERAL (
       SELECT l.dispensing, l.content_per_container FROM layers l
       JOIN deliveries d ON d.id = l.delivery_id
       WHERE l.practice_id = current_practice() AND l.consumable_id = c.id AND d.reversed_at IS NULL
         AND NOT l.undone
       ORDER BY l.received_on DESC, l.id DESC LIMIT 1) last ON true
     LEFT JOIN LATERAL (
       SELECT p.list_price, p.containers_per_pack * p.content_per_container AS content,
              p.dispensing, p.content_per_container
       FROM presentations p WHERE p.practice_id = current_practice() AND p.consumable_id = c.id
       ORDER BY p.active DESC, p.list_price IS NULL, p.id LIMIT 1) list ON true
     WHERE c.id = ANY($3::uuid[])) AS consumables,
  (SELECT coalesce(json_agg(json_build_object(
       'id', t.id, 'consumable_id', t.consumable_id, 'lot_number', t.lot_number,
       'status', t.status, 'expires_on', t.expires_on,
       'received_on', (SELECT min(l.received_on) FROM layers l
         JOIN deliveries d ON d.id = l.delivery_id
         WHERE l.lot_id = t.id AND d.reversed_at IS NULL))), '[]')
     FROM lots t WHERE t.id = ANY($4::uuid[])) AS lots,
  (SELECT coalesce(json_agg(json_build_object(
       'id', r.id, 'visit_id', v.id, 'visited_on', v.visited_on,
       'chart_reference', v.chart_reference, 'tooth', r.tooth,
       'reversed', v.reversed_at IS NOT NULL)), '[]')
     FROM restorations r JOIN visits v ON v.id = r.visit_id
     WHERE r.id = ANY($5::uuid[])) AS earlier`;

interface FactsRow {
  location: VisitFacts['location'];
  dentist: VisitFacts['dentist'];
  consumables: ConsumableRow[];
  lots: ScannedLotFacts[];
  earlier: EarlierRestoration[];
}

interface FactsQuery {
  readonly locationId: string | null;
  readonly dentistId: string | null;
  readonly consumableIds: readonly string[];
  readonly lotIds: readonly string[];
  readonly redoOf?: readonly string[];
}

/** All that planning a visit has to know beside its templates, in one round trip. */
export async function loadFacts(tx: Tx, query: FactsQuery): Promise<VisitFacts> {
  const [row] = await tx.named<FactsRow>('visit-facts', FACTS, [
    query.locationId,
    query.dentistId,
    query.consumableIds,
    query.lotIds,
    query.redoOf ?? [],
  ]);
  if (!row) throw new Error('The facts of a visit came back empty');
  return {
    location: row.location,
    dentist: row.dentist,
    consumables: new Map(row.consumables.map((c) => [c.id, toConsumable(c)])),
    lots: new Map(row.lots.map((lot) => [lot.id, lot])),
    earlier: new Map(row.earlier.map((each) => [each.id, each])),
  };
}

function toConsumable({ paid, paid_for, dose, ...rest }: ConsumableRow): ConsumableFacts {
  const known = paid !== null && paid_for !== null;
  return {
    ...rest,
    unitCost: known ? unitCostOf(money(paid), quantity(paid_for)) : null,
    dose: dose === null ? null : quantity(dose),
  };
}

function unitCostOf(paid: Money, received: Quantity): Money {
  return moneyFromMicro(multiplyRatio(paid, 1_000_000n, received, 'half-up'));
}
