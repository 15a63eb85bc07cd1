import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutFlag,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { FLAG_KINDS } from '../domain/arrival-flags.js';
import { StockConsumableDto } from './stock-refs.dto.js';

export class ArrivalFlagDto {
  @OutChoice(FLAG_KINDS, {
    description:
      'expired: past its date on arrival. short-dated: fewer days left than the practice wants to ' +
      'be warned of. not used in time: fewer days left than it takes to use up at the pace of the ' +
      'last 90 days, with what expires no later used first.',
  })
  kind: string;

  @OutWhole({ example: 21, description: 'From arrival to the last day; less than 0 when over.' })
  daysLeft: number;

  @OutWhole({ example: 60, description: 'The days that the rule asks for.' })
  limitDays: number;
}

export class PriceAgainstLastDto {
  @OutDate()
  lastReceivedOn: string;

  @OutText()
  lastSupplierName: string;

  @OutText({ example: 'Box of 20' })
  lastPresentationName: string;

  @OutDecimal({ example: '110.00' })
  lastPackPrice: string;

  @OutDecimal({ example: '20', description: 'What a pack held, in stock units.' })
  lastPackContent: string;

  @OutDecimal({ example: '15', description: 'What a pack holds now.' })
  packContent: string;

  @OutFlag({ description: 'True when packs of another content are compared.' })
  contentChanged: boolean;

  @OutDecimal({ example: '6.16', description: 'Per stock unit.' })
  unitPrice: string;

  @OutDecimal({ example: '5.50' })
  lastUnitPrice: string;

  @OutDecimal({ nullable: true, example: '-0.16', description: 'As a share of the last price.' })
  packChange: string | null;

  @OutDecimal({ nullable: true, example: '0.12' })
  unitChange: string | null;
}

export class DeliveryLineCheckDto {
  @OutWhole({ example: 0, description: 'The line of the request, from 0.' })
  index: number;

  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutText({ nullable: true })
  lotNumber: string | null;

  @OutDate({ nullable: true })
  expiresOn: string | null;

  @OutWhole({ example: 3 })
  packs: number;

  @OutDecimal({ example: '12', description: 'In stock units.' })
  quantity: string;

  @OutDecimal({ example: '220.50', description: 'With freight and duty, less discount.' })
  landedCost: string;

  @OutDecimal({ example: '18.375', description: 'Of one stock unit.' })
  landedUnitCost: string;

  @OutList(() => ArrivalFlagDto)
  flags: ArrivalFlagDto[];

  @OutObject(() => PriceAgainstLastDto, {
    nullable: true,
    description: 'Null for samples, parts of kits, and what was never bought before.',
  })
  price: PriceAgainstLastDto | null;
}

export class DeliveryNoteDto {
  @OutWhole({ description: 'The line of the request, from 0.' })
  index: number;

  @OutText({ example: 'more than ordered' })
  kind: string;

  @OutText()
  sentence: string;
}

/** What a delivery comes to and what should be known about it. */
export class DeliveryCheckDto {
  @OutDecimal()
  goodsTotal: string;

  @OutDecimal()
  landedTotal: string;

  @OutList(() => DeliveryLineCheckDto)
  lines: DeliveryLineCheckDto[];

  @OutList(() => DeliveryNoteDto)
  notes: DeliveryNoteDto[];
}
