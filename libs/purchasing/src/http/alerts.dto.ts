import {
  ChoiceField,
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
  WholeQuery,
} from '#lib/platform';
import { StockConsumableDto, StockLotDto, StockPlaceDto } from '#lib/stock';
import { ALERT_KINDS } from '../domain/alert.js';
import { SERVICE_MEASURES } from '../domain/policy/index.js';
import { LEVEL_KINDS } from '../domain/reorder-level.js';
import { SnoozedDto } from './snooze.dto.js';

export class AlertQueryDto {
  @WholeQuery(0, 3650, {
    description: 'Days ahead for "expires within N days"; the setting of the practice if left out.',
  })
  withinDays?: string;

  @ChoiceField(['true', 'false'], {
    optional: true,
    description: 'True: only what was put off; otherwise only what was not.',
  })
  snoozed?: string;
}

export class AlertFigureDto {
  @OutText({ example: 'usable' })
  name: string;

  @OutText({ example: '1.2', description: 'A decimal as text.' })
  value: string;

  @OutText({ example: 'g', description: 'Stock unit, currency, days, packs, %, or nothing.' })
  unit: string;
}

export class AlertActionDto {
  @OutText({ example: 'Write it off: expired' })
  label: string;

  @OutChoice(['GET', 'POST', 'PUT'])
  method: string;

  @OutText({ example: '/api/stock/write-offs' })
  href: string;
}

export class AlertOrderDto {
  @OutId()
  id: string;

  @OutWhole({ example: 42 })
  number: number;

  @OutText({ description: 'The name of the supplier.' })
  supplier: string;
}

export class AlertBookedVisitDto {
  @OutId()
  id: string;

  @OutDate()
  day: string;

  @OutText({ nullable: true })
  chartReference: string | null;

  @OutWhole({ description: 'So many alike visits are still to come.' })
  toCome: number;

  @OutDecimal({ description: 'What each is planned to use.' })
  need: string;
}

export class AlertComputedLevelDto {
  @OutDate({ description: 'The day it was computed on.' })
  on: string;

  @OutDecimal({ example: '12.5' })
  reorderPoint: string;

  @OutFlag({ description: 'Whether planning orders what is there now by it.' })
  orders: boolean;

  @OutDecimal({ description: 'Expected to be used in so many days.' })
  expectedUse: string;

  @OutWhole({ description: 'Until goods ordered at the next look are here.' })
  days: number;

  @OutChoice(SERVICE_MEASURES)
  serviceMeasure: string;

  @OutDecimal({ example: '0.95' })
  serviceLevel: string;
}

export class AlertLevelDto {
  @OutChoice(LEVEL_KINDS, {
    description: 'By whose word the level holds; the first of these that there is.',
  })
  kind: string;

  @OutDecimal({ example: '12.5' })
  at: string;

  @OutFlag({ description: 'Due, but a limit set in planning allows no pack.' })
  heldBack: boolean;

  @OutObject(() => AlertComputedLevelDto, {
    nullable: true,
    description: 'What planning computes of it; null until it has computed anything.',
  })
  computed: AlertComputedLevelDto | null;
}

export class AlertDto {
  @OutText({ description: 'The same reason has the same id on the next day.' })
  id: string;

  @OutChoice(ALERT_KINDS)
  kind: string;

  @OutWhole({ example: 1, description: '1 is the most urgent.' })
  severity: number;

  @OutObject(() => StockConsumableDto, {
    description: 'Of an overdue order: what the first of its outstanding lines is about.',
  })
  consumable: StockConsumableDto;

  @OutObject(() => StockLotDto, { nullable: true })
  lot: StockLotDto | null;

  @OutObject(() => StockPlaceDto, { nullable: true })
  location: StockPlaceDto | null;

  @OutId({ nullable: true, description: 'What to write off, return or move.' })
  holdingId: string | null;

  @OutObject(() => AlertOrderDto, { nullable: true, description: 'Of an overdue order.' })
  order: AlertOrderDto | null;

  @OutList(() => AlertBookedVisitDto, {
    description: 'Of what runs out before delivery: the booked visits that may go without.',
  })
  bookedVisits: AlertBookedVisitDto[];

  @OutObject(() => AlertLevelDto, {
    nullable: true,
    description: 'Of what is below its reorder point: the level that it goes by.',
  })
  level: AlertLevelDto | null;

  @OutList(() => AlertFigureDto)
  figures: AlertFigureDto[];

  @OutText({ example: '2 g of Paste, Body 2 (lot LX-4471) in Room 2 expired on 2026-04-30.' })
  sentence: string;

  @OutObject(() => AlertActionDto)
  action: AlertActionDto;

  @OutInstant({
    nullable: true,
    description: 'When the service first saw it; null for what came up within the last minute.',
  })
  since: string | null;

  @OutObject(() => SnoozedDto, { nullable: true, description: 'Null: nobody put it off.' })
  snoozed: SnoozedDto | null;
}

export class AlertListDto {
  @OutDate({ description: 'Today in the practice.' })
  asOf: string;

  @OutWhole({ example: 60 })
  withinDays: number;

  @OutWhole({ description: 'How many of all alerts are put off.' })
  snoozed: number;

  @OutList(() => AlertDto, { description: 'The most urgent first.' })
  alerts: AlertDto[];
}
