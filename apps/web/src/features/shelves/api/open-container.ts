import { answerOf, api, type Shape } from '../../../api/client.js';

export const openContainer = (body: Shape<'OpenContainerDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/stock/openings', { params: { header }, body }));
};
