import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { STOCK_STATUSES } from './stock-queries.dto.js';
import {
  StockConsumableDto,
  StockLotDto,
  StockPlaceDto,
  StockSupplierDto,
} from './stock-refs.dto.js';

const DISPENSING = ['multi-use', 'single-dose', 'by-piece'] as const;

export class StockHoldingDto {
  @OutId({ description: 'Name this holding to move, open, count or write it off.' })
  id: string;

  @OutId()
  layerId: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutObject(() => StockPlaceDto)
  location: StockPlaceDto;

  @OutChoice(DISPENSING)
  dispensing: string;

  @OutDate()
  receivedOn: string;

  @OutDate({ nullable: true, description: 'Null while sealed.' })
  openedOn: string | null;

  @OutDate({ nullable: true, description: 'The last day of use: label, or life after opening.' })
  effectiveExpiry: string | null;

  @OutDecimal({ example: '3.4' })
  onHand: string;

  @OutWhole({ nullable: true, description: 'Sealed containers; null for opened or loose goods.' })
  containers: number | null;

  @OutDecimal({ example: '61.20', description: 'Its share of what the layer still is worth.' })
  value: string;

  @OutChoice(STOCK_STATUSES, { description: 'As of today in the practice.' })
  status: string;
}

export class StockPageDto {
  @OutList(() => StockHoldingDto)
  items: StockHoldingDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}

export class StockSummaryDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutDecimal({ example: '7.4' })
  usable: string;

  @OutDecimal({ example: '0', description: 'Expired, quarantined, recalled or not yet there.' })
  blocked: string;

  @OutWhole({ description: 'Opened containers that still hold something.' })
  openedContainers: number;

  @OutDecimal({ example: '133.20' })
  value: string;

  @OutDate({ nullable: true, description: 'Of what is usable today.' })
  earliestExpiry: string | null;

  @OutDecimal({ nullable: true, description: 'Null when no reorder point is set.' })
  reorderAt: string | null;

  @OutDecimal({ example: '0', description: 'Used, but not yet on any delivery, in the practice.' })
  openShortfall: string;
}

export class StockSummaryPageDto {
  @OutList(() => StockSummaryDto)
  items: StockSummaryDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}

/** received = on hand + used + wasted + returned + count difference. */
export class MassBalanceDto {
  @OutDecimal()
  received: string;

  @OutDecimal()
  onHand: string;

  @OutDecimal()
  used: string;

  @OutDecimal()
  wasted: string;

  @OutDecimal()
  returned: string;

  @OutDecimal({ description: 'Missing at counts; negative when more was found.' })
  countDifference: string;

  @OutFlag({ description: 'True when the two sides are equal to the last digit.' })
  balanced: boolean;
}

export class CostBalanceDto {
  @OutDecimal({ description: 'What was paid for the whole layer.' })
  landedCost: string;

  @OutDecimal({ description: 'What has left the layer, less what came back.' })
  outCost: string;

  @OutDecimal({ description: 'What is still in stock.' })
  remainingValue: string;

  @OutDecimal({ description: 'All that movements brought in.' })
  costIn: string;

  @OutDecimal({ description: 'All that movements took out.' })
  costOut: string;

  @OutDecimal({ description: 'What later invoices made the stock worth more.' })
  revalued: string;

  @OutFlag({ description: 'True when the movements add up to what is still in stock.' })
  balanced: boolean;
}

export class LayerDto {
  @OutId()
  id: string;

  @OutId()
  deliveryId: string;

  @OutText({ nullable: true })
  deliveryReference: string | null;

  @OutWhole()
  lineNumber: number;

  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutDate()
  receivedOn: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutId()
  presentationId: string;

  @OutText()
  presentationName: string;

  @OutWhole()
  packs: number;

  @OutDecimal()
  packPrice: string;

  @OutDecimal({ description: 'The same; of a part of a kit, what the whole kit cost.' })
  paidPerPack: string;

  @OutFlag({ description: 'A free sample.' })
  sample: boolean;

  @OutObject(() => MassBalanceDto)
  mass: MassBalanceDto;

  @OutObject(() => CostBalanceDto)
  cost: CostBalanceDto;

  @OutList(() => StockHoldingDto, { description: 'Where what is left of it is now.' })
  holdings: StockHoldingDto[];
}

export class ShortfallDto {
  @OutId()
  id: string;

  @OutId()
  visitId: string;

  @OutId()
  usageLineId: string;

  @OutDate()
  usedOn: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockPlaceDto)
  location: StockPlaceDto;

  @OutObject(() => StockLotDto, { nullable: true, description: 'The lot that was scanned.' })
  lot: StockLotDto | null;

  @OutDecimal()
  quantity: string;

  @OutDecimal()
  settled: string;

  @OutDecimal({ description: 'Quantity less settled; 0 when cancelled.' })
  open: string;

  @OutDecimal({ description: 'Of the open part, at the last known cost.' })
  estimatedCost: string;

  @OutFlag({ description: 'False when the consumable was never bought: the cost is 0.' })
  costKnown: boolean;

  @OutFlag({ description: 'The visit was reversed.' })
  cancelled: boolean;
}

export class ShortfallPageDto {
  @OutList(() => ShortfallDto)
  items: ShortfallDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}
