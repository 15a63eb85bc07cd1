import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Order = Shape<'OrderDto'>;
export type OrderLine = Shape<'OrderLineDto'>;

export const orderQuery = (id: string) =>
  queryOptions({
    queryKey: ['orders', 'one', id],
    queryFn: ({ signal }): Promise<Order> =>
      answerOf(api.GET('/api/orders/{id}', { params: { path: { id } }, signal })),
  });

/** Where the papers of an order are. */
export function paperOf(id: string, form: 'pdf' | 'csv'): string {
  return `/api/orders/${id}.${form}`;
}
