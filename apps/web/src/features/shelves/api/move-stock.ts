import { answerOf, api, type Shape } from '../../../api/client.js';

export const moveStock = (body: Shape<'MoveStockDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/stock/moves', { params: { header }, body }));
};
