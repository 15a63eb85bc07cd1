import {
  ChoiceField,
  ChoiceListField,
  DateField,
  DecimalField,
  ListField,
  OutChoice,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutWhole,
  TextField,
  WholeField,
} from '#lib/platform';
import { MOST_CLOSURES } from '../domain/planning/closures.js';
import {
  DISCOUNTS,
  type Discount,
  WEEKDAYS,
  type Weekday,
} from '../domain/planning/planning-settings.js';
import { MOST_PRICES } from '../domain/planning/price-list.js';

export class ClosureDto {
  @DateField()
  firstDay: string;

  @DateField({ description: 'Included; the first day itself for a single day.' })
  lastDay: string;

  @TextField(200, { optional: true, example: 'Turn of the year' })
  note?: string | null;
}

export class LeadChanceDto {
  @OutWhole({ description: 'Working days of the supplier, or calendar days: as the list says.' })
  days: number;

  @OutDecimal({ example: '0.35' })
  chance: string;
}

export class SupplierLeadDto {
  @OutWhole({ description: 'Working days as stated.' })
  statedDays: number;

  @OutChoice(['supplier', 'practice'], {
    description: 'Whose word that is: the terms of the supplier, or the setting of the practice.',
  })
  statedBy: string;

  @OutWhole({ description: 'Orders of the last two years from which it was seen.' })
  orders: number;

  @OutWhole({ description: 'How many of them have not come in full.' })
  open: number;

  @OutDecimal({ description: 'How much the stated time still weighs, 1 without any order.' })
  assumed: string;

  @OutDecimal({ description: 'Mean in working days.' })
  mean: string;

  @OutWhole({ description: 'Working days within which nine of ten deliveries come.' })
  p90: number;

  @OutList(() => LeadChanceDto, { description: 'Chances of the working days.' })
  workingDays: LeadChanceDto[];

  @OutList(() => LeadChanceDto, { description: 'Calendar days, for an order of today.' })
  fromToday: LeadChanceDto[];
}

export class SupplyTermsDto {
  @WholeField(0, 250, {
    optional: true,
    description: 'Working days until a delivery, as stated. Null: as the practice has it.',
  })
  leadDays?: number | null;

  @DecimalField({ min: '0', optional: true, description: 'Null: as the practice has it.' })
  orderCost?: string | null;

  @DecimalField({ min: '0', optional: true, description: 'Least value of the goods of an order.' })
  minimumOrder?: string | null;

  @DecimalField({ min: '0', example: '7.90' })
  freight: string;

  @DecimalField({ min: '0', optional: true, description: 'Value from which freight is free.' })
  freeFreightFrom?: string | null;

  @ChoiceListField(WEEKDAYS, { min: 1, description: 'Days on which the supplier works.' })
  workingDays: Weekday[];

  @ListField(() => ClosureDto, {
    ...{ min: 0, max: MOST_CLOSURES, optional: true },
    description: 'Days on which it is closed besides, in any order. Left out: none.',
  })
  closures?: ClosureDto[];
}

export class SupplyTermsAnswerDto {
  @OutId()
  supplierId: string;

  @OutObject(() => SupplyTermsDto)
  terms: SupplyTermsDto;

  @OutObject(() => SupplierLeadDto, { description: 'What planning makes of it today.' })
  lead: SupplierLeadDto;
}

export class PriceStepDto {
  @WholeField(1, 100_000, { description: 'From so many packs upwards.' })
  fromPacks: number;

  @DecimalField({ min: '0', scale: 6, example: '46.00' })
  packPrice: string;
}

export class PresentationTermsDto {
  @WholeField(1, 100_000, { description: 'The fewest packs that the supplier sends.' })
  minimumPacks: number;

  @ChoiceField(DISCOUNTS, {
    description:
      'all units: every pack at the price of the number reached; ' +
      'incremental: only the packs beyond a step at its price.',
  })
  discount: Discount;

  @ListField(() => PriceStepDto, {
    ...{ min: 0, max: MOST_PRICES },
    description:
      'The price list, from 1 pack upwards and falling. Empty: the price last paid, or else the ' +
      'list price, for any number.',
  })
  prices: PriceStepDto[];
}

export class PresentationTermsAnswerDto {
  @OutId()
  presentationId: string;

  @OutObject(() => PresentationTermsDto)
  terms: PresentationTermsDto;
}
