import {
  DateField,
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutInstant,
  OutList,
  OutObject,
  OutText,
  OutWhole,
} from '#lib/platform';
import { StockConsumableDto } from '#lib/stock';
import { SERVICE_MEASURES } from '../../domain/policy/index.js';

export class NewReplayDto {
  @DateField({
    optional: true,
    description: 'The first day to replay; a year ago, or eight weeks after the first visit.',
  })
  from?: string;
}

export class ReplaySideDto {
  @OutWhole({ description: 'Days on which not all that was wanted was there.' })
  stockOutDays: number;

  @OutDecimal({ description: 'What was missing on its day, in stock units.' })
  unmet: string;

  @OutDecimal({ description: 'What expired, in stock units.' })
  wasted: string;

  @OutDecimal({ nullable: true, description: 'Its value; null when nobody knows a price.' })
  wastedValue: string | null;

  @OutDecimal({ description: 'Mean of the days, in stock units.' })
  averageStock: string;

  @OutDecimal({ nullable: true })
  averageValue: string | null;

  @OutWhole()
  orders: number;
}

export class ReplayedItemDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutChoice(['typed-in levels', 'when empty'], { description: 'The rule it had.' })
  oldRule: string;

  @OutWhole()
  daysWithUse: number;

  @OutObject(() => ReplaySideDto)
  computed: ReplaySideDto;

  @OutObject(() => ReplaySideDto)
  old: ReplaySideDto;
}

export class ReplaySumsDto {
  @OutWhole({ description: 'Days on which an item was missing, over all items.' })
  stockOutDays: number;

  @OutWhole({ description: 'Items that ran out at least once.' })
  itemsOut: number;

  @OutDecimal()
  wastedValue: string;

  @OutDecimal({ description: 'Mean value of the stock.' })
  averageValue: string;

  @OutWhole({ description: 'Lines ordered.' })
  orders: number;

  @OutWhole({
    nullable: true,
    description:
      'Orders sent; what is ordered of a supplier on a day is one. Null in replays of a time when suppliers’ minimums, freight and price lists played no part.',
  })
  sent: number | null;

  @OutDecimal({ nullable: true, description: 'What sending them cost; null as above.' })
  freight: string | null;
}

export class ReplayWeekDto {
  @OutDate({ description: 'Its last day.' })
  day: string;

  @OutDecimal({ description: 'Stock value on that evening.' })
  computed: string;

  @OutDecimal()
  old: string;
}

export class ReplaySettingsDto {
  @OutChoice(SERVICE_MEASURES)
  serviceMeasure: string;

  @OutDecimal()
  serviceLevel: string;

  @OutWhole()
  reviewDays: number;

  @OutWhole({ description: 'Forecasts are made anew so often, in days.' })
  reckonDays: number;
}

export class ReplayResultDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutObject(() => ReplaySettingsDto)
  settings: ReplaySettingsDto;

  @OutObject(() => ReplaySumsDto)
  computed: ReplaySumsDto;

  @OutObject(() => ReplaySumsDto)
  old: ReplaySumsDto;

  @OutList(() => ReplayedItemDto, { description: 'By what the rules make of it, the most first.' })
  items: ReplayedItemDto[];

  @OutList(() => ReplayWeekDto)
  weeks: ReplayWeekDto[];

  @OutWhole({ description: 'Consumables that were neither there nor used.' })
  notUsed: number;

  @OutWhole({ description: 'Consumables that nobody says how to buy.' })
  notBought: number;

  @OutWhole({ description: 'Items without a price: in the days, not in the values.' })
  withoutPrice: number;
}

export class ReplaySummaryDto {
  @OutId()
  id: string;

  @OutDate()
  firstDay: string;

  @OutDate()
  lastDay: string;

  @OutChoice(['running', 'done', 'failed'])
  state: string;

  @OutDecimal({ description: 'Share of the work that is done.' })
  progress: string;

  @OutText({ example: 'Ada Berg' })
  startedBy: string;

  @OutInstant()
  startedAt: string;

  @OutInstant({ nullable: true })
  finishedAt: string | null;

  @OutChoice(['stopped', 'error'], {
    nullable: true,
    description: 'stopped: the service ended before the replay did; start it again.',
  })
  failure: string | null;
}

export class ReplayDto extends ReplaySummaryDto {
  @OutObject(() => ReplayResultDto, { nullable: true, description: 'Null until it is done.' })
  result: ReplayResultDto | null;
}

export class ReplayListDto {
  @OutList(() => ReplaySummaryDto, { description: 'The latest twenty, the latest first.' })
  replays: ReplaySummaryDto[];
}
