import { REASONS, type Reason } from '#lib/dentition';
import { STOCK_UNITS, type StockUnit } from '#lib/measure';
import {
  ChoiceField,
  ChoiceListField,
  DecimalField,
  FlagField,
  IdField,
  ListField,
  OutChoice,
  OutDecimal,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutText,
  OutTexts,
  OutWhole,
  TextField,
  WholeField,
  WholeQuery,
} from '#lib/platform';
import { DRIVERS, type Driver } from '../domain/template.js';

class NewTemplateLineDto {
  @IdField({ optional: true, description: 'Null: the shades chosen for the restoration.' })
  consumableId?: string | null;

  @ChoiceField(DRIVERS, { description: 'What the amounts are counted by.', example: 'tooth' })
  driver: Driver;

  @DecimalField({ min: '0', max: '100000', description: 'Stays in the tooth.', example: '0.04' })
  placed: string;

  @DecimalField({
    above: '0',
    max: '100000',
    description: 'Leaves the container; at least what is placed.',
    example: '0.06',
  })
  dispensed: string;

  @FlagField({ optional: true, description: 'Whether a retake uses it again.' })
  everyAttempt?: boolean | null;

  @ChoiceListField(REASONS, {
    optional: true,
    min: 1,
    description: 'Counts only for restorations made for one of these; null: for all.',
  })
  reasons?: Reason[] | null;

  @FlagField({
    optional: true,
    description:
      'Whether one single dose may serve several restorations of a visit; as is usual for its ' +
      'category when left out.',
  })
  sharesDose?: boolean | null;

  @FlagField({
    optional: true,
    description:
      'Left out of visits that go without anaesthetic; as is usual for its category when left out.',
  })
  anaesthetic?: boolean | null;
}

export class NewVersionDto {
  @WholeField(0, 1440, { description: 'Chair time of one restoration.', example: 45 })
  minutes: number;

  @WholeField(0, 1440, {
    optional: true,
    description: 'Time of assistants for one restoration; the chair time when left out.',
    example: 45,
  })
  assistantMinutes?: number | null;

  @DecimalField({
    optional: true,
    above: '0',
    max: '100',
    description: 'Left out: that of the version before, and 2 in the first one.',
    example: '2',
  })
  layerThicknessMm?: string | null;

  @TextField(500, { optional: true, description: 'Why this version was written.' })
  note?: string | null;

  @ListField(() => NewTemplateLineDto, { min: 1, max: 100 })
  lines: NewTemplateLineDto[];
}

export class NewTemplateDto extends NewVersionDto {
  @IdField({ optional: true, description: 'Made by the sender; sent again it changes nothing.' })
  id?: string;

  @TextField(200, { example: 'Front filling, one side' })
  name: string;
}

export class TemplateChangesDto {
  @TextField(200, { optional: true })
  name?: string | null;

  @FlagField({ optional: true })
  active?: boolean | null;
}

export class VersionQueryDto {
  @WholeQuery(1, 1_000_000, { description: 'The latest when left out.' })
  version?: string;
}

export class TemplateSummaryDto {
  @OutId()
  id: string;

  @OutText({ example: 'Front filling, one side' })
  name: string;

  @OutFlag()
  active: boolean;

  @OutWhole({ example: 3 })
  latestVersion: number;
}

export class TemplatePageDto {
  @OutList(() => TemplateSummaryDto)
  items: readonly TemplateSummaryDto[];

  @OutText({ nullable: true, description: 'Send as cursor for the next page.' })
  nextCursor: string | null;
}

export class VersionSummaryDto {
  @OutWhole({ example: 3 })
  version: number;

  @OutWhole({ example: 45 })
  minutes: number;

  @OutWhole({ description: 'Time of assistants.', example: 45 })
  assistantMinutes: number;

  @OutDecimal({ example: '2' })
  layerThicknessMm: string;

  @OutText({ nullable: true })
  note: string | null;

  @OutId()
  recordedBy: string;

  @OutInstant()
  recordedAt: string;
}

export class VersionsDto {
  @OutList(() => VersionSummaryDto)
  items: readonly VersionSummaryDto[];
}

class TemplateLineDto {
  @OutWhole({ example: 1 })
  lineNumber: number;

  @OutId({ nullable: true, description: 'Null: the shades chosen for the restoration.' })
  consumableId: string | null;

  @OutText({ nullable: true, example: 'Etching gel' })
  consumableName: string | null;

  @OutChoice(STOCK_UNITS, { nullable: true, example: 'mL' })
  stockUnit: StockUnit | null;

  @OutChoice(DRIVERS, { example: 'tooth' })
  driver: Driver;

  @OutDecimal({ example: '0.06' })
  placed: string;

  @OutDecimal({ example: '0.08' })
  dispensed: string;

  @OutFlag()
  everyAttempt: boolean;

  @OutTexts({ nullable: true, example: ['decay', 'fracture'] })
  reasons: Reason[] | null;

  @OutFlag({ description: 'One single dose may serve several restorations of a visit.' })
  sharesDose: boolean;

  @OutFlag({ description: 'Left out of visits that go without anaesthetic.' })
  anaesthetic: boolean;
}

export class TemplateDto extends TemplateSummaryDto {
  @OutWhole({ description: 'The version shown here.', example: 3 })
  version: number;

  @OutWhole({ example: 45 })
  minutes: number;

  @OutWhole({ description: 'Time of assistants.', example: 45 })
  assistantMinutes: number;

  @OutDecimal({ example: '2' })
  layerThicknessMm: string;

  @OutText({ nullable: true })
  note: string | null;

  @OutId()
  recordedBy: string;

  @OutInstant()
  recordedAt: string;

  @OutList(() => TemplateLineDto)
  lines: readonly TemplateLineDto[];
}
