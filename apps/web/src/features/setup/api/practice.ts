import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Practice = Shape<'PracticeDto'>;

export const practiceQuery = queryOptions({
  queryKey: ['practice'],
  queryFn: ({ signal }): Promise<Practice> => answerOf(api.GET('/api/practice', { signal })),
});

export function changePractice(body: Shape<'ChangePracticeDto'>): Promise<Practice> {
  return answerOf(api.PATCH('/api/practice', { body }));
}
