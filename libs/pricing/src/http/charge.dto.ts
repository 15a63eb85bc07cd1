import { REASONS } from '#lib/dentition';
import {
  ChoiceField,
  DecimalField,
  IdField,
  ListField,
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  PageQuery,
  TextField,
} from '#lib/platform';
import { QuoteNameDto } from './quoted-restoration.dto.js';

export class NewChargeDto {
  @IdField()
  restorationId: string;

  @TextField(40, {
    optional: true,
    description: "One of the practice's own codes. Left out: the fee of its template and reason.",
  })
  feeCode?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'What was asked for it. Left out: what the fee comes to on the day of the visit.',
    example: '250',
  })
  fee?: string | null;

  @IdField({ optional: true, description: 'The plan that is asked to pay; none when left out.' })
  planId?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'Stated together with patientPays and writeOff; else all three are worked out.',
    example: '104',
  })
  planPays?: string | null;

  @DecimalField({ optional: true, min: '0', example: '76' })
  patientPays?: string | null;

  @DecimalField({ optional: true, min: '0', example: '70' })
  writeOff?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'Goes with stated amounts; 0 when left out.',
    example: '50',
  })
  deductibleUsed?: string | null;
}

export class NewChargesDto {
  @IdField()
  visitId: string;

  @ListField(() => NewChargeDto, {
    min: 1,
    max: 32,
    description:
      'In the order in which they use up the plan. Others of the visit stay as they are.',
  })
  charges: NewChargeDto[];

  @TextField(500, { optional: true, description: 'Why, when earlier records are replaced.' })
  note?: string | null;
}

export const SHOWN_CHARGES = ['current', 'all'] as const;

export class ChargeQueryDto extends PageQuery {
  @IdField({ optional: true })
  visitId?: string;

  @TextField(60, { optional: true })
  chartReference?: string;

  @ChoiceField(SHOWN_CHARGES, {
    optional: true,
    description: 'all: with the records that were replaced and those of reversed visits.',
  })
  show?: (typeof SHOWN_CHARGES)[number];
}

export class ChargeDto {
  @OutId()
  id: string;

  @OutId()
  visitId: string;

  @OutId()
  restorationId: string;

  @OutText()
  chartReference: string;

  @OutDate({ description: 'The day of the visit, at which fee and terms were read.' })
  chargedOn: string;

  @OutText({ example: '21' })
  tooth: string;

  @OutText({ example: 'M' })
  surfaces: string;

  @OutChoice(REASONS)
  reason: string;

  @OutObject(() => QuoteNameDto)
  template: QuoteNameDto;

  @OutText({ nullable: true, description: 'Null: an amount that belongs to no fee.' })
  feeCode: string | null;

  @OutText({ nullable: true })
  feeName: string | null;

  @OutDecimal({ example: '250.00' })
  fee: string;

  @OutObject(() => QuoteNameDto, { nullable: true })
  plan: QuoteNameDto | null;

  @OutDecimal({ example: '104.00' })
  planPays: string;

  @OutDecimal({ example: '76.00' })
  patientPays: string;

  @OutDecimal({ example: '70.00' })
  writeOff: string;

  @OutDecimal({ example: '50.00' })
  deductibleUsed: string;

  @OutFlag({ description: 'A person stated who pays what; else it was worked out.' })
  stated: boolean;

  @OutText({ nullable: true })
  note: string | null;

  @OutId({ nullable: true, description: 'The earlier record of the restoration it replaces.' })
  replacesId: string | null;

  @OutFlag({ description: 'False: a later record replaced it.' })
  current: boolean;

  @OutFlag({ description: 'Of a visit that was reversed: in no report.' })
  visitReversed: boolean;

  @OutText()
  recordedBy: string;

  @OutInstant()
  recordedAt: string;
}

export class ChargePageDto {
  @OutList(() => ChargeDto)
  items: readonly ChargeDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}

export class ChargeTotalsDto {
  @OutDecimal()
  fee: string;

  @OutDecimal()
  planPays: string;

  @OutDecimal()
  patientPays: string;

  @OutDecimal()
  writeOff: string;
}

export class PlanLeftDto {
  @OutObject(() => QuoteNameDto)
  plan: QuoteNameDto;

  @OutDate({ description: 'The day of the figure that was recorded as told.' })
  asOf: string;

  @OutDecimal({ description: 'After the charges of this visit. Nothing is recorded by that.' })
  deductibleLeft: string;

  @OutDecimal({ nullable: true, description: 'Null: the plan has no yearly maximum.' })
  maximumLeft: string | null;
}

export class ShareDto extends ChargeTotalsDto {
  @OutId()
  restorationId: string;

  @OutText({ nullable: true })
  feeCode: string | null;

  @OutObject(() => QuoteNameDto, { nullable: true })
  plan: QuoteNameDto | null;

  @OutDecimal()
  deductibleUsed: string;

  @OutFlag()
  stated: boolean;

  @OutId({ nullable: true, description: 'The record that this one would replace.' })
  replacesId: string | null;
}

export class ChargesPreviewDto {
  @OutId()
  visitId: string;

  @OutList(() => ShareDto)
  charges: ShareDto[];

  @OutObject(() => ChargeTotalsDto)
  totals: ChargeTotalsDto;

  @OutList(() => PlanLeftDto, { description: 'Of every plan that is asked and was told of.' })
  left: PlanLeftDto[];
}

export class ChargesDto {
  @OutId()
  visitId: string;

  @OutList(() => ChargeDto, { description: 'What counts now for the visit, tooth by tooth.' })
  charges: ChargeDto[];

  @OutObject(() => ChargeTotalsDto)
  totals: ChargeTotalsDto;

  @OutList(() => PlanLeftDto, { description: 'Of every plan that is asked and was told of.' })
  left: PlanLeftDto[];
}
