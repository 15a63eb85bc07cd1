import { addDays, type IsoDate } from '#lib/platform';
import { nextWorkday } from './calendar.js';
import { Dice } from './dice.js';
import type { DemoBooking, Step, VisitPayload } from './steps.js';
import { templateId } from './templates.js';
import { visitsOf } from './visits.js';

/** So many days on which the practice works are booked ahead. */
const DAYS_AHEAD = 10;
/** What of a full day is booked already: less and less, the farther away it is. */
const FULL_TODAY = 0.95;
const LESS_EACH_DAY = 0.07;

/** Two weeks of bookings after a day, each day in a step of its own. */
export function bookedAfter(last: IsoDate): Step[] {
  const steps: Step[] = [];
  let day = last;
  for (let n = 0; n < DAYS_AHEAD; n += 1) {
    day = nextWorkday(addDays(day, 1));
    const bookings = bookingsOf(day, FULL_TODAY - n * LESS_EACH_DAY);
    steps.push({ date: last, kind: 'bookings', key: `bookings/${day}`, payload: { bookings } });
  }
  return steps;
}

function bookingsOf(day: IsoDate, full: number): DemoBooking[] {
  const dice = new Dice(`booked ${day}`);
  const single = visitsOf({ day, secondVersions: true })
    .filter(() => dice.chance(full))
    .map((visit) => bookingOf(visit, dice.chance(0.6)));
  // An hour kept free for fillings at the back, whoever comes.
  const open: DemoBooking = {
    ...{ reference: `demo ${day} back`, day, chartReference: null, alike: dice.int(2, 4) },
    ...{ dentist: null, room: null, restorations: [{ templateId: templateId('back-one') }] },
  };
  return dice.chance(0.4) ? [...single, open] : single;
}

/** On some the tooth was looked at before; of the others only the kind of work is known. */
function bookingOf(visit: VisitPayload, looked: boolean): DemoBooking {
  const { id, visitedOn: day, chartReference, dentist, room } = visit;
  return {
    ...{ reference: `demo ${id}`, day, chartReference, alike: 1, dentist, room },
    restorations: visit.restorations.map((each) => ({
      templateId: each.templateId,
      reason: each.reason,
      ...(looked
        ? {
            ...{ tooth: each.tooth, surfaces: each.surfaces, size: each.size },
            ...(each.cavityClass ? { cavityClass: each.cavityClass } : {}),
          }
        : {}),
    })),
  };
}
