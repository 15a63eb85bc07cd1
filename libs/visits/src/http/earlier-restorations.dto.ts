import { REASONS, TOOTH_NOTATIONS, type ToothNotation } from '#lib/dentition';
import { ChoiceField, OutChoice, OutFlag, OutList, OutText, TextField } from '#lib/platform';
import { OtherRestorationDto } from './visit-outputs.dto.js';

export class EarlierQuery {
  @TextField(60, { description: 'The chart whose restorations are asked for.' })
  chartReference: string;

  @ChoiceField(TOOTH_NOTATIONS, {
    optional: true,
    description: "The practice's own when left out.",
  })
  toothNotation?: ToothNotation;
}

export class EarlierRestorationDto extends OtherRestorationDto {
  @OutText({ example: '21' })
  tooth: string;

  @OutText({ example: 'MI' })
  surfaces: string;

  @OutChoice(REASONS)
  reason: string;

  @OutText({ example: 'Front filling, one side' })
  templateName: string;

  @OutFlag({ description: 'It was done again already.' })
  redone: boolean;
}

export class EarlierRestorationsDto {
  @OutList(() => EarlierRestorationDto)
  items: EarlierRestorationDto[];
}
