import { formatMoney, moneyFromMicro } from '#lib/measure';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { coinStep } from './coin.js';

/** The smallest amount that is paid in the practice's currency, in millionths and in words. */
export function useCoin() {
  const { currency } = useSession().practice;
  const { money } = useFormat();
  const step = coinStep(currency);
  return { step, words: money(formatMoney(moneyFromMicro(step))) };
}
