import { useText } from '../../text/text-provider.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import type { OrderSummary } from './api/list-orders.js';

const TONES: Readonly<Record<OrderSummary['state'], Tone>> = {
  draft: 'quiet',
  approved: 'accent',
  sent: 'accent',
  closed: 'good',
  cancelled: 'quiet',
};

/** How far an order is; of a sent one, whether it is late, or what came. */
export function OrderState({ order }: { readonly order: OrderSummary }) {
  const w = useText().orders;
  const { state, arrival, daysLate } = order;
  if (daysLate !== null) return <StatusMark tone="danger">{w.late(daysLate)}</StatusMark>;
  if (state === 'sent' && arrival !== 'nothing yet') {
    return <StatusMark tone="accent">{w.arrivals[arrival]}</StatusMark>;
  }
  return <StatusMark tone={TONES[state]}>{w.states[state]}</StatusMark>;
}
