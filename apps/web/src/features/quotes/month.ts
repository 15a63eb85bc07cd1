import { formatQuantity, multiplyRatio, quantityFromMicro } from '#lib/measure';
import { asDecimal } from '../../ui/decimal-text.js';
import type { Quote, QuotedLine, Way } from './api/make-quote.js';
import type { MonthQuestion } from './api/work-out-month.js';
import { incomeOf } from './ways.js';

/** What is typed about a month; numbers by the place of the restoration in the question. */
export interface MonthDraft {
  readonly fixedCost: string;
  readonly targetProfit: string;
  readonly chairHours: string;
  readonly numbers: readonly string[];
}

/** The same in the address. */
export interface MonthWords {
  readonly fixed?: string | undefined;
  readonly profit?: string | undefined;
  readonly hours?: string | undefined;
  readonly n?: string | undefined;
}

export function monthDraft(words: MonthWords, restorations: number): MonthDraft {
  const numbers = (words.n ?? '').split('.');
  return {
    fixedCost: words.fixed ?? '',
    targetProfit: words.profit ?? '',
    chairHours: words.hours ?? '',
    numbers: Array.from({ length: restorations }, (_, i) => {
      const number = numbers[i] ?? '';
      return /^\d{1,6}$/.test(number) ? number : '1';
    }),
  };
}

const said = (typed: string) => (typed.trim() === '' ? undefined : asDecimal(typed));

export function monthWords(draft: MonthDraft): Required<MonthWords> {
  return {
    fixed: said(draft.fixedCost),
    profit: said(draft.targetProfit),
    hours: said(draft.chairHours),
    n: draft.numbers.map((number) => number.trim() || '0').join('.'),
  };
}

/**
 * What the service is asked about the restorations of a way: a kind for each. Undefined while no
 * fixed cost is given.
 */
export function monthQuestion(
  draft: MonthDraft,
  { way, quote, nameOf }: MonthOf,
): MonthQuestion | undefined {
  const fixedCost = said(draft.fixedCost);
  if (fixedCost === undefined) return undefined;
  return {
    fixedCost,
    targetProfit: said(draft.targetProfit) ?? null,
    chairHours: said(draft.chairHours) ?? null,
    kinds: way.lines.map((line) => ({
      name: nameOf(quote, line),
      price: incomeOf(line),
      variable: line.material,
      number: Number(draft.numbers[line.restoration] ?? '0'),
      minutes: minutesOf(line, way),
    })),
  };
}

export interface MonthOf {
  readonly way: Way;
  readonly quote: Quote;
  readonly nameOf: (quote: Quote, line: QuotedLine) => string;
}

/** Its own minutes and an equal part of its visit's set-up; null where there are none. */
function minutesOf(line: QuotedLine, way: Way): string | null {
  const visit = way.visits[line.visit];
  if (!visit) return null;
  const own = way.lines
    .filter((each) => each.visit === line.visit)
    .reduce((sum, each) => sum + each.minutes, 0);
  const setUp = BigInt(visit.minutes - own) * 1_000_000n;
  const part = multiplyRatio(setUp, 1n, BigInt(visit.restorations.length), 'half-up');
  const minutes = BigInt(line.minutes) * 1_000_000n + part;
  return minutes === 0n ? null : formatQuantity(quantityFromMicro(minutes));
}
