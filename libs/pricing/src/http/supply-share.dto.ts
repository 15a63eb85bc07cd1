import { PeriodQueryDto } from '#lib/costing';
import {
  ChoiceField,
  OutChoice,
  OutDecimal,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';

export const SHARE_BASES = ['fees', 'income'] as const;

export class SupplyShareQueryDto extends PeriodQueryDto {
  @ChoiceField(SHARE_BASES, {
    optional: true,
    description: 'Of what: fees, or income (fees less write-off); fees when left out.',
  })
  shareOf?: (typeof SHARE_BASES)[number];
}

export class SupplyFiguresDto {
  @OutWhole({ description: 'With a recorded charge or a listed fee.' })
  restorations: number;

  @OutWhole()
  charged: number;

  @OutWhole({ description: 'Counted at the fee list.' })
  fromFeeList: number;

  @OutWhole({ description: 'With neither: not in fees, income and material.' })
  withoutFee: number;

  @OutDecimal({ example: '8740.00' })
  fees: string;

  @OutDecimal({ example: '400.00' })
  writeOff: string;

  @OutDecimal({ example: '8340.00', description: 'What plan and patient pay.' })
  income: string;

  @OutDecimal({ description: 'The part of the fees that nobody recorded.' })
  feeListFees: string;

  @OutDecimal({ example: '488.30', description: 'What those restorations used.' })
  material: string;

  @OutDecimal({ nullable: true, example: '0.0559', description: 'Null where there is no fee.' })
  materialShare: string | null;

  @OutDecimal({ description: 'What the restorations without a fee used.' })
  withoutFeeMaterial: string;

  @OutDecimal({ example: '612.40', description: 'Deliveries of the month, with freight.' })
  bought: string;

  @OutDecimal({ nullable: true, example: '0.0701' })
  boughtShare: string | null;

  @OutDecimal({
    example: '21.30',
    description: 'Written off. What is left over at the chair is part of material.',
  })
  waste: string;

  @OutDecimal({ nullable: true, example: '0.0024' })
  wasteShare: string | null;
}

export class SupplyMonthDto extends SupplyFiguresDto {
  @OutText({ example: '2026-05' })
  month: string;
}

export class SupplyShareDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutChoice(SHARE_BASES)
  shareOf: (typeof SHARE_BASES)[number];

  @OutList(() => SupplyMonthDto, { description: 'The latest month first.' })
  rows: SupplyMonthDto[];

  @OutObject(() => SupplyFiguresDto)
  totals: SupplyFiguresDto;
}
