import { REASONS } from '#lib/dentition';
import { ChoiceField, DateField, IdField, PageQuery, TextField, WholeQuery } from '#lib/platform';
import { FILE_LANGUAGES, type FileLanguage } from '../domain/table-words.js';

export class FileQueryDto {
  @ChoiceField(FILE_LANGUAGES, {
    optional: true,
    description: 'The language of a file; English when left out. JSON is the same in both.',
  })
  lang?: FileLanguage;
}

export class PeriodQueryDto extends FileQueryDto {
  @DateField({ optional: true, description: 'First day.' })
  from?: string;

  @DateField({ optional: true, description: 'Last day.' })
  to?: string;
}

class ChosenQueryDto extends PeriodQueryDto {
  @IdField({ optional: true })
  templateId?: string;

  @ChoiceField(REASONS, { optional: true })
  reason?: (typeof REASONS)[number];

  @IdField({ optional: true })
  dentistId?: string;
}

export class CostReportQueryDto extends ChosenQueryDto {
  @TextField(60, {
    optional: true,
    example: 'template,month',
    description: 'template, reason, dentist, month, or several with commas; template if left out.',
  })
  groupBy?: string;
}

export class VarianceQueryDto extends ChosenQueryDto {
  @TextField(60, {
    optional: true,
    example: 'template,month',
    description:
      'restoration, or template, reason, dentist, month, several with commas; else template.',
  })
  groupBy?: string;

  @WholeQuery(1, 5000, { description: 'By restoration: how many rows; 200 if left out.' })
  limit?: string;
}

export class HabitQueryDto extends PeriodQueryDto {
  @WholeQuery(1, 200, { description: 'How many; 10 if left out.' })
  limit?: string;
}

export class PriceChangeQueryDto extends PeriodQueryDto {
  @IdField({ optional: true })
  consumableId?: string;
}

export class SuggestionQueryDto {
  @WholeQuery(1, 5000, {
    description: 'From how many of the latest restorations; 200 if left out.',
  })
  last?: string;
}

export class ChairTimeQueryDto extends PeriodQueryDto {
  @TextField(60, {
    optional: true,
    example: 'template',
    description: 'template, reason, dentist, month, or several with commas; template if left out.',
  })
  groupBy?: string;
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

export class TemplateUsageQueryDto extends FileQueryDto {
  @IdField({ optional: true })
  templateId?: string;

  @WholeQuery(1, 1000, { description: 'Over how many restorations of a version; 50 if left out.' })
  last?: string;
}
