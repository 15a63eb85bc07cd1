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
import { FIGURE_NAMES, ORDER_BOUNDS, PROPOSAL_FLAGS } from '../domain/policy/index.js';

export class ProposalFigureDto {
  @OutChoice(FIGURE_NAMES)
  name: string;

  @OutDecimal()
  value: string;

  @OutText({ example: 'g', description: 'Stock unit, currency, days, packs, or share.' })
  unit: string;
}

export class ProposalOfferDto {
  @OutId({ description: 'The presentation.' })
  id: string;

  @OutText()
  name: string;
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

  @OutDecimal({ description: 'Usable on hand less what is owed to visits.' })
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

  @OutDecimal({ description: 'Expected to expire of all that is there, without the order.' })
  wasteBefore: string;

  @OutDecimal({ description: 'The same with what is due of the order.' })
  wasteAfter: string;

  @OutWhole({ description: 'Days at mean use until the shelf is empty.' })
  runsOutInDays: number;

  @OutWhole({ description: 'Days that before and after look ahead.' })
  horizonDays: number;

  @OutObject(() => ShelfOutlookDto)
  before: ShelfOutlookDto;

  @OutObject(() => ShelfOutlookDto)
  after: ShelfOutlookDto;

  @OutObject(() => TypedInLevelsDto, { description: 'The levels typed in at the consumable.' })
  typedIn: TypedInLevelsDto;
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

  @OutTexts({ description: 'What shaped the order, a sentence each.' })
  choices: string[];

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

  @OutList(() => BasketDto, { description: 'One order per supplier.' })
  orders: BasketDto[];

  @OutList(() => ProposalDto, {
    description: 'Due, but in no order: nobody says how it is bought, or a limit stops it.',
  })
  stuck: ProposalDto[];
}
