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
} from '#lib/platform';
import { ACCOUNTS } from './stock-queries.dto.js';
import { StockConsumableDto, StockLotDto, StockPersonDto } from './stock-refs.dto.js';

export class MovementSideDto {
  @OutChoice(ACCOUNTS)
  account: string;

  @OutText({ example: 'Room 2, opened container' })
  words: string;

  @OutId({ nullable: true })
  holdingId: string | null;

  @OutId({ nullable: true })
  locationId: string | null;
}

export class MovementDto {
  @OutId()
  id: string;

  @OutText({ example: 'use', description: 'What happened, in a word.' })
  kind: string;

  @OutDate()
  occurredOn: string;

  @OutId()
  layerId: string;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto)
  lot: StockLotDto;

  @OutObject(() => MovementSideDto)
  from: MovementSideDto;

  @OutObject(() => MovementSideDto)
  to: MovementSideDto;

  @OutDecimal({ example: '0.12' })
  quantity: string;

  @OutDecimal({ example: '2.16', description: 'Value that entered or left; moving inside is 0.' })
  cost: string;

  @OutText({ nullable: true, description: 'How sure the lot is, for what a visit used.' })
  sureness: string | null;

  @OutFlag({ description: 'Something else should have been used first.' })
  outOfOrder: boolean;

  @OutText({ nullable: true })
  wasteReason: string | null;

  @OutText({ nullable: true })
  note: string | null;

  @OutId({ nullable: true })
  visitId: string | null;

  @OutId({ nullable: true })
  usageLineId: string | null;

  @OutId({ nullable: true, description: 'The shortfall that this settled.' })
  shortfallId: string | null;

  @OutId({ nullable: true })
  reversesId: string | null;

  @OutId({ nullable: true })
  reversedById: string | null;

  @OutObject(() => StockPersonDto)
  recordedBy: StockPersonDto;

  @OutInstant()
  recordedAt: string;
}

export class MovementPageDto {
  @OutList(() => MovementDto)
  items: MovementDto[];

  @OutText({ nullable: true })
  nextCursor: string | null;
}
