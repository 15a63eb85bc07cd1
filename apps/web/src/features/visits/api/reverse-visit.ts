import { answerOf, api } from '../../../api/client.js';

export function reverseVisit(id: string, note: string, key: string) {
  const params = { path: { id }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/visits/{id}/reversal', { params, body: { note } }));
}
