import { OutDate, OutDecimal, OutId, OutList, OutObject, OutText } from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';

export class PriceVarianceRowDto {
  @OutText({ example: '2026-05', description: 'The month in which it was booked.' })
  month: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutId()
  deliveryId: string;

  @OutText({ nullable: true, example: 'DN-2041' })
  deliveryReference: string | null;

  @OutText({ example: 'Northgate Supply' })
  supplierName: string;

  @OutDate()
  receivedOn: string;

  @OutDecimal({ example: '12.00', description: 'More than 0: what had been used was dearer.' })
  amount: string;

  @OutDecimal({ example: '18.00', description: 'What the stock that was left became worth more.' })
  toStock: string;
}

/** What invoices that came after the goods said otherwise, on what had left by then. */
export class PriceVariancesDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutDate()
  from: string;

  @OutDate()
  to: string;

  @OutDecimal({ example: '12.00', description: 'Part of no restoration: beside their cost.' })
  amount: string;

  @OutDecimal({ example: '18.00' })
  toStock: string;

  @OutList(() => PriceVarianceRowDto, { description: 'The latest month first.' })
  rows: PriceVarianceRowDto[];
}
