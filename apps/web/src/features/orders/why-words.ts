import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import type { OrderLine } from './api/get-order.js';

type Figures = NonNullable<OrderLine['proposed']>['figures'];

/** What the words rest on, by the names that the service gives its figures. */
const NEEDED = [
  'position',
  'reorder point',
  'mean use in lead time and review',
  'mean lead time',
  'review period',
] as const;

/**
 * Why a line was proposed, in the person's language, from the figures of that day; undefined when
 * one of these is not among them.
 */
export function proposedWords(figures: Figures, format: Format, t: Text): string | undefined {
  const of = (name: string) => figures.find((figure) => figure.name === name);
  const [position, point, use, lead, review] = NEEDED.map(of);
  if (!position || !point || !use || !lead || !review) return undefined;
  const told = ({ value, unit }: Figures[number]) => format.amount(value, unit);
  const days = ({ value }: Figures[number]) => format.number(Number(value).toFixed(1));
  return t.orders.whyThen({
    ...{ position: told(position), point: told(point) },
    use: format.amount(Number(use.value).toPrecision(2), use.unit),
    ...{ lead: days(lead), review: days(review) },
  });
}
