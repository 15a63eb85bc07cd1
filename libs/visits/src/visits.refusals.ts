import { defineRefusals } from '#lib/platform';

export const refuseVisit = defineRefusals({
  date_in_future: { status: 422, title: 'That day has not come yet' },
  not_in_use: { status: 422, title: 'This is no longer in use' },
  not_a_dentist: { status: 422, title: 'This person is not a dentist of the practice' },
  template_version_unknown: { status: 422, title: 'There is no such version of the template' },
  restoration_not_possible: { status: 422, title: 'A restoration is not possible as described' },
  usage_not_possible: { status: 422, title: 'A usage line is not possible as described' },
  lot_not_usable: { status: 422, title: 'A scanned lot may not be used' },
  lot_not_needed: { status: 422, title: 'A scanned lot is of something this visit does not use' },
  minutes_do_not_fit: { status: 422, title: 'The minutes of a visit do not fit its restorations' },
  redo_does_not_fit: { status: 422, title: 'This cannot be what is done again' },
  day_has_passed: { status: 422, title: 'That day has passed' },
  booking_closed: { status: 409, title: 'This booked visit is not to come any more' },
  booking_changed_meanwhile: { status: 409, title: 'Somebody changed the booked visit meanwhile' },
  already_reversed: { status: 409, title: 'This visit was reversed before' },
  too_large: { status: 422, title: 'The amount is larger than the book can hold' },
});
