import { ChoiceField, IdListField, WholeField } from '#lib/platform';
import { LABELS_PER_SHEET } from './label-grid.js';

export const SHEET_LANGUAGES = ['en', 'de'] as const;

export type SheetLanguage = (typeof SHEET_LANGUAGES)[number];

const MOST = 200;

export class LabelSheetDto {
  @IdListField({ optional: true, max: MOST, description: 'Rooms, fridges, drawers.' })
  locationIds?: readonly string[];

  @IdListField({
    optional: true,
    max: MOST,
    description: 'Opened containers each get a label of their own, the rest the label of its lot.',
  })
  holdingIds?: readonly string[];

  @WholeField(1, LABELS_PER_SHEET, {
    optional: true,
    description: 'The first label of the sheet that is still there: row by row, from 1.',
  })
  start?: number;

  @WholeField(1, 50, { optional: true, description: 'Of each; 1 when left out.' })
  copies?: number;
}

export class LabelSheetQueryDto {
  @ChoiceField(SHEET_LANGUAGES, { optional: true, description: 'English when left out.' })
  language?: SheetLanguage;
}
