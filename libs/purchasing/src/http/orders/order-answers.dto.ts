import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto, StockPersonDto, StockSupplierDto } from '#lib/stock';
import { SENDING_WAYS } from '../../db/orders/orders.js';
import { ARRIVALS, ORDER_EVENTS, ORDER_STATES } from '../../domain/orders/order-life.js';

export class OrderSummaryDto {
  @OutId()
  id: string;

  @OutWhole({ description: 'Counted up in the practice.', example: 42 })
  number: number;

  @OutChoice(ORDER_STATES)
  state: string;

  @OutChoice(ARRIVALS, { description: 'How much of it has come.' })
  arrival: string;

  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutDecimal({ description: 'Goods and freight; lines without a price count as nothing.' })
  total: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutWhole()
  lineCount: number;

  @OutWhole({ description: 'Lines that still have to bring something.' })
  outstandingLines: number;

  @OutInstant()
  createdAt: string;

  @OutDate({ nullable: true, description: 'When it was sent.' })
  orderedOn: string | null;

  @OutDate({ nullable: true, description: "The supplier's word, or reckoned when it was sent." })
  expectedOn: string | null;

  @OutWhole({ nullable: true, description: 'Days past the expected one; null: it is not late.' })
  daysLate: number | null;
}

export class OrderPageDto {
  @OutList(() => OrderSummaryDto, { description: 'The latest number first.' })
  items: readonly OrderSummaryDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}

export class OrderSupplierDto extends StockSupplierDto {
  @OutText({ nullable: true, description: 'Where orders go.' })
  email: string | null;

  @OutText({ description: 'en or de: in which language the order is written.' })
  language: string;

  @OutText({ nullable: true, description: 'The number of the practice at the supplier.' })
  customerNumber: string | null;
}

export class OrderPackDto {
  @OutId()
  id: string;

  @OutText({ example: 'Box of 20 capsules' })
  name: string;

  @OutDecimal({ description: 'Stock units in a pack.' })
  content: string;

  @OutText({ nullable: true, description: 'What the supplier calls it.' })
  articleCode: string | null;

  @OutText({ nullable: true, description: 'As on the label of the pack.' })
  deviceIdentifier: string | null;
}

export class OrderFigureDto {
  @OutText()
  name: string;

  @OutText()
  value: string;

  @OutText({ description: 'Stock unit, currency, days, packs, or share.' })
  unit: string;
}

export class ProposedDto {
  @OutWhole()
  packs: number;

  @OutText({ description: 'Why, on the day of the proposal.' })
  sentence: string;

  @OutList(() => OrderFigureDto)
  figures: OrderFigureDto[];
}

export class OrderArrivalDto {
  @OutId()
  deliveryId: string;

  @OutDate()
  receivedOn: string;

  @OutWhole()
  packs: number;

  @OutDecimal({ description: 'Paid for a pack.' })
  packPrice: string;
}

export class OrderLineDto {
  @OutId()
  id: string;

  @OutWhole({ example: 1 })
  lineNumber: number;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => OrderPackDto)
  presentation: OrderPackDto;

  @OutWhole({ description: 'Ordered packs.' })
  packs: number;

  @OutDecimal({ nullable: true, description: 'Expected for a pack; null: not known.' })
  packPrice: string | null;

  @OutDecimal({ nullable: true })
  total: string | null;

  @OutObject(() => ProposedDto, { nullable: true, description: 'Null: nobody proposed it.' })
  proposed: ProposedDto | null;

  @OutWhole({ description: 'Packs that came with deliveries that stand.' })
  received: number;

  @OutWhole({ description: 'Packs that will not come.' })
  cancelled: number;

  @OutWhole({ description: 'Ordered = received + cancelled + outstanding, less what is surplus.' })
  outstanding: number;

  @OutWhole({ description: 'Packs that came and were not ordered.' })
  surplus: number;

  @OutList(() => OrderArrivalDto)
  arrivals: OrderArrivalDto[];
}

export class OrderEventDto {
  @OutId()
  id: string;

  @OutChoice(ORDER_EVENTS)
  kind: string;

  @OutInstant()
  at: string;

  @OutObject(() => StockPersonDto)
  by: StockPersonDto;

  @OutText({ nullable: true })
  note: string | null;

  @OutList(() => OrderFigureDto, { description: 'The numbers and words that belong to it.' })
  figures: OrderFigureDto[];
}

export class OrderLimitsDto {
  @OutDecimal({ nullable: true, description: 'By so much it is above what may be approved.' })
  overLimit: string | null;

  @OutDecimal({
    nullable: true,
    description: "By so much it is above what the month's budget has.",
  })
  overBudget: string | null;

  @OutDecimal({ nullable: true, description: 'Left of this month without it; null: no budget.' })
  budgetLeft: string | null;

  @OutText({ nullable: true, description: 'Why only somebody who may go over can approve it.' })
  inTheWay: string | null;
}

export class OrderDto extends OrderSummaryDto {
  @OutWhole({ description: 'Send it with every change: two people never overwrite each other.' })
  version: number;

  @OutObject(() => OrderSupplierDto)
  override supplier: OrderSupplierDto;

  @OutText({ nullable: true, description: "The supplier's own number of it." })
  reference: string | null;

  @OutText({ nullable: true })
  note: string | null;

  @OutDecimal()
  goods: string;

  @OutDecimal()
  freight: string;

  @OutFlag({ description: "Whether that is what the supplier's terms come to." })
  freightByTerms: boolean;

  @OutWhole({ description: 'Lines whose price nobody knows.' })
  unpriced: number;

  @OutObject(() => StockPersonDto)
  createdBy: StockPersonDto;

  @OutObject(() => StockPersonDto, { nullable: true })
  approvedBy: StockPersonDto | null;

  @OutInstant({ nullable: true })
  approvedAt: string | null;

  @OutChoice(SENDING_WAYS, { nullable: true })
  sentWay: string | null;

  @OutObject(() => OrderLimitsDto, { nullable: true, description: 'Of a draft.' })
  limits: OrderLimitsDto | null;

  @OutFlag({ description: 'Whether the service can send e-mail.' })
  mailServer: boolean;

  @OutList(() => OrderLineDto)
  lines: OrderLineDto[];

  @OutList(() => OrderEventDto, { description: 'In the order in which it happened.' })
  events: OrderEventDto[];
}
