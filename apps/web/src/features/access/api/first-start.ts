import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

/** Whether the link still opens the book. */
export const linkQuery = (token: string) =>
  queryOptions({
    queryKey: ['first-start', token],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/first-start', { params: { query: { token } }, signal })),
    staleTime: Number.POSITIVE_INFINITY,
  });

export function firstStart(body: Shape<'FirstStartDto'>): Promise<Shape<'StartedDto'>> {
  return answerOf(api.POST('/api/first-start', { body }));
}
