import { REASONS } from '#lib/dentition';
import {
  OutChoice,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';

export class CategoryCostDto {
  @OutText({ example: 'paste' })
  category: string;

  @OutDecimal({ example: '412.18' })
  cost: string;
}

export class CostFiguresDto {
  @OutWhole({ example: 38 })
  restorations: number;

  @OutWhole({ example: 30, description: 'Visits in which these restorations were placed.' })
  visits: number;

  @OutDecimal({ example: '488.30' })
  total: string;

  @OutDecimal({ example: '12.85' })
  mean: string;

  @OutDecimal({ example: '6.10' })
  min: string;

  @OutDecimal({ example: '7.90', description: 'One in ten cost this or less.' })
  p10: string;

  @OutDecimal({ example: '12.00', description: 'Half cost this or less.' })
  p50: string;

  @OutDecimal({ example: '19.40', description: 'Nine in ten cost this or less.' })
  p90: string;

  @OutDecimal({ example: '24.75' })
  max: string;

  @OutDecimal({ description: 'Of lines that belong to one restoration.' })
  ownCost: string;

  @OutDecimal({ description: 'Of lines shared by a tooth or a visit.' })
  sharedCost: string;

  @OutDecimal({ description: 'The part of the total that was done again.' })
  retakeCost: string;

  @OutList(() => CategoryCostDto, { description: 'Adds up to the total.' })
  categories: CategoryCostDto[];
}

export class CostReportRowDto extends CostFiguresDto {
  @OutId({ nullable: true, description: 'Null when not grouped by template.' })
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

export class CostReportDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutTexts({ example: ['template'] })
  groupBy: string[];

  @OutList(() => CostReportRowDto)
  rows: CostReportRowDto[];

  @OutObject(() => CostFiguresDto, { description: 'The rows add up to this, to the cent.' })
  totals: CostFiguresDto;

  @OutDecimal({
    nullable: true,
    description:
      'What those visits cost: the same as the total. Null when the report shows parts of visits.',
  })
  visitsMaterialCost: string | null;
}
