import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Order = Shape<'OrderDto'>;

/** The order that a delivery is booked against. */
export const orderQuery = (id: string) =>
  queryOptions({
    queryKey: ['orders', 'one', id],
    queryFn: ({ signal }): Promise<Order> =>
      answerOf(api.GET('/api/orders/{id}', { params: { path: { id } }, signal })),
  });
