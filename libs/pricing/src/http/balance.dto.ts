import {
  ChoiceField,
  DateField,
  DecimalField,
  IdField,
  OutDate,
  OutDecimal,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  PageQuery,
  TextField,
} from '#lib/platform';
import { QuoteNameDto } from './quoted-restoration.dto.js';

export class NewBalanceDto {
  @IdField()
  planId: string;

  @TextField(60, { description: 'The chart reference and nothing else about the patient.' })
  chartReference: string;

  @DateField({ description: 'The day on which that was so.' })
  asOf: string;

  @DecimalField({ min: '0', example: '50' })
  deductibleLeft: string;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'Left out exactly when the plan has no yearly maximum.',
    example: '1000',
  })
  maximumLeft?: string | null;
}

export class BalanceQueryDto extends PageQuery {
  @TextField(60, { optional: true })
  chartReference?: string;

  @IdField({ optional: true })
  planId?: string;

  @DateField({ optional: true, description: 'Only what was entered for this day or one before.' })
  on?: string;

  @ChoiceField(['all', 'counting'], {
    optional: true,
    description: 'All that was entered, or of each chart and plan only what counts on the day.',
  })
  show?: 'all' | 'counting';
}

export class LeftDto {
  @OutDecimal()
  deductibleLeft: string;

  @OutDecimal({ nullable: true })
  maximumLeft: string | null;
}

export class BalanceDto {
  @OutId()
  id: string;

  @OutObject(() => QuoteNameDto)
  plan: QuoteNameDto;

  @OutText()
  chartReference: string;

  @OutDate()
  asOf: string;

  @OutDecimal()
  deductibleLeft: string;

  @OutDecimal({ nullable: true, description: 'Null: the plan has no yearly maximum.' })
  maximumLeft: string | null;

  @OutObject(() => LeftDto, {
    nullable: true,
    description:
      'What charges of later visits leave of it. Only where the figures that count of one chart ' +
      'are asked for, and no day; else null.',
  })
  now: LeftDto | null;

  @OutText()
  recordedBy: string;

  @OutInstant()
  recordedAt: string;
}

export class BalancePageDto {
  @OutList(() => BalanceDto)
  items: readonly BalanceDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
