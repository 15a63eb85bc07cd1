import type { Reason } from '#lib/dentition';
import { STOCK_UNITS } from '#lib/measure';
import {
  OutChoice,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutObject,
  OutText,
  OutTexts,
  OutWhole,
} from '#lib/platform';
import { DRIVERS, type Driver } from '#lib/procedures';
import { StockConsumableDto } from '#lib/stock';

export class SuggestedLineDto {
  @OutWhole({ example: 1 })
  lineNumber: number;

  @OutObject(() => StockConsumableDto, {
    nullable: true,
    description: 'Null: the shades chosen for the restoration.',
  })
  consumable: StockConsumableDto | null;

  @OutChoice(DRIVERS, { example: 'restoration' })
  driver: Driver;

  @OutChoice(STOCK_UNITS, { nullable: true, example: 'g' })
  unit: string | null;

  @OutDecimal({ example: '0.04' })
  placed: string;

  @OutDecimal({ example: '0.06', description: 'What the template says per unit of the driver.' })
  dispensed: string;

  @OutDecimal({ nullable: true, example: '0.048', description: 'Null: nothing was used of it.' })
  usedPlaced: string | null;

  @OutDecimal({ nullable: true, example: '0.084' })
  usedDispensed: string | null;

  @OutDecimal({ example: '0.048' })
  suggestedPlaced: string;

  @OutDecimal({ example: '0.084' })
  suggestedDispensed: string;

  @OutFlag({ description: 'Differs by 5 % or more, over five uses or more.' })
  changed: boolean;

  @OutText({
    nullable: true,
    example: 'The template says 0.06 g, the last 200 used 0.084 g.',
  })
  sentence: string | null;
}

export class AddedByHandDto {
  @OutObject(() => StockConsumableDto)
  consumable: StockConsumableDto;

  @OutWhole({ description: 'In so many of the restorations.' })
  restorations: number;

  @OutDecimal({ description: 'Mean of those.' })
  placed: string;

  @OutDecimal()
  dispensed: string;

  @OutFlag({ description: 'In at least half of them: the suggested version has a line for it.' })
  suggested: boolean;
}

class SuggestedVersionLineDto {
  @OutId({ nullable: true })
  consumableId: string | null;

  @OutChoice(DRIVERS)
  driver: Driver;

  @OutDecimal()
  placed: string;

  @OutDecimal()
  dispensed: string;

  @OutFlag()
  everyAttempt: boolean;

  @OutTexts({ nullable: true })
  reasons: Reason[] | null;

  @OutFlag({ nullable: true, description: 'Null: as is usual for its category, like the next.' })
  sharesDose: boolean | null;

  @OutFlag({ nullable: true })
  anaesthetic: boolean | null;
}

export class SuggestedVersionDto {
  @OutWhole({ example: 45 })
  minutes: number;

  @OutWhole({ example: 45 })
  assistantMinutes: number;

  @OutDecimal({ example: '2' })
  layerThicknessMm: string;

  @OutText()
  note: string;

  @OutList(() => SuggestedVersionLineDto)
  lines: SuggestedVersionLineDto[];
}

export class SuggestionDto {
  @OutId()
  templateId: string;

  @OutText({ example: 'Front filling, one side' })
  templateName: string;

  @OutWhole({ description: 'The latest version, which is compared.' })
  version: number;

  @OutWhole({ description: 'How many restorations were asked for.' })
  last: number;

  @OutWhole({ description: 'How many there were.' })
  restorations: number;

  @OutWhole({ description: 'What the template says.' })
  minutes: number;

  @OutWhole({ description: 'Mean of the restorations.' })
  usedMinutes: number;

  @OutWhole({ description: 'What the template says of the time of assistants.' })
  assistantMinutes: number;

  @OutWhole({ nullable: true, description: 'Mean of those that state it; null: none does.' })
  usedAssistantMinutes: number | null;

  @OutList(() => SuggestedLineDto)
  lines: SuggestedLineDto[];

  @OutList(() => AddedByHandDto, { description: 'What was used without being planned.' })
  additions: AddedByHandDto[];

  @OutObject(() => SuggestedVersionDto, {
    nullable: true,
    description:
      'Send it as it is to POST /api/procedure-templates/{id}/versions. Null: nothing to change.',
  })
  suggestedVersion: SuggestedVersionDto | null;
}
