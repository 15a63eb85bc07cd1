import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useText } from '../../../text/text-provider.js';
import { deliveryCheckQuery, type LineCheck } from '../api/check-delivery.js';
import { checkDelivery } from './check.js';
import { bodyOf, received, type Values } from './lines.js';

/** What the service says of one line: each layer that it becomes, and what else is to know. */
export interface LineNews {
  readonly layers: readonly LineCheck[];
  readonly notes: readonly { readonly kind: string; readonly sentence: string }[];
}

const WAIT = 500;

/** Asks the service about the delivery as it stands, once it is whole; by the key of each line. */
export function useArrivalCheck(values: Values, today: string): ReadonlyMap<string, LineNews> {
  const t = useText();
  const [settled] = useDebouncedValue(values, WAIT);
  const isWhole = useMemo(
    () =>
      received(settled.lines).length > 0 &&
      Object.values(checkDelivery(settled, today, t)).every((wrong) => wrong === undefined),
    [settled, today, t],
  );
  const body = useMemo(() => bodyOf(settled), [settled]);
  const check = useQuery({ ...deliveryCheckQuery(body), enabled: isWhole }).data;
  return useMemo(() => {
    if (!check) return new Map();
    return new Map(
      received(settled.lines).map(({ key }, index): [string, LineNews] => [
        key,
        {
          layers: check.lines.filter((line) => line.index === index),
          notes: check.notes.filter((note) => note.index === index),
        },
      ]),
    );
  }, [check, settled.lines]);
}
