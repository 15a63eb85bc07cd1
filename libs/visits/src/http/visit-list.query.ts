import { ChoiceField, DateField, IdField, PageQuery, TextField } from '#lib/platform';

export class VisitListQuery extends PageQuery {
  @TextField(60, { optional: true })
  chartReference?: string;

  @IdField({ optional: true })
  dentistId?: string;

  @IdField({ optional: true })
  locationId?: string;

  @DateField({ optional: true })
  from?: string;

  @DateField({ optional: true })
  to?: string;

  @ChoiceField(['true', 'false'], {
    optional: true,
    description: 'Only visits with (or without) an open shortfall.',
  })
  estimated?: string;
}
