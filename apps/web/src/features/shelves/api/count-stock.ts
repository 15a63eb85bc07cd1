import { answerOf, api, type Shape } from '../../../api/client.js';

export const countStock = (body: Shape<'CountStockDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/counts', { params: { header }, body }));
};
