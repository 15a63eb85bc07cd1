import {
  DecimalField,
  IdField,
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
  WholeField,
} from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';
import { SERVICE_MEASURES } from '../../domain/policy/index.js';

export class ServiceQueryDto {
  @IdField({ optional: true, description: 'One consumable; the whole shelf if left out.' })
  consumableId?: string;
}

export class ItemLevelsDto {
  @OutDecimal()
  reorderPoint: string;

  @OutDecimal()
  orderUpTo: string;

  @OutDecimal({ description: 'Mean over the days to come.' })
  averageStock: string;

  @OutDecimal({ description: 'Expected to expire.' })
  wasted: string;

  @OutDecimal({ description: 'Expected share of the use that is met from the shelf.' })
  fillRate: string;
}

export class ServicePointDto {
  @OutDecimal({ nullable: true, description: 'Null: items with different levels.' })
  level: string | null;

  @OutDecimal({ nullable: true, description: 'Average value of the stock; null: no price known.' })
  stockValue: string | null;

  @OutDecimal({ nullable: true, description: 'Value of what is expected to expire.' })
  wastedValue: string | null;

  @OutDecimal({ description: 'Times that something runs out while it is wanted.' })
  stockOuts: string;

  @OutObject(() => ItemLevelsDto, { nullable: true, description: 'Null for the whole shelf.' })
  item: ItemLevelsDto | null;
}

export class ServiceCurveDto {
  @OutDate({ description: 'Today in the practice: the first day looked at.' })
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutObject(() => StockConsumableDto, { nullable: true, description: 'Null: the whole shelf.' })
  consumable: StockConsumableDto | null;

  @OutChoice(SERVICE_MEASURES, {
    description: 'What the level is of; items of a shelf may have another measure of their own.',
  })
  measure: string;

  @OutWhole({ description: 'Days followed from the stock that is there.' })
  horizonDays: number;

  @OutWhole({ description: 'Items that are on the curve.' })
  items: number;

  @OutWhole({ description: 'Items without a price: in the stock-outs, not in the values.' })
  itemsWithoutPrice: number;

  @OutObject(() => ServicePointDto, {
    nullable: true,
    description: 'The settings in force, with levels set by hand; null when nothing can be bought.',
  })
  now: ServicePointDto | null;

  @OutList(() => ServicePointDto, {
    description: 'By rising level, levels set by hand left aside.',
  })
  points: ServicePointDto[];
}

export class BulkQuestionDto {
  @IdField()
  consumableId: string;

  @IdField({ description: 'The presentation that is offered.' })
  presentationId: string;

  @WholeField(1, 100_000)
  packs: number;

  @DecimalField({ min: '0', example: '18.50' })
  packPrice: string;
}

export class SavingRangeDto {
  @OutDecimal({ description: 'Only one time in ten is it less.' })
  p10: string;

  @OutDecimal()
  p50: string;

  @OutDecimal({ description: 'Only one time in ten is it more.' })
  p90: string;
}

export class BulkAnswerDto {
  @OutDate()
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutId({ description: 'The presentation that is usually bought; what it is compared with.' })
  usualPresentationId: string;

  @OutDecimal({ description: 'In stock units.' })
  quantity: string;

  @OutDecimal()
  total: string;

  @OutDecimal({ description: 'The same quantity at the usual price.' })
  usualTotal: string;

  @OutDecimal({ description: 'What the price list promises.' })
  paperSaving: string;

  @OutDecimal({ description: 'What is left of it once waste, keeping and orders are counted.' })
  realSaving: string;

  @OutObject(() => SavingRangeDto, { description: 'The real saving by how much is used in time.' })
  savingRange: SavingRangeDto;

  @OutDecimal()
  expectedWaste: string;

  @OutDecimal()
  wasteCost: string;

  @OutDecimal({ description: 'What keeping more for longer costs.' })
  extraKeeping: string;

  @OutDecimal({ description: 'Orders that are not needed in the meantime.' })
  savedOrders: string;

  @OutDecimal({ nullable: true, description: 'Price of a stock unit that is really used.' })
  costPerUsedUnit: string | null;

  @OutDecimal({ description: 'Chance that all of it is used before it expires.' })
  chanceUsedUp: string;

  @OutWhole({ description: 'Days that it lasts at mean use; at most ten years.' })
  coverDays: number;

  @OutWhole({ description: 'Days that what is there now lasts: it goes first.' })
  coverAheadDays: number;

  @OutWhole({ nullable: true, description: 'Days until it would expire; null: it does not.' })
  usableDays: number | null;

  @OutFlag({ description: 'Whether it saves anything on average.' })
  worthIt: boolean;
}
