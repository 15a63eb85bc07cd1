import { answerOf, api, type Shape } from '../../../api/client.js';
import type { Order } from './get-order.js';

export function createOrder(body: Shape<'NewOrderDto'>, key: string): Promise<Order> {
  const params = { header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/orders', { params, body }));
}

export function changeOrder(id: string, body: Shape<'OrderChangesDto'>): Promise<Order> {
  return answerOf(api.PUT('/api/orders/{id}', { params: { path: { id } }, body }));
}
