import { REASONS } from '#lib/dentition';
import {
  OutChoice,
  OutDate,
  OutDecimal,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';

export class ChairTimeFiguresDto {
  @OutWhole({ example: 38 })
  restorations: number;

  @OutWhole({ example: 1710, description: 'As recorded, or as the template plans.' })
  minutes: number;

  @OutDecimal({ example: '1496.25', description: 'At the rate of their day.' })
  cost: string;

  @OutWhole({ description: 'Of the minutes: worked before the first rate, so without a cost.' })
  minutesWithoutRate: number;

  @OutWhole({ description: 'Of assistants; where nobody stated them, none.', example: 1710 })
  assistantMinutes: number;

  @OutDecimal({ example: '940.50', description: 'At the rate of their day; not in the cost.' })
  assistantCost: string;

  @OutWhole({ description: 'Of the minutes of assistants: without a rate on their day.' })
  assistantMinutesWithoutRate: number;
}

export class ChairTimeRowDto extends ChairTimeFiguresDto {
  @OutId({ nullable: true, description: 'Null when not grouped by template.' })
  templateId: string | null;

  @OutText({ nullable: true, example: 'Posterior filling' })
  templateName: string | null;

  @OutChoice(REASONS, { nullable: true })
  reason: string | null;

  @OutId({ nullable: true })
  dentistId: string | null;

  @OutText({ nullable: true })
  dentistName: string | null;

  @OutText({ nullable: true, example: '2026-05' })
  month: string | null;
}

export class SuppliedDto {
  @OutWhole({ description: 'Practical minutes of the period; a year counts 365 days.' })
  minutes: number;

  @OutDecimal({ description: 'What the capacity of the period cost.' })
  cost: string;

  @OutWhole()
  usedMinutes: number;

  @OutDecimal()
  usedCost: string;

  @OutDecimal({ nullable: true, example: '0.8266' })
  usedShare: string | null;

  @OutWhole({ description: 'Negative: more was worked than the practical capacity.' })
  idleMinutes: number;

  @OutDecimal({ description: 'Used and idle cost add up to the cost. Idle loads no restoration.' })
  idleCost: string;
}

export class ChairTimeDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutDate()
  from: string;

  @OutDate()
  to: string;

  @OutTexts({ example: ['template'] })
  groupBy: string[];

  @OutList(() => ChairTimeRowDto)
  rows: ChairTimeRowDto[];

  @OutObject(() => ChairTimeFiguresDto)
  totals: ChairTimeFiguresDto;

  @OutObject(() => SuppliedDto)
  capacity: SuppliedDto;

  @OutObject(() => SuppliedDto, {
    nullable: true,
    description: 'Of assistants, over the days for which their capacity is known; null: on none.',
  })
  assistantCapacity: SuppliedDto | null;
}
