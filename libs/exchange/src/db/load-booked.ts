import type { IsoTooth } from '#lib/dentition';
import type { Tx } from '#lib/platform';
import type { BookedFacts, Names } from '../domain/plan/booked-rows.js';
import { nameKey } from '../domain/plan/merge.js';

/** A booking of the book, as it is compared with rows of a list. */
export interface StoredBooking {
  readonly id: string;
  readonly day: string;
  readonly chartReference: string | null;
  readonly dentistId: string | null;
  readonly locationId: string | null;
  readonly externalReference: string | null;
  readonly alike: number;
  readonly kept: number;
  readonly state: string;
  readonly restorations: readonly StoredRestoration[];
}

export interface StoredRestoration {
  readonly templateId: string;
  readonly tooth: IsoTooth | null;
  readonly surfaces: string | null;
  readonly cavityClass: string | null;
  readonly size: string | null;
  readonly reason: string | null;
  readonly shades: readonly string[];
}

const BOOKINGS = `
SELECT b.id, b.day::text, b.chart_reference AS "chartReference", b.dentist_id AS "dentistId",
       b.location_id AS "locationId", b.external_reference AS "externalReference", b.alike, b.kept,
       b.state,
       (SELECT json_agg(json_build_object('templateId', r.template_id, 'tooth', r.tooth,
          'surfaces', r.surfaces, 'cavityClass', r.cavity_class, 'size', r.size, 'reason', r.reason,
          'shades', r.shades) ORDER BY r.position)
        FROM booked_restorations r WHERE r.booked_visit_id = b.id) AS restorations
FROM booked_visits b`;

/** What is booked on some days, or under some names elsewhere; whatever became of it. */
export function loadBookings(
  tx: Tx,
  days: readonly string[],
  references: readonly string[],
): Promise<StoredBooking[]> {
  return tx.query(
    `${BOOKINGS} WHERE b.day = ANY($1::date[]) OR b.external_reference = ANY($2::text[])
     ORDER BY b.day, b.id`,
    [days, references],
  );
}

/** What is still to come. */
export function loadOpenBookings(tx: Tx): Promise<StoredBooking[]> {
  return tx.query(`${BOOKINGS} WHERE b.state = 'booked' ORDER BY b.day, b.id`);
}

interface Named {
  readonly id: string;
  readonly name: string;
}

export async function loadBookedFacts(tx: Tx): Promise<BookedFacts> {
  return {
    templates: await names(tx, 'SELECT id, name FROM procedure_templates WHERE active'),
    dentists: await names(
      tx,
      `SELECT id, display_name AS name FROM people WHERE role IN ('dentist', 'owner')
       UNION SELECT id, sign_in_name FROM people WHERE role IN ('dentist', 'owner')`,
    ),
    locations: await names(tx, 'SELECT id, name FROM locations WHERE active'),
    consumables: await names(
      tx,
      `SELECT id, concat_ws(' / ', name, shade, size, grit) AS name FROM consumables`,
    ),
  };
}

async function names(tx: Tx, sql: string): Promise<Names> {
  const rows = await tx.query<Named>(sql);
  const found = new Map<string, string | null>();
  for (const { id, name } of rows) {
    const key = nameKey(name);
    const other = found.get(key);
    found.set(key, other === undefined || other === id ? id : null);
  }
  return found;
}
