import { isZero, type Quantity, quantity, subtract } from '#lib/measure';
import { asDecimal } from '../../../ui/decimal-text.js';
import type { Holding } from '../api/list-holdings.js';
import { countTrouble } from '../holding/checks.js';

/** What was typed, by holding. */
export type Draft = Readonly<Record<string, string>>;

/** What the service takes in one count. */
export const MOST_LINES = 500;

export interface CountedLine {
  readonly holding: Holding;
  readonly counted: string;
  /** Counted less expected. */
  readonly difference: Quantity;
}

export type Trouble = NonNullable<ReturnType<typeof countTrouble>>;

export interface ReadDraft {
  readonly lines: readonly CountedLine[];
  readonly troubles: Readonly<Record<string, Trouble>>;
}

export function isTyped(typed: string | undefined): typed is string {
  return typed !== undefined && typed.trim() !== '';
}

/** What a draft says about the holdings that are listed; what is empty was not counted. */
export function readDraft(draft: Draft, holdings: readonly Holding[]): ReadDraft {
  const lines: CountedLine[] = [];
  const troubles: Record<string, Trouble> = {};
  for (const holding of holdings) {
    const typed = draft[holding.id];
    if (!isTyped(typed)) continue;
    const trouble = countTrouble(typed, holding.consumable.unit);
    if (trouble) troubles[holding.id] = trouble;
    else lines.push(lineOf(holding, asDecimal(typed) ?? '0'));
  }
  return { lines, troubles };
}

function lineOf(holding: Holding, counted: string): CountedLine {
  const difference = subtract(quantity(counted), quantity(holding.onHand));
  return { holding, counted, difference };
}

export function differing(lines: readonly CountedLine[]): CountedLine[] {
  return lines.filter(({ difference }) => !isZero(difference));
}
