import { CostReportQueryDto } from '#lib/costing';
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

export class ContributionQueryDto extends CostReportQueryDto {}

export class ContributionFiguresDto {
  @OutWhole({ example: 38, description: 'In the sums: with a recorded charge or a listed fee.' })
  restorations: number;

  @OutWhole({ example: 30, description: 'Of these, with a recorded charge.' })
  charged: number;

  @OutWhole({ example: 8, description: 'Of these, counted at the fee list: see feeListIncome.' })
  fromFeeList: number;

  @OutDecimal({ example: '8740.00' })
  fee: string;

  @OutDecimal({ example: '4210.00' })
  planPays: string;

  @OutDecimal({ example: '4130.00' })
  patientPays: string;

  @OutDecimal({ example: '400.00' })
  writeOff: string;

  @OutDecimal({ example: '8340.00', description: 'What plan and patient pay.' })
  income: string;

  @OutDecimal({ example: '488.30' })
  material: string;

  @OutDecimal({ example: '7851.70', description: 'Income less material.' })
  contribution: string;

  @OutWhole({ example: 1620, description: 'Chair minutes.' })
  minutes: number;

  @OutDecimal({ nullable: true, example: '290.80', description: 'Null without chair minutes.' })
  contributionPerHour: string | null;

  @OutDecimal({ nullable: true, example: '206.62', description: 'Of one restoration.' })
  mean: string | null;

  @OutDecimal({ nullable: true, description: 'One in ten contributes this or less.' })
  p10: string | null;

  @OutDecimal({ nullable: true, description: 'Half contribute this or less.' })
  p50: string | null;

  @OutDecimal({ nullable: true, description: 'Nine in ten contribute this or less.' })
  p90: string | null;

  @OutDecimal({ description: 'The part of income that nobody recorded: taken from the fee list.' })
  feeListIncome: string;

  @OutDecimal({ description: 'The part of material that those restorations used.' })
  feeListMaterial: string;

  @OutDecimal({ description: 'The part of the contribution that rests on the fee list.' })
  feeListContribution: string;

  @OutWhole({ description: 'With neither a charge nor a listed fee: in none of the sums above.' })
  withoutFee: number;

  @OutDecimal({
    description: 'What those used; with material it adds up to the report of restoration costs.',
  })
  withoutFeeMaterial: string;
}

export class ContributionRowDto extends ContributionFiguresDto {
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

export class ContributionReportDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutTexts({ example: ['template'] })
  groupBy: string[];

  @OutList(() => ContributionRowDto)
  rows: ContributionRowDto[];

  @OutObject(() => ContributionFiguresDto, {
    description: 'The rows add up to this, to the cent; mean and percentiles are of all together.',
  })
  totals: ContributionFiguresDto;
}
