import { FlagField, WholeField } from '#lib/platform';

export class BookedPlanningDto {
  @FlagField({
    description:
      'Every visit of the practice is booked here before it takes place. Then the share of a usual ' +
      'day that is booked stands for that much of the usual use; otherwise a booking stands for the ' +
      'use that it plans, and no more.',
  })
  wholeDay: boolean;

  @WholeField(0, 60, {
    description:
      'For so many days from today on nothing will be added to a day that has bookings. Means ' +
      'nothing unless the whole day is booked here.',
    example: 5,
  })
  fullDays: number;
}
