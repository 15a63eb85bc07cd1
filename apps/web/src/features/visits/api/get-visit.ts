import { queryOptions } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../../api/client.js';

export type Visit = Shape<'VisitDto'>;
export type UsageLine = Shape<'UsageLineDto'>;

export const visitQuery = (id: string) =>
  queryOptions({
    queryKey: ['visits', id],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/visits/{id}', { params: { path: { id } }, signal })),
  });
