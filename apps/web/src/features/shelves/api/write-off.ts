import { answerOf, api, type Shape } from '../../../api/client.js';

export const writeOff = (body: Shape<'WriteOffDto'>, key: string) => {
  const header = { 'Idempotency-Key': key };
  return answerOf(api.POST('/api/stock/write-offs', { params: { header }, body }));
};
