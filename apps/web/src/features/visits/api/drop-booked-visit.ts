import { answerOf, api } from '../../../api/client.js';

interface Dropping {
  readonly id: string;
  readonly version: number;
  readonly note: string;
}

export function dropBookedVisit({ id, ...body }: Dropping, key: string) {
  const params = { path: { id }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/booked-visits/{id}/dropping', { params, body }));
}
