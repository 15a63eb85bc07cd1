import { queryOptions } from '@tanstack/react-query';
import { answerOf, api } from '../../../api/client.js';

export const templateQuery = (id: string) =>
  queryOptions({
    queryKey: ['procedure-templates', id],
    queryFn: ({ signal }) =>
      answerOf(api.GET('/api/procedure-templates/{id}', { params: { path: { id } }, signal })),
    staleTime: 5 * 60_000,
    enabled: id !== '',
  });
