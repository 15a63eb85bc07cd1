import {
  IdField,
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
import { StockConsumableDto } from '#lib/stock';

export class ForecastQueryDto {
  @IdField({
    optional: true,
    description: 'Only visits in this place and those within it; all places if left out.',
  })
  locationId?: string;
}

export class UsedDayDto {
  @OutDate()
  day: string;

  @OutDecimal({ description: 'What visits took out of the stock.' })
  issued: string;

  @OutDecimal({ description: 'What they used though the book had none, settled since or not.' })
  shortfall: string;

  @OutDecimal({ description: 'The part of both that retakes took.' })
  retakes: string;

  @OutFlag({ description: 'Marked as a one-off event: no demand.' })
  oneOff: boolean;
}

export class UsedWeekDto {
  @OutDate({ description: 'Its Monday.' })
  monday: string;

  @OutDecimal({ description: 'Demand: without one-off events.' })
  demand: string;
}

export class UsageHistoryDto {
  @OutDate({ description: 'The first use, or the first delivery of what was never used.' })
  from: string;

  @OutDate({ description: 'Yesterday in the practice.' })
  to: string;

  @OutDecimal({ description: 'Everything that was used, whether demand or not.' })
  total: string;

  @OutDecimal({ description: 'What the forecast learns from.' })
  demand: string;

  @OutWhole({ description: 'Days that are evidence: the practice saw somebody, and no mark.' })
  knownDays: number;

  @OutList(() => UsedDayDto, { description: 'Days with use only, the earliest first.' })
  days: UsedDayDto[];

  @OutList(() => UsedWeekDto, { description: 'Every week, the earliest first.' })
  weeks: UsedWeekDto[];
}

export class MethodScoreDto {
  @OutText({ example: 'TSB 0.1/0.04' })
  method: string;

  @OutDecimal({
    nullable: true,
    description: 'Mean pinball loss in stock units over past horizons; null: it could not say.',
  })
  loss: string | null;

  @OutFlag()
  chosen: boolean;
}

export class QuantileDto {
  @OutDecimal({ example: '0.95' })
  level: string;

  @OutDecimal({ description: 'Enough with this chance.' })
  quantity: string;
}

export class HorizonDto {
  @OutWhole({ example: 30, description: 'Days from today on, today included.' })
  days: number;

  @OutDecimal()
  mean: string;

  @OutDecimal({ description: 'Standard deviation.' })
  deviation: string;

  @OutList(() => QuantileDto)
  quantiles: QuantileDto[];
}

export class BookedDayDto {
  @OutDate()
  day: string;

  @OutWhole({ description: 'Booked visits still to come, whether they use it or not.' })
  visits: number;

  @OutDecimal({ description: 'What they are expected to use; some will fall through.' })
  booked: string;

  @OutDecimal({ description: 'Usual use of such a day, by the statistics alone.' })
  usual: string;

  @OutDecimal({ description: 'The part of the usual use that the booked visits stand for.' })
  replaced: string;

  @OutDecimal({ description: 'Booked and what is left of the usual use.' })
  expected: string;
}

export class BookedForecastDto {
  @OutDecimal({ description: 'Share of bookings that are kept, as lately seen.', example: '0.93' })
  keptShare: string;

  @OutFlag({ description: 'Every visit of the practice is booked here.' })
  wholeDay: boolean;

  @OutList(() => BookedDayDto, { description: 'Days on which anything is booked, up to 90.' })
  days: BookedDayDto[];

  @OutText({ description: 'The same in a sentence.' })
  sentence: string;
}

export class AssumedDto {
  @OutChoice([
    'no use yet',
    'few uses',
    'short history',
    'died out',
    'left out as one-off or retake',
    'shortfalls counted as use',
  ])
  code: string;

  @OutWhole({ nullable: true, description: 'Days, or days with use.' })
  days: number | null;

  @OutDecimal({ nullable: true })
  quantity: string | null;
}

export class ItemForecastDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutDate({ description: 'Today in the practice: the first day that is forecast.' })
  asOf: string;

  @OutId({ nullable: true })
  locationId: string | null;

  @OutObject(() => UsageHistoryDto)
  history: UsageHistoryDto;

  @OutChoice(['smooth', 'erratic', 'intermittent', 'lumpy'], {
    nullable: true,
    description: 'By how often and how evenly it is used (days); null without use.',
  })
  demandClass: string | null;

  @OutDecimal({ description: 'Expected use of an average open day.' })
  level: string;

  @OutFlag({ description: 'Its silence is too long for chance: the forecast fades.' })
  diedOut: boolean;

  @OutDecimal({ description: 'Smallest amount that is told apart, in stock units.' })
  step: string;

  @OutWhole({ description: 'Past days from which the methods were judged.' })
  origins: number;

  @OutWhole({ description: 'Days that each of them had to forecast.' })
  judgedDays: number;

  @OutList(() => MethodScoreDto)
  methods: MethodScoreDto[];

  @OutText({ description: 'Why the chosen one was chosen.' })
  choice: string;

  @OutChoice(['no use', 'short history', 'died out', 'least loss in the backtest'], {
    description: 'The same as a word.',
  })
  reason: string;

  @OutList(() => AssumedDto, { description: 'What was taken for granted, in figures.' })
  assumed: AssumedDto[];

  @OutTexts({ description: 'What was taken for granted, a sentence each.' })
  assumptions: string[];

  @OutList(() => HorizonDto, { description: 'With what visits are booked to use.' })
  horizons: HorizonDto[];

  @OutObject(() => BookedForecastDto, {
    nullable: true,
    description: 'What visits are booked to use of it; null: bookings say nothing of it.',
  })
  booked: BookedForecastDto | null;
}
