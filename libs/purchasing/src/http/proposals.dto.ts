import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto, StockSupplierDto } from '#lib/stock';
import { DISCOUNTS } from '../domain/planning/planning-settings.js';
import {
  type BasketChoice,
  FIGURE_NAMES,
  ORDER_BOUNDS,
  PROPOSAL_FLAGS,
} from '../domain/policy/index.js';
import { AssumedDto, QuantileDto } from './forecast.dto.js';
import { PriceStepDto, SupplierLeadDto } from './supply-terms.dto.js';

export class ProposalFigureDto {
  @OutChoice(FIGURE_NAMES)
  name: string;

  @OutDecimal()
  value: string;

  @OutText({ example: 'g', description: 'Stock unit, currency, days, packs, orders, or share.' })
  unit: string;
}

export class OfferNameDto {
  @OutId({ description: 'The presentation.' })
  id: string;

  @OutText()
  name: string;
}

export class ProposalOfferDto extends OfferNameDto {
  @OutDecimal({ description: 'Stock units in a pack.' })
  packContent: string;

  @OutWhole({ description: 'The fewest packs that the supplier sends.' })
  minimumPacks: number;

  @OutChoice(DISCOUNTS)
  discount: string;

  @OutList(() => PriceStepDto, { description: 'From 1 pack upwards; empty: nobody knows.' })
  prices: PriceStepDto[];
}

const SUBSTITUTE_KINDS = ['another pack', 'another shade', 'another consumable'] as const;

export class SubstituteDto {
  @OutChoice(SUBSTITUTE_KINDS, {
    description: 'another consumable: somebody said that it may stand in.',
  })
  kind: (typeof SUBSTITUTE_KINDS)[number];

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => OfferNameDto, {
    nullable: true,
    description: 'Its cheapest, or the other pack.',
  })
  presentation: OfferNameDto | null;

  @OutText({ nullable: true })
  supplierName: string | null;

  @OutDecimal({ nullable: true, description: 'Stock units in a pack.' })
  packContent: string | null;

  @OutDecimal({ nullable: true })
  packPrice: string | null;

  @OutDecimal({ nullable: true, description: 'Price of a stock unit.' })
  unitPrice: string | null;

  @OutDecimal({ description: 'Usable on hand above its own reorder point.' })
  spare: string;

  @OutText({ nullable: true, description: 'What the person wrote who said so.' })
  note: string | null;
}

export class ShelfOutlookDto {
  @OutDecimal({ description: 'Chance that something is missing before the horizon.' })
  stockOutChance: string;

  @OutDecimal()
  short: string;

  @OutDecimal()
  wasted: string;

  @OutDecimal()
  averageStock: string;
}

export class TypedInLevelsDto {
  @OutDecimal({ nullable: true })
  reorderAt: string | null;

  @OutDecimal({ nullable: true })
  reorderUpTo: string | null;

  @OutFlag({ description: 'Whether these levels alone would ask for an order now.' })
  asksForOrder: boolean;

  @OutWhole({ nullable: true, description: 'Packs that they would order; null without an order.' })
  packs: number | null;
}

export class ProposalDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => ProposalOfferDto, { nullable: true })
  presentation: ProposalOfferDto | null;

  @OutObject(() => StockSupplierDto, { nullable: true })
  supplier: StockSupplierDto | null;

  @OutText({ example: 'at or below the reorder point' })
  reason: string;

  @OutWhole({ description: 'Packs in the order.' })
  packs: number;

  @OutWhole({ description: 'How many of them are taken early to fill the order.' })
  added: number;

  @OutDecimal({ description: 'In stock units.' })
  quantity: string;

  @OutDecimal({ nullable: true, description: 'Null when the price is not known.' })
  total: string | null;

  @OutDecimal({ description: 'Usable on hand and on its way, less what is owed to visits.' })
  position: string;

  @OutDecimal({ nullable: true })
  reorderPoint: string | null;

  @OutDecimal({ nullable: true })
  orderUpTo: string | null;

  @OutText()
  sentence: string;

  @OutList(() => ProposalFigureDto)
  figures: ProposalFigureDto[];

  @OutTexts({ description: `Any of: ${PROPOSAL_FLAGS.join('; ')}.` })
  flags: string[];

  @OutTexts({ description: `Any of: ${ORDER_BOUNDS.join('; ')}.` })
  bounds: string[];

  @OutTexts({ description: 'What the forecast took for granted, a sentence each.' })
  assumptions: string[];

  @OutList(() => AssumedDto, { description: 'The same in figures.' })
  assumed: AssumedDto[];

  @OutDecimal({ description: 'Expected to expire of all that is there, without the order.' })
  wasteBefore: string;

  @OutDecimal({ description: 'The same with what is due of the order.' })
  wasteAfter: string;

  @OutWhole({ description: 'Days at mean use until the shelf is empty.' })
  runsOutInDays: number;

  @OutWhole({ nullable: true, description: 'Days until it is due; null when it is never bought.' })
  neededInDays: number | null;

  @OutWhole({ description: 'Days that before and after look ahead.' })
  horizonDays: number;

  @OutObject(() => ShelfOutlookDto)
  before: ShelfOutlookDto;

  @OutObject(() => ShelfOutlookDto)
  after: ShelfOutlookDto;

  @OutList(() => QuantileDto, { description: 'Use over lead time and review.' })
  use: QuantileDto[];

  @OutObject(() => SupplierLeadDto, { nullable: true, description: 'How long goods take.' })
  lead: SupplierLeadDto | null;

  @OutList(() => SubstituteDto, { description: 'What a person could take instead.' })
  substitutes: SubstituteDto[];

  @OutObject(() => TypedInLevelsDto, { description: 'The levels typed in at the consumable.' })
  typedIn: TypedInLevelsDto;
}

export const SHAPINGS = [
  'left out for the budget',
  'filled up to the minimum order',
  'minimum order not reached',
  'filled up to free freight',
  'freight is cheaper than filling up',
  'free freight not within reach',
] as const satisfies readonly BasketChoice['choice'][];

export class ShapingDto {
  @OutChoice(SHAPINGS)
  choice: (typeof SHAPINGS)[number];

  @OutObject(() => StockConsumableDto, { nullable: true, description: 'What was left out.' })
  consumable: StockConsumableDto | null;

  @OutWhole({ nullable: true, description: 'Packs left out.' })
  packs: number | null;

  @OutDecimal({ nullable: true, description: 'What was or is missing to the limit.' })
  missing: string | null;

  @OutDecimal({ nullable: true })
  freight: string | null;

  @OutDecimal({
    nullable: true,
    description: 'Keeping and expected waste of what is bought early.',
  })
  costOfFilling: string | null;
}

export class BasketDto {
  @OutObject(() => StockSupplierDto, { nullable: true, description: 'Null: nobody said who.' })
  supplier: StockSupplierDto | null;

  @OutChoice(['ready', 'below the minimum order'])
  status: string;

  @OutDecimal()
  goods: string;

  @OutDecimal()
  freight: string;

  @OutDecimal()
  total: string;

  @OutDecimal({ nullable: true, description: 'Least value of goods that the supplier asks for.' })
  minimumOrder: string | null;

  @OutDecimal({ description: 'What the way costs where it is not free.' })
  usualFreight: string;

  @OutDecimal({ nullable: true, description: 'Value of goods from which freight is free.' })
  freeFreightFrom: string | null;

  @OutTexts({ description: 'What shaped the order, a sentence each.' })
  choices: string[];

  @OutList(() => ShapingDto, { description: 'The same in figures.' })
  shaped: ShapingDto[];

  @OutList(() => ProposalDto)
  lines: ProposalDto[];
}

export class ProposalListDto {
  @OutDate({ description: 'Today in the practice.' })
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutWhole({ description: 'Consumables looked at.' })
  looked: number;

  @OutDecimal({
    nullable: true,
    description: 'What the budget of the month still allows; the orders keep to it. Null: any.',
  })
  budgetLeft: string | null;

  @OutList(() => BasketDto, { description: 'One order per supplier.' })
  orders: BasketDto[];

  @OutList(() => ProposalDto, {
    description: 'Due, but in no order: nobody says how it is bought, or a limit stops it.',
  })
  stuck: ProposalDto[];
}
