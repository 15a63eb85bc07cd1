import { REASONS } from '#lib/dentition';
import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';

export class VarianceFiguresDto {
  @OutWhole({ example: 38 })
  restorations: number;

  @OutDecimal({ example: '488.302114', description: 'What the material really cost, exactly.' })
  actualCost: string;

  @OutDecimal({
    example: '451.20',
    description: 'What the templates plan for one attempt each, at the current prices.',
  })
  standardCost: string;

  @OutDecimal({ description: 'Actual less standard: price and usage variance together.' })
  difference: string;

  @OutChoice(['favourable', 'unfavourable', 'none'], {
    description: 'Favourable: it cost less than the standard, and the difference is negative.',
  })
  sense: string;

  @OutDecimal({ description: 'What was used, at what was paid less at the current price.' })
  priceVariance: string;

  @OutDecimal({ description: 'What was used less what was planned, at the current price.' })
  usageVariance: string;

  @OutDecimal({ description: 'Of what left stock and is in no tooth: charged less placed.' })
  wasteCost: string;

  @OutDecimal({ nullable: true, example: '0.3412', description: 'Of the actual cost.' })
  wasteShare: string | null;

  @OutDecimal({ description: 'Material of attempts after the first.' })
  retakeCost: string;

  @OutDecimal({ nullable: true, example: '0.0210', description: 'Of the actual cost.' })
  retakeShare: string | null;

  @OutDecimal({
    description: 'The cost in whole cents, as other reports show it, less the actual.',
  })
  rounding: string;
}

export class VarianceRowDto extends VarianceFiguresDto {
  @OutId({ nullable: true, description: 'Null when not grouped by restoration.' })
  restorationId: string | null;

  @OutId({ nullable: true })
  visitId: string | null;

  @OutDate({ nullable: true })
  visitedOn: string | null;

  @OutId({ nullable: true })
  templateId: string | null;

  @OutText({ nullable: true, example: 'Posterior filling' })
  templateName: string | null;

  @OutChoice(REASONS, { nullable: true })
  reason: string | null;

  @OutId({ nullable: true })
  dentistId: string | null;

  @OutText({ nullable: true })
  dentistName: string | null;

  @OutText({ nullable: true, example: '2026-05' })
  month: string | null;
}

export class VarianceReportDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutTexts({ example: ['template'] })
  groupBy: string[];

  @OutList(() => VarianceRowDto, {
    description: 'The dearest difference first; by restoration: so many as asked for.',
  })
  rows: VarianceRowDto[];

  @OutObject(() => VarianceFiguresDto)
  totals: VarianceFiguresDto;
}
