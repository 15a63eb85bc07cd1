import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Holding } from '../api/list-holdings.js';
import { amountTrouble, countTrouble, dayTrouble } from './checks.js';

/** The checks of the forms about one holding, as sentences. */
export function useHoldingChecks(holding: Holding) {
  const { shelves, ui } = useText();
  const format = useFormat();
  const { today } = useSession();
  const { form: words } = shelves;
  const since = holding.openedOn ?? holding.receivedOn;
  const here = format.quantity(holding.onHand, holding.consumable.unit);
  const amounts = {
    missing: ui.required,
    decimal: ui.decimal,
    positive: words.positive,
    negative: words.notNegative,
    whole: words.whole,
    'too much': words.atMost(here),
  };
  const days = {
    missing: ui.required,
    future: words.notFuture,
    before: words.notBefore(format.day(since)),
  };
  return {
    today,
    since,
    here,
    amount: (typed: string) => {
      const trouble = amountTrouble(typed, holding);
      return trouble && amounts[trouble];
    },
    counted: (typed: string) => {
      const trouble = countTrouble(typed, holding.consumable.unit);
      return typed.trim() === '' ? ui.required : trouble && amounts[trouble];
    },
    day: (day: string) => {
      const trouble = dayTrouble(day, today, since);
      return trouble && days[trouble];
    },
    note: (note: string) => (note.trim() === '' ? ui.required : undefined),
  };
}
