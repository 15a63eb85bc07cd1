import { formatMoney, moneyFromMicro } from '#lib/measure';
import type { Text } from '../../../text/text.js';
import { micro } from '../../../ui/drawn.js';
import type { Habit } from '../api/report-habits.js';

export type HabitKind = keyof Text['costReports']['habits']['kinds'];

const KINDS: Readonly<Record<string, HabitKind>> = {
  retakes: 'retakes',
  'wrong shade opened': 'wrongShade',
  'after-opening limit': 'openTooLong',
  expired: 'expired',
  'other write-offs': 'other',
  'residue of single doses': 'residue',
  'more than the template': 'more',
};

/** The texts of a kind of habit; one that this app does not know yet is called by its own name. */
export function kindOf(kind: string): HabitKind | undefined {
  return KINDS[kind];
}

/** 'Paste, Body 2': what the habit is about. */
export function thingOf({ consumableName, shade, templateName }: Habit): string {
  const consumable = [consumableName, shade].filter((part) => part !== null && part !== '');
  return consumable.length > 0 ? consumable.join(', ') : (templateName ?? '');
}

/** What one time of it costs on average; only for showing. */
export function costOfOne({ cost, times }: Pick<Habit, 'cost' | 'times'>): string {
  return formatMoney(moneyFromMicro(micro(cost) / BigInt(Math.max(times, 1))));
}
