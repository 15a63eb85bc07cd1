import { answerOf, api, type Shape } from '../../../../api/client.js';

export type NewCharges = Shape<'NewChargesDto'>;

export function recordCharges(body: NewCharges, key: string): Promise<Shape<'ChargesDto'>> {
  const params = { header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/charges', { params, body }));
}
