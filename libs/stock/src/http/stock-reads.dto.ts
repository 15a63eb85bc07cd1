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
import {
  StockConsumableDto,
  StockLotDto,
  StockPersonDto,
  StockPlaceDto,
  StockSupplierDto,
} from './stock-refs.dto.js';

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
  discount: string;

  @OutDecimal({ example: '222.90', description: 'Goods and freight less discount.' })
  landedTotal: string;

  @OutWhole({ example: 1 })
  lineCount: number;

  @OutFlag({ description: 'True when the whole delivery was undone.' })
  reversed: boolean;
}

export class DeliveryDto extends DeliverySummaryDto {
  @OutChoice(['value', 'quantity'], { description: 'How freight and discount were spread.' })
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
}

export class DeliveryPageDto {
  @OutList(() => DeliverySummaryDto)
  items: DeliverySummaryDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}
