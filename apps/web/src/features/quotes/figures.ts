import { micro } from '../../ui/drawn.js';
import type { Quote, Way } from './api/make-quote.js';
import { minus } from './ways.js';

/** The rows of the table that sets the ways side by side. */
export const FIGURES = [
  'material',
  'minutes',
  'fee',
  'planPays',
  'patientPays',
  'writeOff',
  'contribution',
  'contributionPerHour',
  'chairCost',
  'assistantCost',
  'afterChairTime',
  'neededIncome',
] as const;

export type FigureId = (typeof FIGURES)[number];

/** What matters most: larger than the rest. */
export const MAIN: readonly FigureId[] = ['patientPays', 'contribution', 'contributionPerHour'];

/** Rows that say nothing for this question are left out. */
export function figuresFor(quote: Quote): FigureId[] {
  const { chairMinuteCost, targetContributionPerHour, ways } = quote;
  return FIGURES.filter((id) => {
    if (id === 'assistantCost') return ways.some((way) => way.assistantCost !== null);
    if (id === 'chairCost' || id === 'afterChairTime') return chairMinuteCost !== null;
    return id !== 'neededIncome' || targetContributionPerHour !== null;
  });
}

export interface FigureOfWay {
  /** Minutes are whole numbers, the others are money; null: not known. */
  readonly value: string | null;
  /** By how much it differs from the first way; undefined where it does not. */
  readonly more: string | undefined;
}

export function figureOf(id: FigureId, way: Way, first: Way | undefined): FigureOfWay {
  const value = amountOf(id, way);
  const base = first && amountOf(id, first);
  if (value === null || base === null || base === undefined || value === base) {
    return { value, more: undefined };
  }
  if (id === 'minutes') return { value, more: String(Number(value) - Number(base)) };
  return { value, more: micro(value) === micro(base) ? undefined : minus(value, base) };
}

function amountOf(id: FigureId, way: Way): string | null {
  return id === 'minutes' ? String(way.minutes) : way[id];
}
