import { TOOTH_NOTATIONS, type ToothNotation } from '#lib/dentition';
import { STOCK_UNITS, type StockUnit } from '#lib/measure';
import {
  ChoiceField,
  FlagField,
  ListField,
  OutChoice,
  OutDecimal,
  OutFlag,
  OutId,
  OutList,
  OutText,
  OutWhole,
  WholeField,
} from '#lib/platform';
import { DRIVERS, type Driver } from '../domain/template.js';
import { RestorationFactsDto } from './restoration.dto.js';
import { NewVersionDto } from './template.dto.js';

export class PreviewQuestionDto {
  @FlagField({ optional: true, description: 'Leaves out the lines for anaesthesia.' })
  withoutAnaesthetic?: boolean | null;

  @WholeField(1, 1_000_000, { optional: true, description: 'The latest when left out.' })
  version?: number | null;

  @ListField(() => RestorationFactsDto, { min: 1, max: 32 })
  restorations: RestorationFactsDto[];

  @WholeField(1, 10, { optional: true, description: 'People at the chair; 2 when left out.' })
  staffCount?: number | null;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "The practice's own when left out.",
  })
  toothNotation?: ToothNotation | null;
}

export class DraftQuestionDto extends NewVersionDto {
  @ListField(() => RestorationFactsDto, { min: 1, max: 32 })
  restorations: RestorationFactsDto[];

  @FlagField({ optional: true, description: 'Leaves out the lines for anaesthesia.' })
  withoutAnaesthetic?: boolean | null;

  @WholeField(1, 10, { optional: true, description: 'People at the chair; 2 when left out.' })
  staffCount?: number | null;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "The practice's own when left out.",
  })
  toothNotation?: ToothNotation | null;
}

class PreviewLineDto {
  @OutText({ description: 'Names this line in the visit.', example: 'visit/visit/0199c0de-...' })
  key: string;

  @OutWhole({ nullable: true, description: 'Position of its restoration, 0 is the first.' })
  restoration: number | null;

  @OutText({ nullable: true, description: 'Set when its restorations share it.', example: '11' })
  tooth: string | null;

  @OutWhole({ description: 'From 1; a later one is a retake.', example: 1 })
  attempt: number;

  @OutId()
  consumableId: string;

  @OutText({ example: 'Etching gel' })
  consumableName: string;

  @OutText({ nullable: true })
  shade: string | null;

  @OutChoice(STOCK_UNITS, { example: 'mL' })
  stockUnit: StockUnit;

  @OutChoice(DRIVERS, { example: 'tooth' })
  driver: Driver;

  @OutDecimal({ example: '0.06' })
  placed: string;

  @OutDecimal({ example: '0.08' })
  dispensed: string;

  @OutFlag({ description: 'May take its part of a single dose that others use too.' })
  sharesDose: boolean;
}

export class DraftPreviewDto {
  @OutWhole({ description: 'Chair time of all restorations.', example: 45 })
  minutes: number;

  @OutWhole({ description: 'Time of assistants.', example: 45 })
  assistantMinutes: number;

  @OutList(() => PreviewLineDto)
  lines: readonly PreviewLineDto[];
}

export class PreviewDto extends DraftPreviewDto {
  @OutId()
  templateId: string;

  @OutWhole({ example: 3 })
  version: number;
}
