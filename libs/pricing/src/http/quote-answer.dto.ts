import { ApiProperty } from '@nestjs/swagger';
import { TOOTH_NOTATIONS } from '#lib/dentition';
import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { FEE_CEILINGS } from '../domain/plan-share.js';
import { WAYS } from '../domain/ways.js';
import { QuotedRestorationAnswerDto, QuoteNameDto } from './quoted-restoration.dto.js';

export class QuotedConsumableDto extends QuoteNameDto {
  @OutText({ nullable: true })
  shade: string | null;

  @OutText({ example: 'piece' })
  unit: string;
}

export class QuotedPlanDto extends QuoteNameDto {
  @OutFlag()
  inNetwork: boolean;

  @OutChoice(FEE_CEILINGS)
  feeCeiling: string;

  @OutText({ description: 'Who states the ceiling.' })
  ceilingSource: string;

  @OutDate()
  ceilingCheckedOn: string;

  @OutFlag({ description: 'Whether the patient may be billed what a downgrade leaves unpaid.' })
  downgradeBilled: boolean;

  @OutDecimal()
  deductibleLeft: string;

  @OutDecimal({ nullable: true, description: 'Null: the plan has no yearly maximum.' })
  maximumLeft: string | null;

  @OutDate({ nullable: true, description: 'When that was so; null: stated with the question.' })
  leftAsOf: string | null;
}

export class QuotedLineDto {
  @OutWhole({ description: 'Position of the restoration, 0 is the first.' })
  restoration: number;

  @OutWhole({ description: 'The visit in which it is made, 0 is the first.' })
  visit: number;

  @OutDecimal()
  fee: string;

  @OutDecimal()
  planPays: string;

  @OutDecimal()
  patientPays: string;

  @OutDecimal()
  writeOff: string;

  @OutDecimal({ description: 'What of the deductible this line uses up.' })
  deductibleUsed: string;

  @OutFlag({ description: 'Whether the plan covers it, given its reason.' })
  covered: boolean;

  @OutFlag({ description: 'Covered, but nothing is left of the yearly maximum.' })
  exhausted: boolean;

  @OutDecimal({ description: 'Its own material and its share of what visit and tooth use.' })
  material: string;

  @OutDecimal({ description: 'What it would use in a visit of its own.' })
  materialAlone: string;

  @OutWhole()
  minutes: number;

  @OutDecimal({
    nullable: true,
    description: 'The most that plan and patient may be asked together; null: no limit.',
  })
  incomeLimit: string | null;

  @OutDecimal({
    nullable: true,
    description:
      'The lowest fee that leaves the wished contribution per hour, rounded up. Null: none was ' +
      'wished, or no fee reaches it because of incomeLimit.',
  })
  lowestFee: string | null;
}

export class QuotedVisitDto {
  @ApiProperty({
    type: 'array',
    items: { type: 'integer' },
    description: 'Positions of its restorations, 0 is the first.',
  })
  restorations: readonly number[];

  @OutWhole({ description: 'With set-up, where that was stated.' })
  minutes: number;

  @OutDecimal()
  material: string;
}

export class RangeDto {
  @OutDecimal({ description: 'One in ten is below.' })
  p10: string;

  @OutDecimal()
  p50: string;

  @OutDecimal({ description: 'One in ten is above.' })
  p90: string;
}

export class RepeatedUseDto {
  @OutObject(() => QuotedConsumableDto)
  consumable: QuotedConsumableDto;

  @OutDecimal()
  quantity: string;

  @OutDecimal()
  cost: string;
}

export class QuotedWayDto {
  @OutChoice(WAYS)
  way: string;

  @OutList(() => QuotedVisitDto)
  visits: readonly QuotedVisitDto[];

  @OutList(() => QuotedLineDto)
  lines: readonly QuotedLineDto[];

  @OutDecimal()
  fee: string;

  @OutDecimal()
  planPays: string;

  @OutDecimal()
  patientPays: string;

  @OutDecimal({ description: 'planPays + patientPays + writeOff = fee.' })
  writeOff: string;

  @OutDecimal({ description: 'At the last known costs, single doses charged whole.' })
  material: string;

  @OutWhole({ description: 'Chair time of all its visits.' })
  minutes: number;

  @OutDecimal({ nullable: true, description: 'Null: the cost of a chair minute is not known.' })
  chairCost: string | null;

  @OutWhole({ description: 'Time of assistants for its restorations.' })
  assistantMinutes: number;

  @OutDecimal({ nullable: true, description: 'Null: no rate of assistants was entered.' })
  assistantCost: string | null;

  @OutDecimal({ description: 'What plan and patient pay, less material.' })
  contribution: string;

  @OutDecimal({ nullable: true, description: 'Null: no chair time is planned.' })
  contributionPerHour: string | null;

  @OutDecimal({ nullable: true, description: 'Contribution less the cost of chair time.' })
  afterChairTime: string | null;

  @OutDecimal({
    nullable: true,
    description: 'What plan and patient together would have to pay for the wished contribution.',
  })
  neededIncome: string | null;

  @OutWhole({ description: 'Fewest recorded restorations that one of its lines rests on.' })
  recorded: number;

  @OutText({ nullable: true, description: 'Why there is no range; null: there is one.' })
  rangeMissing: string | null;

  @OutObject(() => RangeDto, {
    nullable: true,
    description:
      "Material by the practice's own recorded spread: what restorations use themselves is " +
      'resampled 2000 times, what visits and teeth share is as planned.',
  })
  materialRange: RangeDto | null;

  @OutObject(() => RangeDto, { nullable: true })
  contributionRange: RangeDto | null;

  @OutList(() => RepeatedUseDto, { description: 'What it uses beyond all in one visit.' })
  repeated: readonly RepeatedUseDto[];

  @OutWhole({ nullable: true, description: 'Set-up minutes repeated; null: not known.' })
  repeatedMinutes: number | null;
}

export class QuoteDto {
  @OutDate()
  quotedOn: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutText({ nullable: true })
  chartReference: string | null;

  @OutObject(() => QuoteNameDto, { nullable: true })
  location: QuoteNameDto | null;

  @OutChoice(TOOTH_NOTATIONS)
  toothNotation: string;

  @OutObject(() => QuotedPlanDto, { nullable: true })
  plan: QuotedPlanDto | null;

  @OutDecimal({ nullable: true })
  chairMinuteCost: string | null;

  @OutDecimal({ nullable: true })
  targetContributionPerHour: string | null;

  @OutList(() => QuotedRestorationAnswerDto)
  restorations: readonly QuotedRestorationAnswerDto[];

  @OutList(() => QuotedConsumableDto, {
    description: 'Used, but no cost is known of it, so it counts as 0.',
  })
  unpriced: readonly QuotedConsumableDto[];

  @OutList(() => QuotedWayDto, { description: 'All in one visit comes first.' })
  ways: readonly QuotedWayDto[];
}
