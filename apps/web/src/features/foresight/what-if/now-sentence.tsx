import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { ServiceCurve } from '../api/what-if.js';
import css from './what-if.module.css';

/** Where things stand now, in words. */
export function NowSentence({ curve }: { readonly curve: ServiceCurve }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.whatIf;
  const { now, itemsWithoutPrice } = curve;
  if (now === null) return null;
  const { level, stockValue, wastedValue } = now;
  const aim =
    level === null
      ? words.ownLevels
      : words.aim(format.percent(level), words.measures[curve.measure]);
  const value =
    stockValue === null
      ? words.noPrice
      : words.stands(format.money(stockValue), format.money(wastedValue ?? '0'));
  return (
    <p className={css.now}>
      {aim} {value} {words.runsOut(format.number(Number(now.stockOuts).toFixed(1)))}
      {itemsWithoutPrice > 0 && curve.consumable === null && (
        <> {words.withoutPrice(itemsWithoutPrice)}</>
      )}
    </p>
  );
}
