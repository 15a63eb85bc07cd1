import { TOOTH_NOTATIONS, type ToothNotation } from '#lib/dentition';
import {
  ChoiceField,
  COST_SHARE_KEYS,
  type CostShareKey,
  DateField,
  DecimalField,
  FlagField,
  IdField,
  ListField,
  ObjectField,
  TextField,
  WholeField,
} from '#lib/platform';
import { RestorationDto } from '#lib/procedures';
import { WAYS, type WayKind } from '../domain/ways.js';

export class QuotedRestorationDto extends RestorationDto {
  @TextField(40, {
    optional: true,
    description: "One of the practice's own codes. Left out: the fee of its template and reason.",
  })
  feeCode?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    description: 'What is asked for it. Left out: what the fee comes to on the day.',
    example: '250',
  })
  fee?: string | null;

  @FlagField({
    optional: true,
    description: 'Leaves out what its template plans for anaesthesia.',
  })
  withoutAnaesthetic?: boolean | null;
}

export class StatedBalanceDto {
  @DecimalField({ min: '0', example: '50' })
  deductibleLeft: string;

  @DecimalField({ optional: true, min: '0', description: 'Left out: the plan has no maximum.' })
  maximumLeft?: string | null;
}

export class QuoteQuestionDto {
  @TextField(60, {
    optional: true,
    description: 'The chart reference and nothing else about the patient.',
  })
  chartReference?: string | null;

  @IdField({ optional: true, description: "The patient's plan; none when left out." })
  planId?: string | null;

  @ObjectField(() => StatedBalanceDto, {
    optional: true,
    description: 'What is left of the year; what was recorded for the chart when left out.',
  })
  balance?: StatedBalanceDto | null;

  @DateField({
    optional: true,
    description: 'Fees, terms and what is left are those of this day; today when left out.',
  })
  quotedOn?: string | null;

  @IdField({ optional: true, description: 'Where the work would be done; only named.' })
  locationId?: string | null;

  @ListField(() => QuotedRestorationDto, { min: 1, max: 32 })
  restorations: QuotedRestorationDto[];

  @DecimalField({
    optional: true,
    min: '0',
    max: '1000000',
    description: 'What an hour at the chair shall leave after material.',
    example: '300',
  })
  targetContributionPerHour?: string | null;

  @DecimalField({
    optional: true,
    min: '0',
    max: '100000',
    description: "The capacity cost of a chair minute; the practice's own rate when left out.",
    example: '2.5',
  })
  chairMinuteCost?: string | null;

  @WholeField(0, 240, {
    optional: true,
    description: 'Getting ready and clearing away, for every visit; not counted when left out.',
    example: 10,
  })
  setUpMinutes?: number | null;

  @WholeField(1, 10, { optional: true, description: 'People at the chair, 2 when left out.' })
  staffCount?: number | null;

  @ChoiceField(COST_SHARE_KEYS, {
    optional: true,
    description: "How shared cost is split; the practice's setting when left out.",
  })
  costShareKey?: CostShareKey | null;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "The practice's own when left out.",
  })
  toothNotation?: ToothNotation | null;
}

export class EstimateQuestionDto extends QuoteQuestionDto {
  @ChoiceField(WAYS, {
    optional: true,
    description: 'The way of doing the work that is printed; all in one visit when left out.',
  })
  way?: WayKind | null;
}

export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

export class EstimateQueryDto {
  @ChoiceField(LANGUAGES, { optional: true, description: 'English when left out.' })
  language?: Language;
}
