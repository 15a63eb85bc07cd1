import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

export const bookedQuery = (id: string) =>
  queryOptions({
    queryKey: ['visits', id],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/visits/{id}', { params: { path: { id } }, signal })),
  });
