import { OutDate, OutDecimal, OutId, OutList, OutObject, OutText } from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';

export class PriceChangeDto {
  @OutDate()
  receivedOn: string;

  @OutId({ description: 'The first delivery at this price.' })
  deliveryId: string;

  @OutText({ example: 'Northgate Supplies' })
  supplierName: string;

  @OutDecimal({ example: '16.00', description: 'Per stock unit, freight and discount included.' })
  priceBefore: string;

  @OutDecimal({ example: '18.00' })
  price: string;

  @OutDecimal({ example: '0.1250', description: 'Share of the price before.' })
  change: string;

  @OutDecimal({ example: '42.6', description: 'Used since, until the next price, in stock units.' })
  used: string;

  @OutDecimal({ example: '85.20', description: 'What was used, by the difference of the prices.' })
  effect: string;
}

export class RepricedConsumableDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutDecimal({ description: 'Before the first change of the period.' })
  priceBefore: string;

  @OutDecimal({ description: 'At its end.' })
  priceNow: string;

  @OutDecimal({ example: '0.1250', description: 'Share of the price before the period.' })
  change: string;

  @OutDecimal({
    description: 'What the use of the period cost more than it would have at the price before it.',
  })
  effect: string;

  @OutList(() => PriceChangeDto, { description: 'In their order.' })
  changes: PriceChangeDto[];
}

export class PriceChangesDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutDate({ description: 'Twelve months before the end when it was left out.' })
  from: string;

  @OutDate({ description: 'Today when it was left out.' })
  to: string;

  @OutDecimal({ description: 'Of all consumables together.' })
  effect: string;

  @OutList(() => RepricedConsumableDto, { description: 'The one that cost most more first.' })
  consumables: RepricedConsumableDto[];
}
