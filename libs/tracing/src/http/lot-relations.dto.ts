import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';

const STATUSES = ['released', 'quarantined', 'recalled'];

export class KitPartLotDto {
  @OutId()
  lotId: string;

  @OutText({ nullable: true })
  lotNumber: string | null;

  @OutChoice(STATUSES)
  status: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;
}

export class KitOfLotDto {
  @OutId({ description: 'To hold all of the kit back: PUT /api/kit-lots/{id}/status.' })
  kitLotId: string;

  @OutText({ nullable: true, description: 'As the box of the kit states it.' })
  lotNumber: string | null;

  @OutDate({ nullable: true })
  labelExpiry: string | null;

  @OutChoice(STATUSES)
  status: string;

  @OutText()
  presentationName: string;

  @OutList(() => KitPartLotDto, { description: 'The lots of all parts, this one among them.' })
  parts: KitPartLotDto[];
}

export class DamagedPacksDto {
  @OutId()
  deliveryId: string;

  @OutDate()
  receivedOn: string;

  @OutText()
  supplierName: string;

  @OutText()
  presentationName: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutWhole()
  packs: number;

  @OutText()
  lotNumber: string;

  @OutText({ nullable: true })
  note: string | null;
}

export class LotCorrectionDto {
  @OutChoice(['was booked as', 'goes on as'])
  way: string;

  @OutId({ description: 'The other lot.' })
  lotId: string;

  @OutText({ nullable: true })
  lotNumber: string | null;

  @OutText()
  note: string;

  @OutId()
  deliveryId: string;

  @OutWhole()
  lineNumber: number;

  @OutDecimal({
    description: 'What had left under the wrong number, in stock units: see the trace of that lot.',
  })
  leftUnderWrongLot: string;
}
