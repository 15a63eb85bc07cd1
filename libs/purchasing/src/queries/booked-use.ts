import { formatQuantity } from '#lib/measure';
import { addDays, daysBetween, type IsoDate, type Tx } from '#lib/platform';
import { LATELY, loadPlannedBookings, type PlannedBookings } from '#lib/visits';
import { loadBookedPlanning } from '../db/booked-planning.js';
import { epochDay } from '../domain/forecast/calendar.js';
import {
  type BookedDemand,
  type BookedGroup,
  bookedDemand,
  type Diary,
  type Experience,
  shareKept,
} from '../domain/planning/booked-demand.js';

/** Nobody plans an order farther ahead. */
const HORIZON_DAYS = 366;
const USUAL_WEEKS = 12;

interface BookedQuestion {
  readonly leaveOutRetakes: boolean;
  /** Only bookings for this place and those within; null: all. */
  readonly locationId?: string | null;
  readonly horizonDays?: number;
}

/** What booked visits will use from today on, item by item, as far as it is known. */
export async function loadBookedDemand(
  tx: Tx,
  today: IsoDate,
  question: BookedQuestion,
): Promise<BookedDemand> {
  const to = addDays(today, (question.horizonDays ?? HORIZON_DAYS) - 1);
  const planned = await loadPlannedBookings(tx, today, { from: today, to });
  return demandOf(tx, today, planned, question);
}

/** The same of bookings that were planned already. */
export async function demandOf(
  tx: Tx,
  today: IsoDate,
  planned: PlannedBookings,
  { leaveOutRetakes, locationId = null }: BookedQuestion,
): Promise<BookedDemand> {
  const settings = await loadBookedPlanning(tx);
  const whole = settings.wholeDay && locationId === null;
  const facts = { today: epochDay(today), groups: [], visits: 0, keptShare: 1, diary: null };
  if (planned.bookings.length === 0 && !whole) {
    return bookedDemand({ ...facts, experience: new Map() });
  }
  const places = locationId === null ? null : await placesWithin(tx, locationId);
  const { experience, visits } = await loadExperience(tx, today, { planned, leaveOutRetakes });
  const { kept, dropped } = await countKept(tx, today);
  return bookedDemand({
    today: epochDay(today),
    groups: groupsOf(planned, today, places),
    experience,
    visits,
    keptShare: shareKept(kept, dropped),
    diary: whole ? await loadDiary(tx, today, settings.fullDays) : null,
  });
}

function groupsOf(
  { bookings }: PlannedBookings,
  today: IsoDate,
  places: ReadonlySet<string> | null,
): BookedGroup[] {
  return bookings
    .filter(({ booking }) => places === null || places.has(booking.locationId ?? ''))
    .map(({ booking, toCome, plan }) => ({
      day: daysBetween(today, booking.day),
      toCome,
      minutes: plan.minutes,
      needs: plan.needs,
      shadeUnknown: plan.shadeUnknown,
    }));
}

async function placesWithin(tx: Tx, locationId: string): Promise<ReadonlySet<string>> {
  const rows = await tx.query<{ id: string }>(
    `WITH RECURSIVE places AS (
       SELECT id FROM locations WHERE practice_id = $1 AND id = $2
       UNION SELECT l.id FROM places p JOIN locations l ON l.parent_id = p.id
     ) SELECT id FROM places`,
    [tx.practiceId, locationId],
  );
  return new Set(rows.map((row) => row.id));
}

// Planned as it would be charged: whole doses, those that lines of a visit share once. These sums are
// statistics, so they may leave as floating point numbers.
const EXPERIENCE = `
WITH lately AS MATERIALIZED (${LATELY}), doses AS (
  SELECT * FROM unnest($3::uuid[], $4::numeric[]) AS d(consumable_id, dose)
), lines AS (
  SELECT u.visit_id, u.consumable_id, CASE WHEN u.shares_dose THEN 0 ELSE u.position END AS part,
         sum(u.planned) FILTER (WHERE u.attempt = 1) AS planned,
         sum(u.charged) FILTER (WHERE NOT $5 OR (u.attempt = 1 AND r.redo_of IS NULL)) AS used
  FROM lately v JOIN usage_lines u ON u.visit_id = v.id
  LEFT JOIN restorations r ON r.id = u.restoration_id
  GROUP BY 1, 2, 3
), visit_use AS (
  SELECT l.visit_id, l.consumable_id, coalesce(sum(l.used), 0)::float8 AS used,
         coalesce(sum(coalesce(ceil(l.planned / d.dose) * d.dose, l.planned)), 0)::float8 AS planned
  FROM lines l LEFT JOIN doses d ON d.consumable_id = l.consumable_id GROUP BY 1, 2
)
SELECT consumable_id AS id, count(*) FILTER (WHERE planned > 0)::int AS visits,
       coalesce(sum(planned), 0) AS planned,
       coalesce(sum(used) FILTER (WHERE planned > 0), 0) AS used,
       coalesce(sum(planned * planned), 0) AS "plannedSquare",
       coalesce(sum(planned * used), 0) AS "plannedUsed",
       coalesce(sum(used * used) FILTER (WHERE planned > 0), 0) AS "usedSquare",
       coalesce(sum(used) FILTER (WHERE planned = 0), 0) AS "extraUsed",
       coalesce(sum(used * used) FILTER (WHERE planned = 0), 0) AS "extraSquare",
       (SELECT count(*)::int FROM lately) AS lately
FROM visit_use GROUP BY consumable_id`;

type ExperienceRow = Experience['planned'] & {
  readonly id: string;
  readonly extraUsed: number;
  readonly extraSquare: number;
  readonly lately: number;
};

async function loadExperience(
  tx: Tx,
  today: IsoDate,
  about: { readonly planned: PlannedBookings; readonly leaveOutRetakes: boolean },
): Promise<{ experience: ReadonlyMap<string, Experience>; visits: number }> {
  const dosed = [...about.planned.consumables.values()].filter((each) => each.dose !== null);
  const rows = await tx.query<ExperienceRow>(EXPERIENCE, [
    tx.practiceId,
    today,
    dosed.map((each) => each.id),
    dosed.map((each) => (each.dose === null ? null : formatQuantity(each.dose))),
    about.leaveOutRetakes,
  ]);
  const experience = new Map<string, Experience>();
  for (const { id, extraUsed, extraSquare, lately: _, ...planned } of rows) {
    experience.set(id, { planned, extra: { used: extraUsed, usedSquare: extraSquare } });
  }
  return { experience, visits: rows[0]?.lately ?? 0 };
}

const KEPT = `
SELECT coalesce(sum(kept), 0)::int AS kept,
       coalesce(sum(alike - kept) FILTER (WHERE state = 'dropped'), 0)::int AS dropped
FROM booked_visits WHERE practice_id = $1 AND day < $2::date AND day >= $2::date - 180`;

/** Bookings whose day has passed; of those that nobody recorded or dropped nothing is known. */
async function countKept(tx: Tx, today: IsoDate): Promise<{ kept: number; dropped: number }> {
  const [row] = await tx.query<{ kept: number; dropped: number }>(KEPT, [tx.practiceId, today]);
  return row ?? { kept: 0, dropped: 0 };
}

const USUAL_MINUTES = `
SELECT extract(isodow FROM v.visited_on)::int AS weekday,
       (sum(r.minutes) / count(DISTINCT v.visited_on))::int AS minutes
FROM visits v JOIN restorations r ON r.visit_id = v.id
WHERE v.practice_id = $1 AND v.reversed_at IS NULL AND v.visited_on < $2::date
  AND v.visited_on >= $2::date - ${USUAL_WEEKS * 7}
GROUP BY 1`;

const BOOKED_MINUTES = `
SELECT b.day - $2::date AS day,
       sum(w.minutes * CASE b.state WHEN 'dropped' THEN b.kept ELSE b.alike END)::int AS minutes
FROM booked_visits b JOIN booked_restorations r ON r.booked_visit_id = b.id
JOIN procedure_templates t ON t.id = r.template_id
JOIN template_versions w ON w.template_id = t.id AND w.version = t.latest_version
WHERE b.practice_id = $1 AND b.day >= $2::date AND b.day < $2::date + ${HORIZON_DAYS}
GROUP BY b.day`;

async function loadDiary(tx: Tx, today: IsoDate, fullDays: number): Promise<Diary> {
  const parameters = [tx.practiceId, today];
  const usualMinutes = new Array<number>(7).fill(0);
  for (const { weekday, minutes } of await tx.query<{ weekday: number; minutes: number }>(
    ...([USUAL_MINUTES, parameters] as const),
  )) {
    usualMinutes[weekday - 1] = minutes;
  }
  const bookedMinutes: number[] = [];
  for (const { day, minutes } of await tx.query<{ day: number; minutes: number }>(
    ...([BOOKED_MINUTES, parameters] as const),
  )) {
    bookedMinutes[day] = minutes;
  }
  const filled = Array.from(bookedMinutes, (minutes) => minutes ?? 0);
  return { fullDays, usualMinutes, bookedMinutes: filled };
}
