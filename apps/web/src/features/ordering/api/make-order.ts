import { answerOf, api, type Shape } from '../../../api/client.js';

/** Begins an order; its lines remember what was proposed of them, and why. */
export const makeOrder = (body: Shape<'NewOrderDto'>, key: string): Promise<Shape<'OrderDto'>> =>
  answerOf(api.POST('/api/orders', { params: { header: { 'Idempotency-Key': key } }, body }));
