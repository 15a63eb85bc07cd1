import { Clock } from '#lib/platform';

/** Midday of a day that was asked for. */
export class DayClock extends Clock {
  constructor(private readonly day: string) {
    super();
  }

  override now(): Date {
    return new Date(`${this.day}T12:00:00Z`);
  }
}
