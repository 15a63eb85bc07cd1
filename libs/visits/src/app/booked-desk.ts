import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { type Actor, type Claimed, Clock, invalidFields, type Tx, UnitOfWork } from '#lib/platform';
import {
  dropBooking,
  lockBooking,
  type StoredBooking,
  updateBookings,
} from '../db/booked-record.js';
import { sameBooking } from '../domain/booked-visit.js';
import type {
  BookedVisitDto,
  BookVisitDto,
  ChangeBookedVisitDto,
  DropBookedVisitDto,
} from '../http/booked-visits.dto.js';
import { BookedList, noBooking } from '../queries/booked-list.js';
import { refuseVisit } from '../visits.refusals.js';
import { BookVisits, checkBookings } from './book-visits.js';

/** Books single visits, and changes or drops what is booked. */
@Injectable()
export class BookedDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly bookVisits: BookVisits,
    private readonly list: BookedList,
  ) {}

  async book(actor: Actor, key: string, command: BookVisitDto): Promise<Claimed<BookedVisitDto>> {
    this.refusePast(actor, command.day);
    const operation = 'POST /api/booked-visits';
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) =>
      this.list.one(tx, actor, await this.bookVisits.runOne(tx, actor, command)),
    );
  }

  /** Replaces all that a booking says, if it is still as it was seen; its name elsewhere stays. */
  async change(actor: Actor, id: string, command: ChangeBookedVisitDto): Promise<BookedVisitDto> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await openBooking(tx, id, command.version);
      if (command.day !== before.day) this.refusePast(actor, command.day);
      const { externalReference } = before;
      const today = this.clock.today(actor.timeZone);
      const checking = { actor, today, pathOf: () => '' };
      const [after] = await checkBookings(tx, checking, [{ ...command, externalReference }]);
      if (!after) throw new Error('A booking was not read');
      if (after.alike <= before.kept) {
        const message = `must be more than the ${before.kept} that are recorded already`;
        throw invalidFields([{ field: 'alike', message }]);
      }
      if (!sameBooking(before, after)) {
        await updateBookings(tx, [{ id, booking: after }]);
        await audit(tx, actor, id, { action: 'booked-visit.changed', details: { before, after } });
      }
      return this.list.one(tx, actor, id);
    });
  }

  async drop(
    actor: Actor,
    key: string,
    id: string,
    command: DropBookedVisitDto,
  ): Promise<Claimed<BookedVisitDto>> {
    const operation = `POST /api/booked-visits/${id}/dropping`;
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      await openBooking(tx, id, command.version);
      const note = command.note.trim();
      await dropBooking(tx, id, { personId: actor.personId, at: this.clock.now(), note });
      await audit(tx, actor, id, { action: 'booked-visit.dropped', details: { note } });
      return this.list.one(tx, actor, id);
    });
  }

  private refusePast(actor: Actor, day: string): void {
    const today = this.clock.today(actor.timeZone);
    if (day >= today) return;
    throw refuseVisit('day_has_passed', `${day} is before today, ${today}.`, [
      { field: 'day', message: `must not be before today, ${today}` },
    ]);
  }
}

/** Holds a booking that is still to come and as its reader saw it. */
async function openBooking(tx: Tx, id: string, version: number): Promise<StoredBooking> {
  const booking = await lockBooking(tx, id);
  if (!booking) throw noBooking();
  if (booking.state !== 'booked') {
    const how = booking.state === 'kept' ? 'recorded' : 'dropped';
    throw refuseVisit('booking_closed', `This booked visit was ${how} before.`);
  }
  if (booking.version === version) return booking;
  throw refuseVisit(
    'booking_changed_meanwhile',
    'Somebody changed this booked visit after you opened it. Look at it again, then decide.',
    [{ field: 'version', message: `is not the present one, ${booking.version}` }],
  );
}

function audit(
  tx: Tx,
  actor: Actor,
  id: string,
  what: { readonly action: string; readonly details: Readonly<Record<string, unknown>> },
): Promise<void> {
  return recordAudit(tx, actor, { ...what, subjectKind: 'booked visit', subjectId: id });
}
