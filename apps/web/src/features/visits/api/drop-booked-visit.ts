import { answerOf, api } from '../../../api/client.js';

export function dropBookedVisit({ id, note }: { id: string; note: string }, key: string) {
  const params = { path: { id }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/booked-visits/{id}/dropping', { params, body: { note } }));
}
