import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { amount } from '../alert.js';
import type { ChoiceReason } from '../forecast/choose-method.js';
import type { Assumption } from '../forecast/shelf-forecast.js';

/** What a forecast took for granted, in figures. */
export function assumedFigures(assumption: Assumption) {
  const { code } = assumption;
  const quantity =
    'quantity' in assumption ? formatQuantity(quantityFromMicro(assumption.quantity)) : null;
  switch (code) {
    case 'no use yet':
    case 'short history':
      return { code, days: assumption.days, quantity };
    case 'few uses':
      return { code, days: assumption.uses, quantity };
    case 'died out':
      return { code, days: assumption.daysSinceUse, quantity };
    default:
      return { code, days: null, quantity };
  }
}

/** What a forecast took for granted, as a sentence. */
export function assumptionSentence(assumption: Assumption, unit: string): string {
  switch (assumption.code) {
    case 'no use yet':
      return `No use is on record in ${days(assumption.days)}.`;
    case 'few uses':
      return `It was used on ${days(assumption.uses)} only, so the plain method forecasts it.`;
    case 'short history':
      return `The history has ${days(assumption.days)} only, so the plain method forecasts it.`;
    case 'died out':
      return `It seems to have died out: no use for ${days(assumption.daysSinceUse)}.`;
    case 'left out as one-off or retake':
      return `${told(assumption.quantity, unit)} are left out as one-off events or retakes.`;
    case 'shortfalls counted as use':
      return `${told(assumption.quantity, unit)} used while the book had none count as use.`;
  }
}

/** Why the method was chosen, as a sentence. */
export function choiceSentence(reason: ChoiceReason, method: string, origins: number): string {
  switch (reason) {
    case 'no use':
      return 'Nothing was used yet; the plain method is taken.';
    case 'short history':
      return `Too little was used to compare methods; ${method} is the plain one.`;
    case 'died out':
      return `It is not used any more; ${method} lets its forecast fade.`;
    case 'least loss in the backtest':
      return `${method} would have lost least, judged from ${origins} past days and by all items.`;
  }
}

function told(quantity: bigint, unit: string): string {
  return amount(formatQuantity(quantityFromMicro(quantity)), unit);
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}
