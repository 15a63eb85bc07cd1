import { DateField, OutDate, OutText, TextField } from '#lib/platform';

export class NewSnoozeDto {
  @TextField(200, { description: 'The id of an open alert.' })
  alertId: string;

  @DateField({ description: 'It comes back on this day; today wakes it at once. 90 days at most.' })
  until: string;

  @TextField(500, { example: 'The representative brings one on Friday.' })
  reason: string;
}

export class SnoozedDto {
  @OutDate({ description: 'It comes back on this day.' })
  until: string;

  @OutText()
  reason: string;

  @OutText({ description: 'Who put it off.' })
  by: string;
}

export class SnoozeDto extends SnoozedDto {
  @OutText()
  alertId: string;
}
