import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type DeliveryCheck = Shape<'DeliveryCheckDto'>;
export type LineCheck = DeliveryCheck['lines'][number];

/** What a delivery would come to, and what to know about it; books nothing. */
export const deliveryCheckQuery = (body: Shape<'ReceiveDeliveryDto'>) =>
  queryOptions({
    queryKey: ['delivery-check', body],
    queryFn: ({ signal }): Promise<DeliveryCheck> =>
      answerOf(api.POST('/api/deliveries/check', { body, signal })),
    // What does not fit is said beside its field when the delivery is booked.
    retry: false,
    staleTime: 30_000,
    gcTime: 0, // once it is booked, or left, the answer is another one
  });
