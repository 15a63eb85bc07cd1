import { answerOf, api } from '../../../api/client.js';

interface Reversal {
  readonly id: string;
  readonly note: string;
}

export const reverseDelivery = ({ id, note }: Reversal, key: string) => {
  const params = { path: { id }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/deliveries/{id}/reversal', { params, body: { note } }));
};
