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
import { StockConsumableDto, StockLotDto, StockPersonDto, StockSupplierDto } from '#lib/stock';

export const SURENESS = ['scanned', 'open container', 'assumed', 'not stated'] as const;

export class TracedRestorationDto {
  @OutId()
  id: string;

  @OutText({ example: '36', description: 'In the notation of the practice.' })
  tooth: string;

  @OutText({ example: 'MO' })
  surfaces: string;
}

export class TracedDeliveryDto {
  @OutId()
  id: string;

  @OutText({ nullable: true })
  reference: string | null;

  @OutDate()
  receivedOn: string;

  @OutWhole()
  lineNumber: number;

  @OutId()
  layerId: string;

  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;
}

export class TracedUseDto {
  @OutId()
  usageLineId: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutObject(() => TracedDeliveryDto)
  delivery: TracedDeliveryDto;

  @OutDecimal({ example: '0.12', description: 'Less what a reversal took back.' })
  quantity: string;

  @OutChoice(SURENESS, { description: 'How sure it is that this lot was used.' })
  sureness: string;

  @OutChoice(['restoration', 'tooth', 'visit'], { description: 'What the line was used for.' })
  usedFor: string;

  @OutList(() => TracedRestorationDto, {
    description: 'Restorations that may have got it: all of the tooth or visit for a shared line.',
  })
  restorations: TracedRestorationDto[];

  @OutTexts({ description: 'The entries of the ledger, reversals included.' })
  movementIds: string[];
}

export class TracedShortfallDto {
  @OutId()
  id: string;

  @OutId()
  visitId: string;

  @OutDate()
  usedOn: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto, {
    nullable: true,
    description: 'The lot that was scanned, if any.',
  })
  lot: StockLotDto | null;

  @OutDecimal({ description: 'Used, but on no delivery yet; 0 when settled or cancelled.' })
  open: string;

  @OutDecimal()
  quantity: string;
}

export class VisitTraceDto {
  @OutId()
  visitId: string;

  @OutDate()
  visitedOn: string;

  @OutText({ example: 'C-1023' })
  chartReference: string;

  @OutObject(() => StockPersonDto)
  dentist: StockPersonDto;

  @OutFlag({ description: 'The visit was reversed: it used nothing, and its quantities are 0.' })
  reversed: boolean;

  @OutList(() => TracedRestorationDto)
  restorations: TracedRestorationDto[];

  @OutList(() => TracedUseDto)
  uses: TracedUseDto[];

  @OutList(() => TracedShortfallDto, { description: 'Used without a lot that the book had.' })
  shortfalls: TracedShortfallDto[];
}

export class VisitTracePageDto {
  @OutList(() => VisitTraceDto)
  items: VisitTraceDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}

export class ChartTraceDto extends VisitTracePageDto {
  @OutText({ example: 'C-1023' })
  chartReference: string;
}
