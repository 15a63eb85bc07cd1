import { REASONS } from '#lib/dentition';
import { ChoiceField, DateField, IdField, PageQuery, TextField, WholeQuery } from '#lib/platform';

export class PeriodQueryDto {
  @DateField({ optional: true, description: 'First day.' })
  from?: string;

  @DateField({ optional: true, description: 'Last day.' })
  to?: string;
}

export class CostReportQueryDto extends PeriodQueryDto {
  @TextField(60, {
    optional: true,
    example: 'template,month',
    description: 'template, reason, dentist, month, or several with commas; template if left out.',
  })
  groupBy?: string;

  @IdField({ optional: true })
  templateId?: string;

  @ChoiceField(REASONS, { optional: true })
  reason?: (typeof REASONS)[number];

  @IdField({ optional: true })
  dentistId?: string;
}

export class RestorationQueryDto extends PageQuery {
  @DateField({ optional: true, description: 'First day.' })
  from?: string;

  @DateField({ optional: true, description: 'Last day.' })
  to?: string;

  @IdField({ optional: true })
  templateId?: string;

  @ChoiceField(REASONS, { optional: true })
  reason?: (typeof REASONS)[number];

  @IdField({ optional: true })
  dentistId?: string;

  @IdField({ optional: true, description: 'Of this visit, even when it was reversed.' })
  visitId?: string;

  @ChoiceField(['date', 'cost'], {
    optional: true,
    description: 'By date, latest first, when left out; by cost: dearest first.',
  })
  sort?: 'date' | 'cost';
}

export class TemplateUsageQueryDto {
  @IdField({ optional: true })
  templateId?: string;

  @WholeQuery(1, 1000, { description: 'Over how many restorations of a version; 50 if left out.' })
  last?: string;
}
