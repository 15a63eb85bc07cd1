import { OutChoice, OutDate, OutDecimal, OutId, OutList, OutText, OutWhole } from '#lib/platform';
import { WASTE_REASONS } from '#lib/stock';
import { HABITS } from '../domain/habits.js';

export class HabitDto {
  @OutWhole({ example: 1 })
  rank: number;

  @OutChoice(HABITS)
  kind: string;

  @OutId({ nullable: true })
  consumableId: string | null;

  @OutText({ nullable: true, example: 'Paste in capsules' })
  consumableName: string | null;

  @OutText({ nullable: true, example: 'Body 2' })
  shade: string | null;

  @OutId({ nullable: true, description: 'Null where it is no matter of one template.' })
  templateId: string | null;

  @OutText({ nullable: true, example: 'Front filling' })
  templateName: string | null;

  @OutChoice(WASTE_REASONS, { nullable: true })
  wasteReason: string | null;

  @OutWhole({ example: 14, description: 'How often it happened.' })
  times: number;

  @OutDecimal({ example: '3.2', description: 'What was lost, in the unit.' })
  quantity: string;

  @OutText({ example: 'g' })
  unit: string;

  @OutDecimal({ example: '57.60', description: 'In the period.' })
  cost: string;

  @OutDecimal({ example: '115.20', description: 'If it went on for a year of 365 days.' })
  savedPerYear: string;

  @OutDecimal({ nullable: true, example: '0.0310', description: 'Of the material of all visits.' })
  shareOfMaterial: string | null;
}

export class HabitKindDto {
  @OutChoice(HABITS)
  kind: string;

  @OutDecimal({ description: 'Of all of its kind, also of those that are not listed.' })
  cost: string;
}

export class HabitsDto {
  @OutText({ example: 'EUR' })
  currency: string;

  @OutDate({ description: 'Twelve months before the end when it was left out.' })
  from: string;

  @OutDate({ description: 'Today when it was left out.' })
  to: string;

  @OutWhole({ example: 365 })
  days: number;

  @OutDecimal({ description: 'What all visits of the period used.' })
  materialCost: string;

  @OutList(() => HabitKindDto)
  kinds: HabitKindDto[];

  @OutList(() => HabitDto, { description: 'The costliest first.' })
  habits: HabitDto[];
}
