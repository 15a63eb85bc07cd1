import { answerOf, api, type Shape } from '../../../api/client.js';

interface Correction extends Shape<'CorrectLineDto'> {
  readonly deliveryId: string;
  readonly lineNumber: number;
}

export const correctLine = ({ deliveryId, lineNumber, ...body }: Correction, key: string) => {
  const params = { path: { id: deliveryId, lineNumber }, header: { 'Idempotency-Key': key } };
  return answerOf(api.POST('/api/deliveries/{id}/lines/{lineNumber}/correction', { params, body }));
};
