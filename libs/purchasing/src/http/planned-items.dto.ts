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
import { StockConsumableDto } from '#lib/stock';
import { ProposalDto } from './proposals.dto.js';

/** What comes next of a consumable, the most urgent first. */
export const NEXT_STEPS = [
  'order now',
  'held back',
  'no offer',
  'order later',
  'nothing expected',
] as const;
export type NextStep = (typeof NEXT_STEPS)[number];

export class PlannedItemDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutChoice(['smooth', 'erratic', 'intermittent', 'lumpy'], {
    nullable: true,
    description: 'By how often and how evenly it is used (days); null without use.',
  })
  demandClass: string | null;

  @OutFlag({ description: 'Its silence is too long for chance: the forecast fades.' })
  diedOut: boolean;

  @OutDecimal({ description: 'Expected use of the seven days from today on.' })
  useInWeek: string;

  @OutDecimal()
  usable: string;

  @OutDecimal()
  onOrder: string;

  @OutDecimal()
  owed: string;

  @OutDecimal({ description: 'Usable and on order, less what is owed.' })
  position: string;

  @OutWhole({ description: 'Days at mean use until the shelf is empty; at most ten years.' })
  runsOutInDays: number;

  @OutDecimal({ nullable: true, description: 'Null: nobody says how it is bought.' })
  reorderPoint: string | null;

  @OutDecimal({ nullable: true })
  orderUpTo: string | null;

  @OutFlag({ description: 'Levels set by hand replace the reckoned ones.' })
  byHand: boolean;

  @OutChoice(NEXT_STEPS, { description: 'held back: due, but a limit stops it.' })
  next: NextStep;

  @OutWhole({ nullable: true, description: 'Days at mean use until it is due; 0: now.' })
  dueInDays: number | null;

  @OutWhole({ description: 'Packs that are due now, before the order is filled up.' })
  packs: number;

  @OutText({ nullable: true })
  supplierName: string | null;
}

export class PlannedItemListDto {
  @OutDate({ description: 'Today in the practice.' })
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutList(() => PlannedItemDto, { description: 'All active consumables, by name.' })
  items: PlannedItemDto[];
}

export class PlannedItemAnswerDto {
  @OutDate({ description: 'Today in the practice.' })
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutObject(() => PlannedItemDto)
  item: PlannedItemDto;

  @OutObject(() => ProposalDto, {
    description: 'The policy in figures, due or not; packs: what alone it would order now.',
  })
  policy: ProposalDto;
}
