import { answerOf, api, type Shape } from '../../../api/client.js';

export const snoozeAlert = (
  body: Shape<'NewSnoozeDto'>,
  key: string,
): Promise<Shape<'SnoozeDto'>> =>
  answerOf(
    api.POST('/api/reorder/snoozes', { params: { header: { 'Idempotency-Key': key } }, body }),
  );
