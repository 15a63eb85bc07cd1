import { REASONS, type Reason } from '#lib/dentition';
import {
  ChoiceField,
  ChoiceListField,
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
  OutText,
  OutTexts,
  TextField,
} from '#lib/platform';
import { FEE_CEILINGS, type FeeCeiling } from '../domain/plan-share.js';

const CEILING =
  'Whether the allowed fee also binds work the plan does not pay: never, for work it never covers, ' +
  'once the maximum is used up, or both. Contracts and local law differ: state who says so.';

export class NewPlanDto {
  @TextField(200, { example: 'Meadow plan' })
  name: string;

  @FlagField({ description: 'Whether the practice is bound by its allowed fees.' })
  inNetwork: boolean;

  @DecimalField({ min: '0', description: 'Per year, before the plan pays.', example: '50' })
  deductible: string;

  @DecimalField({ optional: true, min: '0', description: 'None when left out.', example: '1500' })
  yearlyMaximum?: string | null;

  @ChoiceField(FEE_CEILINGS, { description: CEILING })
  feeCeiling: FeeCeiling;

  @TextField(500, {
    description: 'Who states the ceiling.',
    example: 'Contract of 2024, section 7',
  })
  ceilingSource: string;

  @DateField({ description: 'When the practice looked that up.' })
  ceilingCheckedOn: string;

  @FlagField({ description: 'Whether the patient may be billed what a downgrade leaves unpaid.' })
  downgradeBilled: boolean;
}

export class PlanChangesDto {
  @TextField(200, { optional: true })
  name?: string | null;

  @FlagField({ optional: true })
  inNetwork?: boolean | null;

  @DecimalField({ optional: true, min: '0' })
  deductible?: string | null;

  @DecimalField({ optional: true, min: '0', description: 'null: no maximum any more.' })
  yearlyMaximum?: string | null;

  @ChoiceField(FEE_CEILINGS, {
    optional: true,
    description: 'Another one needs its own ceilingSource and ceilingCheckedOn.',
  })
  feeCeiling?: FeeCeiling | null;

  @TextField(500, { optional: true })
  ceilingSource?: string | null;

  @DateField({ optional: true })
  ceilingCheckedOn?: string | null;

  @FlagField({ optional: true })
  downgradeBilled?: boolean | null;

  @FlagField({ optional: true })
  active?: boolean | null;
}

export class NewPlanTermDto {
  @IdField({ optional: true, description: 'Terms of one fee; or state feeClass.' })
  feeId?: string | null;

  @TextField(60, { optional: true, description: 'Coverage of a class of fees.', example: 'basic' })
  feeClass?: string | null;

  @DateField({ description: 'The first day on which they count.', example: '2026-01-01' })
  validFrom: string;

  @DecimalField({ optional: true, min: '0', description: 'Of one fee only.', example: '180' })
  allowedFee?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description:
      'Allowed fee of the cheaper treatment that the plan pays instead; of one fee only.',
    example: '120',
  })
  alternateFee?: string | null;

  @DecimalField({ optional: true, min: '0', max: '1', description: 'Share.', example: '0.8' })
  coverage?: string | null;

  @FlagField({ optional: true, description: 'true when left out.' })
  deductibleApplies?: boolean | null;

  @ChoiceListField(REASONS, {
    optional: true,
    min: 1,
    description:
      'For which reasons it is covered; decay and fracture when left out. Cosmetic only for one ' +
      'fee, with a note of who states it.',
  })
  reasons?: Reason[] | null;

  @TextField(500, { optional: true, description: 'Who states that cosmetic work is covered.' })
  cosmeticNote?: string | null;
}

export class PlanTermDto {
  @OutId()
  id: string;

  @OutId({ nullable: true })
  feeId: string | null;

  @OutText({ nullable: true })
  feeCode: string | null;

  @OutText({ nullable: true })
  feeClass: string | null;

  @OutDate()
  validFrom: string;

  @OutDecimal({ nullable: true })
  allowedFee: string | null;

  @OutDecimal({ nullable: true })
  alternateFee: string | null;

  @OutDecimal({ nullable: true })
  coverage: string | null;

  @OutFlag()
  deductibleApplies: boolean;

  @OutTexts()
  reasons: readonly string[];

  @OutText({ nullable: true })
  cosmeticNote: string | null;

  @OutInstant()
  recordedAt: string;
}

export class PlanSummaryDto {
  @OutId()
  id: string;

  @OutText()
  name: string;

  @OutFlag()
  inNetwork: boolean;

  @OutDecimal()
  deductible: string;

  @OutDecimal({ nullable: true })
  yearlyMaximum: string | null;

  @OutChoice(FEE_CEILINGS, { description: CEILING })
  feeCeiling: FeeCeiling;

  @OutText()
  ceilingSource: string;

  @OutDate()
  ceilingCheckedOn: string;

  @OutFlag()
  downgradeBilled: boolean;

  @OutFlag()
  active: boolean;
}

export class PlanDto extends PlanSummaryDto {
  @OutList(() => PlanTermDto, { description: 'All that was ever stated, the latest day first.' })
  terms: readonly PlanTermDto[];
}

export class PlanPageDto {
  @OutList(() => PlanSummaryDto)
  items: readonly PlanSummaryDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}
