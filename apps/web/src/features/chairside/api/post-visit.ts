import { answerOf, api, type Shape } from '../../../api/client.js';

export type VisitBody = Shape<'PostVisitDto'>;
export type Visit = Shape<'VisitDto'>;

/** How long an answer is waited for before the visit counts as not sent. */
const PATIENCE = 20_000;

export function postVisit(body: VisitBody, key: string): Promise<Visit> {
  const params = { header: { 'Idempotency-Key': key } };
  const signal = AbortSignal.timeout(PATIENCE);
  return answerOf(api.POST('/api/visits', { params, body, signal }));
}
