import { answerOf, api } from '../../../api/client.js';

interface Reversal {
  readonly id: string;
  readonly note: string;
}

export const reverseMovement = ({ id, note }: Reversal, key: string) => {
  const params = { path: { id }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/movements/{id}/reversal', { params, body: { note } }));
};
