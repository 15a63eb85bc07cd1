import { formatMoney, moneyFromMicro } from '#lib/measure';
import { micro } from '../../ui/drawn.js';
import type { Quote, QuotedLine, Way } from './api/make-quote.js';

/** How a way stands in the address. */
export const WAY_CODES = {
  together: 'all in one visit',
  apart: 'insured first, cosmetic later',
  insured: 'insured only',
  cosmetic: 'cosmetic only',
} as const satisfies Record<string, Way['way']>;

export type WayCode = keyof typeof WAY_CODES;

const CODES: readonly WayCode[] = ['together', 'apart', 'insured', 'cosmetic'];

export function codeOf(way: Way): WayCode {
  return CODES.find((code) => WAY_CODES[code] === way.way) ?? 'together';
}

/** The way that was chosen; the first where that one is not open to these restorations. */
export function chosenWay({ ways }: Quote, code: WayCode | undefined): Way | undefined {
  return ways.find((way) => codeOf(way) === code) ?? ways[0];
}

/** Whether a way does all of the work, so that it can be compared with the first. */
export function isWhole(way: Way, { restorations }: Quote): boolean {
  return way.lines.length === restorations.length;
}

export function minus(a: string, b: string): string {
  return formatMoney(moneyFromMicro(micro(a) - micro(b)));
}

export function plus(...amounts: readonly string[]): string {
  return formatMoney(moneyFromMicro(amounts.reduce((sum, each) => sum + micro(each), 0n)));
}

/** What plan and patient pay for a line. */
export const incomeOf = ({ planPays, patientPays }: Pick<QuotedLine, 'planPays' | 'patientPays'>) =>
  plus(planPays, patientPays);

export const isCosmetic = ({ restorations }: Quote, line: QuotedLine) =>
  restorations[line.restoration]?.reason === 'cosmetic';

/** What a second visit adds to the cost of chair time; null where that is not known. */
export function repeatedChairCost(way: Way, first: Way): string | null {
  if (way.chairCost === null || first.chairCost === null || !way.repeatedMinutes) return null;
  return minus(way.chairCost, first.chairCost);
}
