import type { CavityClass, IsoTooth, Reason } from '#lib/dentition';
import { isWholeUnit, quantity } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import { loadTemplates } from '#lib/procedures';
import { loadOpenBookings, type StoredBooking } from '../db/booked-record.js';
import { type ConsumableFacts, loadFacts } from '../db/visit-facts.js';
import {
  type BookedPlan,
  MOST_WAYS,
  type PlanningContext,
  planBooked,
  type RecordedRestoration,
} from '../domain/booked-plan.js';
import { PlanMemory } from './plan-memory.js';

/** What is further back than this, or more visits ago, says little of the days to come. */
const LATELY_DAYS = 180;
const LATELY_VISITS = 600;

/** $1 practice, $2 today; the visits of a practice that say how it works now. */
export const LATELY = `
  SELECT id, visited_on FROM visits
  WHERE practice_id = $1 AND reversed_at IS NULL AND visited_on <= $2::date
    AND visited_on > $2::date - ${LATELY_DAYS}
  ORDER BY visited_on DESC, id DESC LIMIT ${LATELY_VISITS}`;

const RECORDED = `
WITH lately AS MATERIALIZED (${LATELY}), placed AS (
  SELECT r.*, row_number() OVER (PARTITION BY r.template_id
                                 ORDER BY v.visited_on DESC, r.id DESC) AS place
  FROM lately v JOIN restorations r ON r.visit_id = v.id
  WHERE r.template_id = ANY($3::uuid[]) AND r.redo_of IS NULL
)
SELECT template_id, tooth, surfaces, cavity_class, reason, shades, cycles, volume_mm3, depth_mm
FROM placed WHERE place <= ${MOST_WAYS} ORDER BY template_id, place`;

interface RecordedRow {
  readonly template_id: string;
  readonly tooth: IsoTooth;
  readonly surfaces: string;
  readonly cavity_class: CavityClass | null;
  readonly reason: Reason;
  readonly shades: readonly string[];
  readonly cycles: number;
  readonly volume_mm3: string;
  readonly depth_mm: string;
}

const memory = new PlanMemory();

/** A booking with what one visit of it will use, and how many of them are still to come. */
export interface PlannedBooking {
  readonly booking: StoredBooking;
  readonly toCome: number;
  readonly plan: BookedPlan;
}

export interface PlannedBookings {
  readonly bookings: readonly PlannedBooking[];
  readonly consumables: ReadonlyMap<string, ConsumableFacts>;
}

/** What the visits will use that are still to come on some days, both included. */
export async function loadPlannedBookings(
  tx: Tx,
  today: IsoDate,
  days: { readonly from: IsoDate; readonly to: IsoDate },
): Promise<PlannedBookings> {
  return planBookings(tx, today, await loadOpenBookings(tx, days.from, days.to));
}

/** What each of the bookings will use by its templates: three round trips, whatever their number. */
export async function planBookings(
  tx: Tx,
  today: IsoDate,
  bookings: readonly StoredBooking[],
): Promise<PlannedBookings> {
  if (bookings.length === 0) return { bookings: [], consumables: new Map() };
  const restorations = bookings.flatMap((each) => each.restorations);
  const templateIds = [...new Set(restorations.map((each) => each.templateId))];
  const templateOf = await loadTemplates(
    tx,
    templateIds.map((templateId) => ({ templateId })),
  );
  const recorded = await loadRecorded(tx, today, templateIds);
  const named = new Set([
    ...restorations.flatMap((each) => each.shades),
    ...[...recorded.values()].flatMap((list) => list.flatMap((each) => each.shades)),
    ...templateIds.flatMap(
      (id) => templateOf(id)?.lines.flatMap((l) => l.consumableId ?? []) ?? [],
    ),
  ]);
  const { consumables } = await loadFacts(tx, {
    ...{ locationId: null, dentistId: null, lotIds: [], consumableIds: [...named] },
  });
  const factsOf = (id: string) => {
    const facts = consumables.get(id);
    if (!facts) throw new Error(`Consumable ${id} of a booked visit was not loaded`);
    return facts;
  };
  const context: PlanningContext = {
    templateOf,
    recordedOf: (id) => recorded.get(id) ?? [],
    isWhole: (id) => isWholeUnit(factsOf(id).stock_unit),
    doseOf: (id) => factsOf(id).dose,
  };
  const planOf = memory.of({ templateOf, recorded, consumables });
  const planned = bookings.map((booking) => {
    const { restorations: booked, alike, kept } = booking;
    const plan = planOf(booked, () => planBooked(booked, context));
    return { booking, toCome: alike - kept, plan };
  });
  return { bookings: planned, consumables };
}

async function loadRecorded(
  tx: Tx,
  today: IsoDate,
  templateIds: readonly string[],
): Promise<ReadonlyMap<string, RecordedRestoration[]>> {
  const rows = await tx.query<RecordedRow>(RECORDED, [tx.practiceId, today, templateIds]);
  const byTemplate = new Map<string, RecordedRestoration[]>();
  for (const row of rows) {
    const one: RecordedRestoration = {
      tooth: row.tooth,
      surfaces: row.surfaces,
      cavityClass: row.cavity_class,
      reason: row.reason,
      shades: row.shades,
      cycles: row.cycles,
      volumeMm3: quantity(row.volume_mm3),
      depthMm: quantity(row.depth_mm),
    };
    byTemplate.set(row.template_id, [...(byTemplate.get(row.template_id) ?? []), one]);
  }
  return byTemplate;
}
