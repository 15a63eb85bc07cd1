import { ListQueryDto } from '#lib/catalogue';
import { REASONS, type Reason } from '#lib/dentition';
import {
  ChoiceField,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  TextField,
} from '#lib/platform';

export class NewFeeVersionDto {
  @DateField({ description: 'The first day on which it counts.', example: '2026-01-01' })
  validFrom: string;

  @DecimalField({ optional: true, min: '0', description: 'As an amount.', example: '250' })
  fee?: string | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '1000000',
    description: 'Or by a tariff: points x pointValue x factor, rounded once at the end.',
    example: '297',
  })
  points?: string | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '1000000',
    scale: 8,
    description: 'What one point is worth, in the currency of the practice.',
    example: '0.0562421',
  })
  pointValue?: string | null;

  @DecimalField({ optional: true, above: '0', max: '1000', example: '2.3' })
  factor?: string | null;
}

export class NewFeeDto extends NewFeeVersionDto {
  @TextField(40, { description: "The practice's own code.", example: 'FRONT-1' })
  code: string;

  @TextField(200, { example: 'Front tooth, one surface' })
  name: string;

  @TextField(60, {
    optional: true,
    description: 'A class by which plans may state their coverage.',
    example: 'basic',
  })
  feeClass?: string | null;

  @IdField({ optional: true, description: 'Restorations by this template are charged at it.' })
  templateId?: string | null;

  @ChoiceField(REASONS, {
    optional: true,
    description: 'Only those made for this reason; any when left out.',
  })
  reason?: Reason | null;
}

export class FeeChangesDto {
  @TextField(40, { optional: true })
  code?: string | null;

  @TextField(200, { optional: true })
  name?: string | null;

  @TextField(60, { optional: true, description: 'null takes it away.' })
  feeClass?: string | null;

  @IdField({ optional: true, description: 'null takes it away.' })
  templateId?: string | null;

  @ChoiceField(REASONS, { optional: true, description: 'null: any reason.' })
  reason?: Reason | null;

  @FlagField({ optional: true })
  active?: boolean | null;
}

export class FeeListQueryDto extends ListQueryDto {
  @DateField({ optional: true, description: 'The day of which current is; today if left out.' })
  on?: string;
}

export class FeeVersionDto {
  @OutId()
  id: string;

  @OutDate()
  validFrom: string;

  @OutDecimal({ example: '38.42' })
  fee: string;

  @OutDecimal({ nullable: true, description: 'Null: the fee is stated as an amount.' })
  points: string | null;

  @OutDecimal({ nullable: true })
  pointValue: string | null;

  @OutDecimal({ nullable: true })
  factor: string | null;

  @OutInstant()
  recordedAt: string;
}

export class FeeDto {
  @OutId()
  id: string;

  @OutText({ example: 'FRONT-1' })
  code: string;

  @OutText()
  name: string;

  @OutText({ nullable: true })
  feeClass: string | null;

  @OutId({ nullable: true })
  templateId: string | null;

  @OutChoice(REASONS, { nullable: true })
  reason: Reason | null;

  @OutFlag()
  active: boolean;

  @OutObject(() => FeeVersionDto, { nullable: true, description: 'Null: not valid yet.' })
  current: FeeVersionDto | null;
}

export class FeeHistoryDto extends FeeDto {
  @OutList(() => FeeVersionDto, {
    description: 'The latest day first; of two of one day the one that counts first.',
  })
  versions: readonly FeeVersionDto[];
}

export class FeePageDto {
  @OutList(() => FeeDto)
  items: readonly FeeDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
