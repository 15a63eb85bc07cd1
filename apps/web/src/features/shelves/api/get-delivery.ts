import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Delivery = Shape<'DeliveryDto'>;
export type DeliveryLine = Delivery['lines'][number];

export const deliveryQuery = (id: string) =>
  queryOptions({
    queryKey: ['deliveries', id],
    queryFn: ({ signal }): Promise<Delivery> =>
      answerOf(api.GET('/api/deliveries/{id}', { params: { path: { id } }, signal })),
  });
