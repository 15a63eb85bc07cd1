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
import { SPREAD_KEYS } from '../domain/land-delivery.js';
import { FAULT_KINDS } from './delivery.dto.js';
import { DeliveryCheckDto } from './delivery-check.dto.js';
import {
  StockConsumableDto,
  StockLotDto,
  StockPersonDto,
  StockPlaceDto,
  StockSupplierDto,
} from './stock-refs.dto.js';

export class KitLotDto {
  @OutId()
  kitLotId: string;

  @OutText({ nullable: true, description: 'As the box of the kit states it.' })
  lotNumber: string | null;

  @OutWhole({ description: 'The line at which the kit begins.' })
  firstLine: number;

  @OutDecimal({ description: 'Paid for one whole kit.' })
  packPrice: string;
}

export class DeliveryLineDto {
  @OutId({ description: 'The layer that this line became.' })
  layerId: string;

  @OutWhole({ example: 1 })
  lineNumber: number;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutId()
  presentationId: string;

  @OutText({ example: 'Syringe of 4 g' })
  presentationName: string;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutObject(() => StockPlaceDto, { description: 'Where the goods were put.' })
  location: StockPlaceDto;

  @OutWhole({ example: 3 })
  packs: number;

  @OutDecimal({ example: '72.00' })
  packPrice: string;

  @OutDecimal({ example: '12', description: 'In stock units.' })
  quantity: string;

  @OutDecimal({ example: '220.50', description: 'With its share of freight and discount.' })
  landedCost: string;

  @OutDecimal({ example: '9.4', description: 'What is still in stock, in stock units.' })
  remaining: string;

  @OutDecimal({ example: '172.73', description: 'The value of what is still in stock.' })
  remainingValue: string;

  @OutId({ nullable: true, description: 'The line of an order that this line answers.' })
  orderLineId: string | null;

  @OutFlag({ description: 'A free sample.' })
  sample: boolean;

  @OutDecimal({ nullable: true, description: 'Of the whole line, where it was stated.' })
  weightGrams: string | null;

  @OutObject(() => KitLotDto, { nullable: true, description: 'The kit it came in.' })
  kit: KitLotDto | null;

  @OutFlag({ description: 'Replaced by another line: it never was.' })
  undone: boolean;

  @OutWhole({ nullable: true, description: 'The line whose goods go on here, under another lot.' })
  continuesLine: number | null;

  @OutWhole({ nullable: true, description: 'The line that this one stands in for.' })
  replacesLine: number | null;

  @OutText({ nullable: true, description: 'Why it was corrected.' })
  correctionNote: string | null;
}

export class DeliveryInvoiceDto {
  @OutId()
  id: string;

  @OutText({ nullable: true })
  reference: string | null;

  @OutDecimal({ description: 'What the delivery came to before.' })
  landedBefore: string;

  @OutDecimal({ description: 'And with this invoice.' })
  landedTotal: string;

  @OutDecimal({ description: 'Of the difference, on what had left already.' })
  priceVariance: string;

  @OutInstant()
  recordedAt: string;

  @OutObject(() => StockPersonDto)
  recordedBy: StockPersonDto;
}

export class DeliveryFaultDto {
  @OutId()
  id: string;

  @OutChoice(FAULT_KINDS)
  kind: string;

  @OutId()
  presentationId: string;

  @OutText()
  presentationName: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutWhole()
  packs: number;

  @OutText({ nullable: true })
  lotNumber: string | null;

  @OutId({ nullable: true })
  orderLineId: string | null;

  @OutText({ nullable: true })
  note: string | null;
}

export class DeliverySummaryDto {
  @OutId()
  id: string;

  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutDate()
  receivedOn: string;

  @OutText({ nullable: true, example: 'DN-2041' })
  reference: string | null;

  @OutDecimal({ example: '216.00' })
  goodsTotal: string;

  @OutDecimal({ example: '6.90' })
  freight: string;

  @OutDecimal({ example: '0.00' })
  duty: string;

  @OutDecimal({ example: '0.00' })
  discount: string;

  @OutDecimal({ example: '222.90', description: 'Goods, freight and duty less discount.' })
  landedTotal: string;

  @OutWhole({ example: 1 })
  lineCount: number;

  @OutFlag({ description: 'True when the whole delivery was undone.' })
  reversed: boolean;
}

export class DeliveryDto extends DeliverySummaryDto {
  @OutChoice(SPREAD_KEYS, { description: 'How freight and duty were spread.' })
  spreadKey: string;

  @OutObject(() => StockPersonDto)
  recordedBy: StockPersonDto;

  @OutInstant()
  recordedAt: string;

  @OutInstant({ nullable: true })
  reversedAt: string | null;

  @OutText({ nullable: true })
  reversalNote: string | null;

  @OutList(() => DeliveryLineDto)
  lines: DeliveryLineDto[];

  @OutList(() => DeliveryFaultDto, { description: 'What came damaged or not at all.' })
  faults: DeliveryFaultDto[];

  @OutList(() => DeliveryInvoiceDto, { description: 'Invoices that came later, the first first.' })
  invoices: DeliveryInvoiceDto[];
}

export class ReceivedDeliveryDto extends DeliveryDto {
  @OutObject(() => DeliveryCheckDto, { description: 'What should be known about it.' })
  check: DeliveryCheckDto;
}

export class DeliveryPageDto {
  @OutList(() => DeliverySummaryDto)
  items: DeliverySummaryDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}
