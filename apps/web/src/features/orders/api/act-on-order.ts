import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Order } from './get-order.js';

/** A step that needs no more than a remark. */
export type PlainStep = 'approve' | 'withdraw' | 'close' | 'cancel';

const sent = (id: string, key: string) => ({
  params: { path: { id }, header: { 'Idempotency-Key': key } },
});

export function stepOrder(
  step: PlainStep,
  id: string,
  body: Shape<'OrderActDto'>,
  key: string,
): Promise<Order> {
  const request = { ...sent(id, key), body };
  switch (step) {
    case 'approve':
      return answerOf(api.POST('/api/orders/{id}/approval', request));
    case 'withdraw':
      return answerOf(api.POST('/api/orders/{id}/approval-withdrawal', request));
    case 'close':
      return answerOf(api.POST('/api/orders/{id}/closing', request));
    case 'cancel':
      return answerOf(api.POST('/api/orders/{id}/cancellation', request));
  }
}

export function sendOrder(id: string, body: Shape<'OrderSendingDto'>, key: string): Promise<Order> {
  return answerOf(api.POST('/api/orders/{id}/sending', { ...sent(id, key), body }));
}

export function chaseOrder(
  id: string,
  body: Shape<'OrderChasingDto'>,
  key: string,
): Promise<Order> {
  return answerOf(api.POST('/api/orders/{id}/chasing', { ...sent(id, key), body }));
}

export function answerOrder(
  id: string,
  body: Shape<'SupplierAnswerDto'>,
  key: string,
): Promise<Order> {
  return answerOf(api.POST('/api/orders/{id}/answer', { ...sent(id, key), body }));
}
