import type { CavityClass, CavitySize, IsoTooth, Reason } from '#lib/dentition';
import type { IsoDate, Tx } from '#lib/platform';
import type { BookedRestoration, BookedState, BookedVisit } from '../domain/booked-visit.js';

/** A booking as it is in the book. */
export interface StoredBooking extends BookedVisit {
  readonly id: string;
  /** So many of the alike visits are recorded. */
  readonly kept: number;
  readonly state: BookedState;
  /** Raised whenever somebody changes what it says. */
  readonly version: number;
}

interface Row {
  readonly id: string;
  readonly day: IsoDate;
  readonly chart_reference: string | null;
  readonly dentist_id: string | null;
  readonly location_id: string | null;
  readonly external_reference: string | null;
  readonly alike: number;
  readonly kept: number;
  readonly state: BookedState;
  readonly version: number;
  readonly restorations: readonly RestorationRow[];
}

interface RestorationRow {
  readonly template_id: string;
  readonly tooth: IsoTooth | null;
  readonly surfaces: string | null;
  readonly cavity_class: CavityClass | null;
  readonly size: CavitySize | null;
  readonly reason: Reason | null;
  readonly shades: readonly string[];
}

/** A booking with its restorations, for a query that calls the table b. */
const BOOKING_COLUMNS = `
  b.id, b.day::text, b.chart_reference, b.dentist_id, b.location_id, b.external_reference, b.alike,
  b.kept, b.state, b.version,
  (SELECT json_agg(json_build_object('template_id', r.template_id, 'tooth', r.tooth,
     'surfaces', r.surfaces, 'cavity_class', r.cavity_class, 'size', r.size, 'reason', r.reason,
     'shades', r.shades) ORDER BY r.position)
   FROM booked_restorations r WHERE r.booked_visit_id = b.id) AS restorations`;

function toBooking(row: Row): StoredBooking {
  return {
    id: row.id,
    day: row.day,
    chartReference: row.chart_reference,
    dentistId: row.dentist_id,
    locationId: row.location_id,
    externalReference: row.external_reference,
    alike: row.alike,
    kept: row.kept,
    state: row.state,
    version: row.version,
    restorations: row.restorations.map((r) => ({
      templateId: r.template_id,
      tooth: r.tooth,
      surfaces: r.surfaces,
      cavityClass: r.cavity_class,
      size: r.size,
      reason: r.reason,
      shades: r.shades,
    })),
  };
}

const BY_ID = `SELECT ${BOOKING_COLUMNS} FROM booked_visits b
WHERE b.practice_id = $1 AND b.id = $2`;

export async function loadBooking(tx: Tx, id: string): Promise<StoredBooking | undefined> {
  const [row] = await tx.query<Row>(BY_ID, [tx.practiceId, id]);
  return row ? toBooking(row) : undefined;
}

/** The same, kept from being changed or kept by others until the transaction ends. */
export async function lockBooking(tx: Tx, id: string): Promise<StoredBooking | undefined> {
  const [row] = await tx.query<Row>(`${BY_ID} FOR NO KEY UPDATE OF b`, [tx.practiceId, id]);
  return row ? toBooking(row) : undefined;
}

const BY_REFERENCE = `SELECT ${BOOKING_COLUMNS} FROM booked_visits b
WHERE b.practice_id = $1 AND b.external_reference = ANY($2::text[])
ORDER BY b.id FOR NO KEY UPDATE OF b`;

/** What is booked already under these names elsewhere, locked in the order of ids. */
export async function lockByReference(tx: Tx, names: readonly string[]): Promise<StoredBooking[]> {
  if (names.length === 0) return [];
  return (await tx.query<Row>(BY_REFERENCE, [tx.practiceId, names])).map(toBooking);
}

const OPEN_DAYS = `SELECT ${BOOKING_COLUMNS} FROM booked_visits b
WHERE b.practice_id = $1 AND b.day BETWEEN $2::date AND $3::date AND b.state = 'booked'
ORDER BY b.day, b.id`;

/** What is still to come on some days, both included. */
export async function loadOpenBookings(
  tx: Tx,
  from: IsoDate,
  to: IsoDate,
): Promise<StoredBooking[]> {
  return (await tx.query<Row>(OPEN_DAYS, [tx.practiceId, from, to])).map(toBooking);
}

export interface NewBooking {
  readonly id: string;
  readonly booking: BookedVisit;
}

const INSERT_VISITS = `
INSERT INTO booked_visits (id, practice_id, day, chart_reference, dentist_id, location_id,
  external_reference, alike, state, booked_by, booked_at)
SELECT r.id, $2, r.day, r.chart_reference, r.dentist_id, r.location_id, r.external_reference,
       r.alike, 'booked', $3, $4
FROM json_to_recordset($1::json) AS r(id uuid, day date, chart_reference text, dentist_id uuid,
  location_id uuid, external_reference text, alike smallint)`;

const INSERT_RESTORATIONS = `
INSERT INTO booked_restorations (practice_id, booked_visit_id, position, template_id, tooth,
  surfaces, cavity_class, size, reason, shades)
SELECT $2, r.booked_visit_id, r.position, r.template_id, r.tooth, r.surfaces, r.cavity_class,
       r.size, r.reason, r.shades
FROM json_to_recordset($1::json) AS r(booked_visit_id uuid, position smallint, template_id uuid,
  tooth smallint, surfaces text, cavity_class text, size text, reason text, shades uuid[])`;

/** Writes new bookings: two round trips, whatever their number. */
export async function insertBookings(
  tx: Tx,
  bookings: readonly NewBooking[],
  by: { readonly personId: string; readonly at: Date },
): Promise<void> {
  if (bookings.length === 0) return;
  const visits = bookings.map(({ id, booking }) => visitRow(id, booking));
  await tx.query(INSERT_VISITS, [JSON.stringify(visits), tx.practiceId, by.personId, by.at]);
  await insertRestorations(tx, bookings);
}

const UPDATE_VISITS = `
UPDATE booked_visits b SET day = r.day, chart_reference = r.chart_reference,
  dentist_id = r.dentist_id, location_id = r.location_id, alike = r.alike, state = 'booked',
  version = b.version + 1, dropped_at = NULL, dropped_by = NULL, dropped_note = NULL
FROM json_to_recordset($1::json) AS r(id uuid, day date, chart_reference text, dentist_id uuid,
  location_id uuid, alike smallint)
WHERE b.practice_id = $2 AND b.id = r.id`;

/** Writes changed bookings anew; they are booked afterwards, also when they were dropped before. */
export async function updateBookings(tx: Tx, bookings: readonly NewBooking[]): Promise<void> {
  if (bookings.length === 0) return;
  const visits = bookings.map(({ id, booking }) => visitRow(id, booking));
  await tx.query(UPDATE_VISITS, [JSON.stringify(visits), tx.practiceId]);
  await tx.query('DELETE FROM booked_restorations WHERE booked_visit_id = ANY($1::uuid[])', [
    bookings.map((each) => each.id),
  ]);
  await insertRestorations(tx, bookings);
}

async function insertRestorations(tx: Tx, bookings: readonly NewBooking[]): Promise<void> {
  const rows = bookings.flatMap(({ id, booking }) =>
    booking.restorations.map((each, i) => restorationRow(id, each, i)),
  );
  await tx.query(INSERT_RESTORATIONS, [JSON.stringify(rows), tx.practiceId]);
}

function visitRow(id: string, booking: BookedVisit): object {
  return {
    id,
    day: booking.day,
    chart_reference: booking.chartReference,
    dentist_id: booking.dentistId,
    location_id: booking.locationId,
    external_reference: booking.externalReference,
    alike: booking.alike,
  };
}

function restorationRow(bookedVisitId: string, r: BookedRestoration, index: number): object {
  return {
    booked_visit_id: bookedVisitId,
    position: index + 1,
    template_id: r.templateId,
    tooth: r.tooth,
    surfaces: r.surfaces,
    cavity_class: r.cavityClass,
    size: r.size,
    reason: r.reason,
    shades: r.shades,
  };
}

/** Marks what is still to come of a booking as not coming. */
export async function dropBooking(
  tx: Tx,
  id: string,
  by: { readonly personId: string; readonly at: Date; readonly note: string },
): Promise<void> {
  await tx.query(
    `UPDATE booked_visits SET state = 'dropped', dropped_at = $3, dropped_by = $4, dropped_note = $5,
       version = version + 1
     WHERE practice_id = $1 AND id = $2`,
    [tx.practiceId, id, by.at, by.personId, by.note],
  );
}

/** The visit that kept a booking was reversed: so many fewer of it are kept. */
export async function bookAgain(tx: Tx, id: string): Promise<void> {
  await tx.query(
    `UPDATE booked_visits SET kept = kept - 1,
       state = CASE state WHEN 'kept' THEN 'booked' ELSE state END
     WHERE practice_id = $1 AND id = $2`,
    [tx.practiceId, id],
  );
}

const KNOWN = `
SELECT (SELECT coalesce(array_agg(id), '{}') FROM procedure_templates
        WHERE practice_id = $1 AND id = ANY($2::uuid[]) AND active) AS templates,
       (SELECT coalesce(array_agg(id), '{}') FROM people
        WHERE practice_id = $1 AND id = ANY($3::uuid[]) AND role IN ('dentist', 'owner')) AS dentists,
       (SELECT coalesce(array_agg(id), '{}') FROM locations
        WHERE practice_id = $1 AND id = ANY($4::uuid[]) AND active) AS locations,
       (SELECT coalesce(array_agg(id), '{}') FROM consumables
        WHERE practice_id = $1 AND id = ANY($5::uuid[])) AS consumables`;

export interface NamedByBookings {
  readonly templates: ReadonlySet<string>;
  readonly dentists: ReadonlySet<string>;
  readonly locations: ReadonlySet<string>;
  readonly consumables: ReadonlySet<string>;
}

/** What the bookings name and the practice has, in use. */
export async function loadNamed(
  tx: Tx,
  bookings: readonly BookedVisit[],
): Promise<NamedByBookings> {
  const restorations = bookings.flatMap((each) => each.restorations);
  const unique = (ids: readonly (string | null)[]) => [...new Set(ids.filter((id) => id !== null))];
  const [row] = await tx.query<Record<keyof NamedByBookings, string[]>>(KNOWN, [
    tx.practiceId,
    unique(restorations.map((each) => each.templateId)),
    unique(bookings.map((each) => each.dentistId)),
    unique(bookings.map((each) => each.locationId)),
    unique(restorations.flatMap((each) => each.shades)),
  ]);
  if (!row) throw new Error('What bookings name came back empty');
  return {
    templates: new Set(row.templates),
    dentists: new Set(row.dentists),
    locations: new Set(row.locations),
    consumables: new Set(row.consumables),
  };
}
