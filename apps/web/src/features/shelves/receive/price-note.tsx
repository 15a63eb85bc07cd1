import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { lastPriceQuery } from '../api/last-price.js';
import { type Product, priceChange } from './lines.js';
import css from './receive.module.css';

interface Props {
  readonly product: Product;
  readonly typed: string;
  /** Takes the last price over where none was typed. */
  readonly onLast: (price: string) => void;
}

/** What a pack cost last time, and whether the price has changed since. */
export function PriceNote({ product: { consumable, presentation }, typed, onLast }: Props) {
  const { receive } = useText();
  const format = useFormat();
  const last = useQuery(lastPriceQuery(consumable.id, presentation.id)).data;
  const offered = useRef('');
  useEffect(() => {
    if (!last || offered.current === presentation.id) return;
    offered.current = presentation.id;
    if (typed === '') onLast(last.packPrice);
  }, [last, presentation.id, typed, onLast]);
  if (last === undefined) return null;
  if (last === null) {
    const { listPrice } = presentation;
    const words = listPrice ? receive.listPrice(format.money(listPrice)) : receive.neverBought;
    return <span className={css.note}>{words}</span>;
  }
  const day = format.dayShort(last.receivedOn);
  const change = priceChange(typed, last.packPrice);
  if (change === '0') return <span className={css.note}>{receive.lastSame(day)}</span>;
  return (
    <span className={css.note}>
      {change !== undefined && (
        <StatusMark tone={change.startsWith('-') ? 'good' : 'caution'}>
          {change.startsWith('-')
            ? receive.cheaper(format.percent(change.slice(1)))
            : receive.dearer(format.percent(change))}
        </StatusMark>
      )}
      <span>{receive.last(format.money(last.packPrice), day)}</span>
    </span>
  );
}
