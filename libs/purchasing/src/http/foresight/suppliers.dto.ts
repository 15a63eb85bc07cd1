import {
  OutDate,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto, StockSupplierDto } from '#lib/stock';

export class ComparedLeadTimeDto {
  @OutWhole({ description: 'Working days of the supplier, by its terms or the practice.' })
  stated: number;

  @OutWhole({
    nullable: true,
    description: 'Working days until an order was complete: the middle.',
  })
  median: number | null;

  @OutWhole({ nullable: true, description: 'Nine in ten orders were complete by then.' })
  p90: number | null;

  @OutWhole({ nullable: true })
  fastest: number | null;

  @OutWhole({ nullable: true })
  slowest: number | null;

  @OutWhole({ description: 'Orders that were complete: what the days were seen on.' })
  complete: number;

  @OutWhole({ description: 'Orders that are not complete yet.' })
  open: number;
}

export class SupplierReliabilityDto {
  @OutWhole({ description: 'Orders that were due or are complete.' })
  due: number;

  @OutWhole({ description: 'How many of them were complete by their day.' })
  inTime: number;

  @OutWhole({ description: 'Complete orders that came in one delivery.' })
  atOnce: number;

  @OutWhole({ description: 'Packs that became stock in the last twelve months.' })
  packs: number;

  @OutWhole({ description: 'Packs that came damaged in the last twelve months.' })
  damaged: number;

  @OutWhole({ description: 'Packs on the paper but not in the box in the last twelve months.' })
  missing: number;
}

export class SupplierComparisonDto {
  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutWhole({ description: 'Consumables that it sells at a known price.' })
  consumables: number;

  @OutWhole({ description: 'How many of them another supplier sells as well.' })
  shared: number;

  @OutWhole({ description: 'And of how many of those it has the lowest price.' })
  cheapest: number;

  @OutObject(() => ComparedLeadTimeDto)
  lead: ComparedLeadTimeDto;

  @OutObject(() => SupplierReliabilityDto)
  reliability: SupplierReliabilityDto;

  @OutWhole({ description: 'Deliveries in the last twelve months.' })
  deliveries: number;

  @OutDecimal({ description: 'Landed cost of the deliveries of the last twelve months.' })
  spend: string;
}

export class ComparedOfferDto {
  @OutObject(() => StockSupplierDto)
  supplier: StockSupplierDto;

  @OutId({ description: 'The presentation that is cheapest per stock unit there.' })
  presentationId: string;

  @OutText()
  presentation: string;

  @OutDecimal()
  packPrice: string;

  @OutDecimal({ description: 'Per stock unit, to a millionth.' })
  unitPrice: string;

  @OutDate({ nullable: true, description: 'When it was paid; null: a list price.' })
  paidOn: string | null;

  @OutFlag()
  cheapest: boolean;

  @OutDecimal({ description: 'Above the cheapest, as a share.' })
  aboveCheapest: string;

  @OutDecimal({ nullable: true, description: 'Against the price paid a year ago, as a share.' })
  change: string | null;
}

export class ComparedConsumableDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutList(() => ComparedOfferDto, { description: 'The cheapest first, one per supplier.' })
  offers: ComparedOfferDto[];
}

export class SuppliersDto {
  @OutDate()
  asOf: string;

  @OutText({ example: 'EUR' })
  currency: string;

  @OutDate({ description: 'The first of the twelve months.' })
  since: string;

  @OutList(() => SupplierComparisonDto, { description: 'By what was spent, the most first.' })
  suppliers: SupplierComparisonDto[];

  @OutList(() => ComparedConsumableDto, { description: 'What more than one supplier sells first.' })
  consumables: ComparedConsumableDto[];
}
