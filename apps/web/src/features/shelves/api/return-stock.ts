import { answerOf, api, type Shape } from '../../../api/client.js';

export const returnStock = (body: Shape<'ReturnStockDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/stock/returns', { params: { header }, body }));
};
