import { STOCK_UNITS } from '#lib/measure';
import { OutChoice, OutDate, OutId, OutText } from '#lib/platform';
import { LOT_STATUSES } from '../domain/candidate.js';

/** How a consumable is named wherever a list mentions one. */
export class StockConsumableDto {
  @OutId()
  id: string;

  @OutText({ example: 'Paste, light-cured' })
  name: string;

  @OutText({ example: 'paste' })
  category: string;

  @OutText({ nullable: true, example: 'Body 2' })
  shade: string | null;

  @OutText({ nullable: true })
  size: string | null;

  @OutText({ nullable: true })
  grit: string | null;

  @OutChoice(STOCK_UNITS, { description: 'The unit of every quantity of it.', example: 'g' })
  unit: string;
}

export class StockLotDto {
  @OutId()
  id: string;

  @OutText({ nullable: true, example: 'LX-4471', description: 'Null when the label states none.' })
  lotNumber: string | null;

  @OutDate({ nullable: true, example: '2027-08-31' })
  labelExpiry: string | null;

  @OutChoice(LOT_STATUSES)
  status: string;
}

export class StockPlaceDto {
  @OutId()
  id: string;

  @OutText({ example: 'Room 2' })
  name: string;
}

export class StockPersonDto {
  @OutId()
  id: string;

  @OutText({ example: 'Mira Holt' })
  name: string;
}

export class StockSupplierDto {
  @OutId()
  id: string;

  @OutText({ example: 'Northgate Supplies' })
  name: string;
}
