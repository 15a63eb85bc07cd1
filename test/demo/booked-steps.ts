import type { INestApplicationContext } from '@nestjs/common';
import { type Actor, UnitOfWork } from '#lib/platform';
import { BookVisits } from '#lib/visits';
import { locationId } from './book-reader.js';
import { demoId } from './dice.js';
import type { StepOf } from './steps.js';

/** Books the days to come; a day that is booked already stays as it is. */
export function bookedRuns(app: INestApplicationContext, { manager }: { readonly manager: Actor }) {
  const uow = app.get(UnitOfWork, { strict: false });
  const bookVisits = app.get(BookVisits, { strict: false });
  return {
    bookings: ({ payload: { bookings } }: StepOf<'bookings'>) => {
      const rows = bookings.map(({ reference, dentist, room, ...booking }) => ({
        ...booking,
        externalReference: reference,
        dentistId: dentist === null ? null : demoId('person', dentist),
        locationId: room === null ? null : locationId(room),
      }));
      return uow.run(manager.practiceId, (tx) => bookVisits.runMany(tx, manager, rows));
    },
  };
}
