import { answerOf, api, type Shape } from '../../../api/client.js';
import type { FeeHistory } from './list-fees.js';

const header = (key: string) => ({ 'Idempotency-Key': key });

export function createFee(body: Shape<'NewFeeDto'>, key: string): Promise<FeeHistory> {
  return answerOf(api.POST('/api/fees', { params: { header: header(key) }, body }));
}

export function changeFee(id: string, body: Shape<'FeeChangesDto'>): Promise<FeeHistory> {
  return answerOf(api.PATCH('/api/fees/{id}', { params: { path: { id } }, body }));
}

export function addFeeVersion(
  id: string,
  body: Shape<'NewFeeVersionDto'>,
  key: string,
): Promise<FeeHistory> {
  const params = { path: { id }, header: header(key) };
  return answerOf(api.POST('/api/fees/{id}/versions', { params, body }));
}
