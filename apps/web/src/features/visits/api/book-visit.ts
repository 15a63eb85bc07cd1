import { answerOf, api, type Shape } from '../../../api/client.js';

export function bookVisit(body: Shape<'BookVisitDto'>, key: string) {
  const params = { header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/booked-visits', { params, body }));
}
