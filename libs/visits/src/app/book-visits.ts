import { Injectable } from '@nestjs/common';
import {
  type Actor,
  addDays,
  Clock,
  type FieldError,
  type IsoDate,
  invalidFields,
  newId,
  type Refused,
  refuse,
  type Tx,
} from '#lib/platform';
import {
  insertBookings,
  loadNamed,
  lockByReference,
  type NamedByBookings,
  type NewBooking,
  updateBookings,
} from '../db/booked-record.js';
import {
  type BookedVisit,
  type BookedVisitInput,
  readBooking,
  sameBooking,
} from '../domain/booked-visit.js';

export interface Booked {
  readonly created: number;
  readonly changed: number;
  readonly unchanged: number;
  /** The booking of each row, in the order of the rows. */
  readonly ids: readonly string[];
}

/** A booking is for the days to come; farther ahead than this is a slip of the pen. */
const FARTHEST_DAYS = 730;

/** Books visits, many at once. */
@Injectable()
export class BookVisits {
  constructor(private readonly clock: Clock) {}

  /**
   * Books all rows or none, in the caller's transaction and in few round trips. A row whose external
   * reference is booked already changes that booking, which is booked again if it was dropped before;
   * a row that says the same changes nothing, nor does one that was kept already. Throws a refusal
   * that names every wrong field, e.g. `rows[3].restorations[0].tooth`.
   */
  async runMany(tx: Tx, actor: Actor, rows: readonly BookedVisitInput[]): Promise<Booked> {
    return this.book(tx, actor, rows, (i) => `rows[${i}].`);
  }

  /** The same for a request that books one: its fields have no row. */
  async runOne(tx: Tx, actor: Actor, row: BookedVisitInput): Promise<string> {
    const { ids } = await this.book(tx, actor, [row], () => '');
    return ids[0] ?? '';
  }

  private async book(
    tx: Tx,
    actor: Actor,
    rows: readonly BookedVisitInput[],
    pathOf: (row: number) => string,
  ): Promise<Booked> {
    const today = this.clock.today(actor.timeZone);
    const bookings = await checkBookings(tx, { actor, today, pathOf }, rows);
    const names = bookings.flatMap((each) => each.externalReference ?? []);
    const known = await lockByReference(tx, names);
    const byName = new Map(known.map((each) => [each.externalReference, each]));
    const [created, changed, ids]: [NewBooking[], NewBooking[], string[]] = [[], [], []];
    for (const booking of bookings) {
      const { externalReference: name } = booking;
      const before = name === null ? undefined : byName.get(name);
      const id = before?.id ?? newId();
      ids.push(id);
      if (!before) created.push({ id, booking });
      else if (before.kept === 0 && !sameBooking(before, booking)) changed.push({ id, booking });
    }
    const by = { personId: actor.personId, at: this.clock.now() };
    await insertBookings(tx, created, by).catch(refuseKnownReference);
    await updateBookings(tx, changed);
    const unchanged = rows.length - created.length - changed.length;
    return { created: created.length, changed: changed.length, unchanged, ids };
  }
}

/** Somebody else booked the same reference between our look and our writing. */
function refuseKnownReference(error: unknown): never {
  const constraint = error instanceof Error && 'constraint' in error ? error.constraint : null;
  if (constraint !== 'booked_visits_external') throw error;
  const message = 'has been booked meanwhile';
  throw refuse('already_exists', `externalReference ${message}.`, [
    { field: 'externalReference', message },
  ]);
}

interface Checking {
  readonly actor: Actor;
  readonly today: IsoDate;
  /** What the fields of a row begin with. */
  readonly pathOf: (row: number) => string;
}

/** Rows as bookings; refuses all of them with every field that is wrong. */
export async function checkBookings(
  tx: Tx,
  { actor, today, pathOf }: Checking,
  rows: readonly BookedVisitInput[],
): Promise<BookedVisit[]> {
  const bookings: BookedVisit[] = [];
  const wrong: FieldError[] = [];
  const farthest = addDays(today, FARTHEST_DAYS);
  rows.forEach((row, i) => {
    const read = readBooking(row, actor.toothNotation);
    if (read.ok) bookings.push(read.booking);
    else wrong.push(...under(pathOf(i), read.problems));
    if (row.day <= farthest) return;
    wrong.push({ field: `${pathOf(i)}day`, message: `must not be after ${farthest}` });
  });
  if (wrong.length > 0) throw invalidFields(wrong);
  const named = await loadNamed(tx, bookings);
  const unknown: FieldError[] = [];
  const seen = new Set<string>();
  bookings.forEach((booking, i) => {
    const { externalReference: name } = booking;
    const found = [...unknownOf(booking, named)];
    if (name !== null && seen.has(name)) {
      found.push({ field: 'externalReference', message: 'was given before' });
    }
    if (name !== null) seen.add(name);
    unknown.push(...under(pathOf(i), found));
  });
  if (unknown.length > 0) throw refuseUnknown(unknown);
  return bookings;
}

function under(path: string, problems: readonly FieldError[]): FieldError[] {
  return problems.map(({ field, message }) => ({ field: path + field, message }));
}

function refuseUnknown(fields: readonly FieldError[]): Refused {
  const [first] = fields;
  const detail = first ? `${first.field} ${first.message}.` : '';
  return refuse('unknown_reference', detail, fields);
}

function unknownOf(booking: BookedVisit, named: NamedByBookings): FieldError[] {
  const { dentistId, locationId, restorations } = booking;
  const found: FieldError[] = [];
  const check = (known: boolean, field: string, message: string) => {
    if (!known) found.push({ field, message });
  };
  check(
    dentistId === null || named.dentists.has(dentistId),
    'dentistId',
    'names no dentist of this practice',
  );
  check(
    locationId === null || named.locations.has(locationId),
    'locationId',
    'names no location of this practice that is in use',
  );
  restorations.forEach(({ templateId, shades }, i) => {
    check(
      named.templates.has(templateId),
      `restorations[${i}].templateId`,
      'names no procedure template of this practice that is in use',
    );
    shades.forEach((id, n) => {
      const field = `restorations[${i}].shades[${n}]`;
      check(named.consumables.has(id), field, 'names no consumable of this practice');
    });
  });
  return found;
}
