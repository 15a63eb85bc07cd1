import { answerOf, api, type Shape } from '../../../api/client.js';

export const receiveDelivery = (body: Shape<'ReceiveDeliveryDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/deliveries', { params: { header }, body }));
};
